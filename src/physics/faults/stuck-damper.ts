/** A backdraught flap stuck part of the way. It no longer shuts against the wind either. */
import { mark } from './place.ts';
import type { FaultDefinition } from './index.ts';

/** Degrees from fully open at amount 1. */
export const STUCK_DEG = 60;

export const stuckDamper: FaultDefinition = {
  kind: 'stuck-damper',
  causes: ['stuck flap'],
  fits: (piece) => piece.kind === 'damper',
  measure: (amount) => ({ quantity: 'flap-angle', value: STUCK_DEG * amount }),
  apply: (rig, { at, amount }) =>
    mark(rig, at, 'damper', (condition) => ({
      ...condition,
      stuck_deg: Math.max(condition.stuck_deg ?? 0, STUCK_DEG * amount),
    })),
};
