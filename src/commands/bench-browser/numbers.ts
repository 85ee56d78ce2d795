/** The arithmetic of the speed check. */

/** The value below which the share of the values lies, by nearest rank; NaN for no values. */
export function percentile(values: readonly number[], share: number): number {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.max(0, Math.ceil(share * sorted.length) - 1)] ?? NaN;
}

/** The share of the values that lie under `most`; NaN for no values. */
export const shareUnder = (values: readonly number[], most: number): number =>
  values.length === 0 ? NaN : values.filter((value) => value < most).length / values.length;

/** One frame of a screen that shows sixty a second. */
export const FRAME_MS = 1000 / 60;
/** DESIGN: 95 % of frames under 16.7 ms with the processor throttled four times. */
export const BUDGET = { throttle: 4, share: 0.95, most_ms: 16.7 } as const;

export const withinBudget = (frames_ms: readonly number[]): boolean =>
  shareUnder(frames_ms, BUDGET.most_ms) >= BUDGET.share;
