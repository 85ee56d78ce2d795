/**
 * A tight bend at the fan. Put in at the fan it is a new bend before the inlet, turned further the
 * more of it there is; at an elbow of the run it is that elbow moved up close. Before the fan the
 * disturbed air spoils what the fan can lift; behind the fan the elbow loses more itself.
 */
import { mark, onFan } from './place.ts';
import type { FaultDefinition } from './index.ts';

/** Angle at amount 1, degrees. */
export const SHARPEST_DEG = 90;

export const bendAtFan: FaultDefinition = {
  kind: 'bend-at-fan',
  causes: ['fan bend'],
  fits: (piece) => piece.kind === 'fan' || piece.kind === 'elbow',
  measure: (amount) => ({ quantity: 'bend-angle', value: SHARPEST_DEG * amount }),
  apply: (rig, { at, amount, straight_m = 0 }) => {
    const moved = mark(rig, at, 'elbow', (condition) => ({
      ...condition,
      closeToFan: Math.max(condition.closeToFan ?? 0, amount),
    }));
    return onFan(moved, at, (condition) => ({
      ...condition,
      inletBend: {
        angle_deg: Math.max(condition.inletBend?.angle_deg ?? 0, SHARPEST_DEG * amount),
        straight_m: Math.min(condition.inletBend?.straight_m ?? Infinity, straight_m),
      },
    }));
  },
};
