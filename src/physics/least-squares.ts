/**
 * Gauss-Newton with priors, bounds and a numeric Jacobian, for a handful of unknowns. Small dense algebra only.
 */

export interface Unknown {
  readonly start: number;
  /** What is believed beforehand, and how surely (standard deviation, above 0). */
  readonly prior: number;
  readonly standard: number;
  readonly low: number;
  readonly high: number;
}

export interface Fitted {
  readonly values: readonly number[];
  /** Standard error of each, prior included. */
  readonly standard: readonly number[];
  readonly cost: number;
  readonly steps: number;
  readonly settled: boolean;
}

/** Solve a symmetric positive-definite system, and give the inverse (Gauss-Jordan with pivots). */
function inverse(matrix: readonly (readonly number[])[]): number[][] {
  const n = matrix.length;
  const rows = matrix.map((row, i) => [...row, ...row.map((_, j) => (i === j ? 1 : 0))]);
  for (let i = 0; i < n; i++) {
    let pivot = i;
    for (let k = i + 1; k < n; k++) if (Math.abs(rows[k]![i]!) > Math.abs(rows[pivot]![i]!)) pivot = k;
    [rows[i], rows[pivot]] = [rows[pivot]!, rows[i]!];
    const lead = rows[i]![i]!;
    rows[i] = rows[i]!.map((x) => x / lead);
    for (let k = 0; k < n; k++) {
      if (k === i) continue;
      const by = rows[k]![i]!;
      rows[k] = rows[k]!.map((x, j) => x - by * rows[i]![j]!);
    }
  }
  return rows.map((row) => row.slice(n));
}

/**
 * Least of sum residual^2 + sum ((x - prior) / standard)^2. `residuals` are already over their standard errors;
 * null where the model has no answer. Null when it has none at the start.
 */
export function leastSquares(
  unknowns: readonly Unknown[],
  residuals: (values: readonly number[]) => readonly number[] | null,
): Fitted | null {
  const held = (x: number, i: number) => Math.min(unknowns[i]!.high, Math.max(unknowns[i]!.low, x));
  const believed = (values: readonly number[]) =>
    values.reduce((sum, x, i) => sum + ((x - unknowns[i]!.prior) / unknowns[i]!.standard) ** 2, 0);
  const costOf = (values: readonly number[]) => {
    const found = residuals(values);
    return found ? found.reduce((sum, r) => sum + r * r, 0) + believed(values) : Infinity;
  };
  let values = unknowns.map(({ start }, i) => held(start, i));
  let cost = costOf(values);
  if (!Number.isFinite(cost)) return null;
  let settled = false;
  let steps = 0;
  let covariance: number[][] = [];
  for (; steps < 40; steps++) {
    const at = residuals(values)!;
    const slopes = unknowns.map(({ standard }, i) => {
      const step = 1e-4 * standard * (values[i]! + 1e-4 * standard > unknowns[i]!.high ? -1 : 1);
      const moved = residuals(values.map((x, k) => (k === i ? x + step : x)));
      return at.map((r, k) => (moved ? (moved[k]! - r) / step : 0));
    });
    const normal = slopes.map((a, i) =>
      slopes.map(
        (b, j) =>
          a.reduce((sum, x, k) => sum + x * b[k]!, 0) + (i === j ? 1 / unknowns[i]!.standard ** 2 : 0),
      ),
    );
    covariance = inverse(normal);
    if (settled) break;
    const downhill = slopes.map(
      (a, i) =>
        -a.reduce((sum, x, k) => sum + x * at[k]!, 0) -
        (values[i]! - unknowns[i]!.prior) / unknowns[i]!.standard ** 2,
    );
    const move = covariance.map((row) => row.reduce((sum, x, k) => sum + x * downhill[k]!, 0));
    let next = values;
    let nextCost = Infinity;
    for (let scale = 1; scale > 1e-4 && !(nextCost <= cost); scale /= 2) {
      next = values.map((x, i) => held(x + scale * move[i]!, i));
      nextCost = costOf(next);
    }
    const gained = cost - nextCost;
    if (gained >= 0) [values, cost] = [next, nextCost];
    // One more turn for the covariance where it came to rest.
    settled = !(gained > 1e-9 * (1 + cost));
  }
  return { values, standard: covariance.map((row, i) => Math.sqrt(row[i]!)), cost, steps, settled };
}
