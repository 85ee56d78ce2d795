/**
 * A joint pulled apart, and at amount 1 off altogether: then nothing passes from the room (before the
 * fan) or to the outdoors (behind it). Short of that it is a gap. Behind the fan the room gives more
 * the further it is apart; before the fan what leaves the wall grows, but it is roof air.
 */
import { hasJoint, onJoint } from './place.ts';
import type { FaultDefinition } from './index.ts';

/** Gap just before it comes off, mm: clear of a sleeve (model assumption). */
export const PULLS_APART_MM = 50;

export const jointOff: FaultDefinition = {
  kind: 'joint-off',
  causes: ['entry', 'exit'],
  mayRaise: ['room', 'fan', 'outdoors'],
  fits: hasJoint,
  measure: (amount) => ({ quantity: 'gap', value: PULLS_APART_MM * amount }),
  apply: (rig, { at, amount }) =>
    onJoint(rig, at, (joint) => ({
      ...joint,
      gap_mm: Math.max(joint.gap_mm ?? 0, PULLS_APART_MM * amount),
      ...(amount >= 1 ? { off: true } : {}),
    })),
};
