/** Brent's bracketed root finder: never leaves the bracket, so it cannot run away. */

/**
 * A root of `f` between `a` and `b`, whose values must differ in sign (or one be zero). Stops when the
 * bracket is down to rounding or |f| is below `tolerance`; at most 100 steps. Values at the ends that are
 * known already may be given. `a`, `b` and the root are in the unit `f` takes, `tolerance` in the unit it gives.
 */
export function bracketedRoot(
  f: (x: number) => number,
  a: number,
  b: number,
  tolerance: number,
  fa = f(a),
  fb = f(b),
): number {
  if (Math.abs(fa) < Math.abs(fb)) [a, b, fa, fb] = [b, a, fb, fa];
  let c = a;
  let fc = fa;
  let d = a;
  let bisected = true;
  for (let step = 0; step < 100; step++) {
    if (Math.abs(fb) <= tolerance || Math.abs(b - a) <= 4 * Number.EPSILON * Math.abs(b)) return b;
    let s: number;
    if (fa !== fc && fb !== fc) {
      s =
        (a * fb * fc) / ((fa - fb) * (fa - fc)) +
        (b * fa * fc) / ((fb - fa) * (fb - fc)) +
        (c * fa * fb) / ((fc - fa) * (fc - fb));
    } else {
      s = b - (fb * (b - a)) / (fb - fa);
    }
    const quarter = (3 * a + b) / 4;
    const outside: boolean = s < Math.min(quarter, b) || s > Math.max(quarter, b);
    const slow: boolean = Math.abs(s - b) >= Math.abs(bisected ? b - c : c - d) / 2;
    bisected = outside || slow;
    if (bisected) s = (a + b) / 2;
    const fs = f(s);
    d = c;
    c = b;
    fc = fb;
    if (fa * fs < 0) [b, fb] = [s, fs];
    else [a, fa] = [s, fs];
    if (Math.abs(fa) < Math.abs(fb)) [a, b, fa, fb] = [b, a, fb, fa];
  }
  return b;
}
