/** Which idea a predicted flow speaks for, so that it can be answered by that idea. */

export const VERDICTS = ['same', 'rose', 'too-small', 'about-right', 'too-big'] as const;
/** `too-small` and `too-big` speak of the fall: a prediction above the result saw too small a fall. */
export type Verdict = (typeof VERDICTS)[number];

/** A prediction within 8 % or 2 L/s counts as about right (model assumption: a careful reader's eye on the chart). */
const NEAR_SHARE = 0.08;
const NEAR_L_S = 2;
/** Within 1 L/s of the flow before counts as "it stays the same" (model assumption). */
const SAME_L_S = 1;

/** Which idea a predicted flow speaks for, given the flows before and after, all in L/s at the outlet. */
export function judgePrediction(predicted_L_s: number, before_L_s: number, after_L_s: number): Verdict {
  const miss = Math.abs(predicted_L_s - after_L_s);
  const change = Math.abs(predicted_L_s - before_L_s);
  // Where a fault takes little, a prediction of no change is near the result too: the nearer one decides.
  if (miss <= Math.max(NEAR_SHARE * after_L_s, NEAR_L_S) && miss <= change) return 'about-right';
  if (change <= SAME_L_S) return 'same';
  if (predicted_L_s > before_L_s) return 'rose';
  return predicted_L_s > after_L_s ? 'too-small' : 'too-big';
}
