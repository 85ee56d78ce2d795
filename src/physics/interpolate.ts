/**
 * Monotone cubic interpolation (Fritsch and Carlson 1980, Fritsch and Butland weights, from memory): it
 * never overshoots the points, so a fan curve gains no dips of its own.
 */
export interface Interpolant {
  readonly value: (x: number) => number;
  readonly slopes: readonly number[];
}

/** `xs` strictly increasing, at least two; outside them the end polynomials are not meant to be used. */
export function monotoneCubic(xs: readonly number[], ys: readonly number[]): Interpolant {
  const n = xs.length;
  const h = Array.from({ length: n - 1 }, (_, i) => xs[i + 1]! - xs[i]!);
  const d = h.map((step, i) => (ys[i + 1]! - ys[i]!) / step);
  const slopes = xs.map((_, i) => {
    if (n === 2) return d[0]!;
    if (i === 0) return endSlope(h[0]!, h[1]!, d[0]!, d[1]!);
    if (i === n - 1) return endSlope(h[n - 2]!, h[n - 3]!, d[n - 2]!, d[n - 3]!);
    const left = d[i - 1]!;
    const right = d[i]!;
    if (left * right <= 0) return 0;
    const w1 = 2 * h[i]! + h[i - 1]!;
    const w2 = h[i]! + 2 * h[i - 1]!;
    return (w1 + w2) / (w1 / left + w2 / right);
  });
  const value = (x: number): number => {
    let i = 0;
    while (i < n - 2 && x > xs[i + 1]!) i++;
    const step = h[i]!;
    const t = (x - xs[i]!) / step;
    const u = 1 - t;
    return (
      ys[i]! * u * u * (1 + 2 * t) +
      ys[i + 1]! * t * t * (3 - 2 * t) +
      step * t * u * (slopes[i]! * u - slopes[i + 1]! * t)
    );
  };
  return { value, slopes };
}

function endSlope(h0: number, h1: number, d0: number, d1: number): number {
  const slope = ((2 * h0 + h1) * d0 - h0 * d1) / (h0 + h1);
  if (slope * d0 <= 0) return 0;
  if (d0 * d1 < 0 && Math.abs(slope) > 3 * Math.abs(d0)) return 3 * d0;
  return slope;
}
