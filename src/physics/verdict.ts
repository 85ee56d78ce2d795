/**
 * Whether a measured flow meets a rule: pass, marginal where the rule lies inside the meter's error, fail. A
 * rule whose figure is from memory judges nothing. The code that applies on the job always decides.
 */
import type { Mark } from './types.ts';

/** `published-2nd`: found in a reprint or summary of the document, not in the document itself. */
export type RateMark = Mark | 'published-2nd';

/** Why a verdict is as it is: keys of messages. */
export const VERDICT_REASONS = [
  'verdict.meets',
  'verdict.inside-error',
  'verdict.short',
  'verdict.unchecked-rate',
  'verdict.no-rate',
  'verdict.no-reading',
] as const;
export type VerdictReason = (typeof VERDICT_REASONS)[number];

export interface Judgement {
  readonly verdict: 'pass' | 'marginal' | 'fail' | 'not judged';
  /** Key of a message that says why. */
  readonly reason: VerdictReason;
  /** Key of a message that goes beside every verdict. */
  readonly caution: 'verdict.local-code';
  readonly mark: RateMark;
  readonly required_L_s: number | null;
  /** Where the true flow lies by the meter's error. */
  readonly band_L_s: readonly [number, number] | null;
}

export interface Rule {
  /** null where the document asks for something other than a flow. */
  readonly required_L_s: number | null;
  readonly mark: RateMark;
}

/** Rules that may pass or fail a job. */
const FIRM: readonly RateMark[] = ['published', 'published-2nd', 'transcribed'];

/** `error_L_s` is the half-width of the meter's error at this reading, >= 0. */
export function judge(measured_L_s: number, error_L_s: number, { required_L_s, mark }: Rule): Judgement {
  const measured = Number.isFinite(measured_L_s) && error_L_s >= 0 && Number.isFinite(error_L_s);
  const band = measured ? ([measured_L_s - error_L_s, measured_L_s + error_L_s] as const) : null;
  const say = (verdict: Judgement['verdict'], reason: Judgement['reason']): Judgement => ({
    verdict,
    reason,
    caution: 'verdict.local-code',
    mark,
    required_L_s,
    band_L_s: band,
  });
  if (!band) return say('not judged', 'verdict.no-reading');
  if (required_L_s === null) return say('not judged', 'verdict.no-rate');
  if (!FIRM.includes(mark)) return say('not judged', 'verdict.unchecked-rate');
  // Equal to the upper end of the meter's error still touches the rule.
  if (error_L_s > 0 && band[0] < required_L_s && band[1] >= required_L_s)
    return say('marginal', 'verdict.inside-error');
  return measured_L_s >= required_L_s ? say('pass', 'verdict.meets') : say('fail', 'verdict.short');
}
