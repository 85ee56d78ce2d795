/** Every reason there is; words for each stand in the messages under `refusal.`. */
export const REFUSALS = [
  'too-many-faults',
  'minutes-not-positive',
  'one-speed-only',
  'speed-out-of-range',
  'cannot-reach',
  'watts-out-of-range',
  'no-power-stated',
] as const;
export type RefusalCode = (typeof REFUSALS)[number];

/** A sound question that has no answer here, as a value: what was asked for, and what would be possible. */
export interface Refusal {
  readonly outcome: 'refused';
  readonly code: RefusalCode;
  /** The number asked for, in `unit`. */
  readonly found: number;
  /** The range that would be allowed, ends included; both ends are the same where only one number would do. */
  readonly allowed: readonly [number, number];
  readonly unit: 'faults' | 'min' | 'share of rated speed' | 'L/s' | 'W';
}

/** Puts one together. `found` and `allowed` are in `unit`. */
export function refused(
  code: Refusal['code'],
  found: number,
  allowed: readonly [number, number],
  unit: Refusal['unit'],
): Refusal {
  return { outcome: 'refused', code, found, allowed, unit };
}
