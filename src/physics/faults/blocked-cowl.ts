/** A cowl with a nest in it, a leaf or a flap painted shut part of the way. */
import { mark } from './place.ts';
import type { FaultDefinition } from './index.ts';

/** Share of the opening closed at amount 1. */
export const NEST_CLOSES = 0.8;

export const blockedCowl: FaultDefinition = {
  kind: 'blocked-cowl',
  causes: ['blocked'],
  fits: (piece) => piece.kind === 'terminal',
  measure: (amount) => ({ quantity: 'blocked-share', value: NEST_CLOSES * amount }),
  apply: (rig, { at, amount }) =>
    mark(rig, at, 'terminal', (condition) => ({
      ...condition,
      blocked: Math.max(condition.blocked ?? 0, NEST_CLOSES * amount),
    })),
};
