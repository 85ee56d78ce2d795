/**
 * A joint that weeps under its tape, at the end of the piece nearer the fan. Before the fan it draws in
 * air of the roof space: the room gives less, and more leaves the wall, roof air in it. Behind the fan it
 * lets the fan breathe: the room gives MORE, and less gets outdoors. A fan in stall may lift all three.
 */
import { hasJoint, onJoint } from './place.ts';
import type { FaultDefinition } from './index.ts';

/** Clear gap all round at amount 1, mm (model assumption). */
export const WEEPS_MM = 0.5;

export const jointWeep: FaultDefinition = {
  kind: 'joint-weep',
  causes: [],
  mayRaise: ['room', 'fan', 'outdoors'],
  fits: hasJoint,
  measure: (amount) => ({ quantity: 'gap', value: WEEPS_MM * amount }),
  apply: (rig, { at, amount }) =>
    onJoint(rig, at, (joint) => ({ ...joint, weep_mm: Math.max(joint.weep_mm ?? 0, WEEPS_MM * amount) })),
};
