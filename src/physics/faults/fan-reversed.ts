/** The fan hung the wrong way round for the run: the duct doubles back to it and away again, two more bends. */
import { onFan } from './place.ts';
import type { FaultDefinition } from './index.ts';

/** Angle of each bend at amount 1, degrees. */
export const DOUBLES_BACK_DEG = 90;

export const fanReversed: FaultDefinition = {
  kind: 'fan-reversed',
  causes: ['doubling back'],
  fits: (piece) => piece.kind === 'fan',
  measure: (amount) => ({ quantity: 'bend-angle', value: DOUBLES_BACK_DEG * amount }),
  apply: (rig, { at, amount }) =>
    onFan(rig, at, (condition) => ({
      ...condition,
      doubledBack_deg: Math.max(condition.doubledBack_deg ?? 0, DOUBLES_BACK_DEG * amount),
    })),
};
