/**
 * A joint half open: tape let go on one side and the duct hanging off. As with a weeping joint, one
 * behind the fan raises what the room gives while less gets outdoors.
 */
import { hasJoint, onJoint } from './place.ts';
import type { FaultDefinition } from './index.ts';

/** Gap all round that lets as much through at amount 1, mm: 20 mm over half the way round (model assumption). */
export const OPENS_MM = 10;

export const jointOpen: FaultDefinition = {
  kind: 'joint-open',
  causes: [],
  mayRaise: ['room', 'fan', 'outdoors'],
  fits: hasJoint,
  measure: (amount) => ({ quantity: 'gap', value: OPENS_MM * amount }),
  apply: (rig, { at, amount }) =>
    onJoint(rig, at, (joint) => ({ ...joint, gap_mm: Math.max(joint.gap_mm ?? 0, OPENS_MM * amount) })),
};
