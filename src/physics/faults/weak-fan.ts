/** A fan too weak for the run: it does what the stated one would at a lower speed. */
import { onFan } from './place.ts';
import type { FaultDefinition } from './index.ts';

/** Share of speed missing at amount 1. */
export const SPEED_MISSING = 0.4;

export const weakFan: FaultDefinition = {
  kind: 'weak-fan',
  causes: [],
  fits: (piece) => piece.kind === 'fan',
  measure: (amount) => ({ quantity: 'speed-missing', value: SPEED_MISSING * amount }),
  apply: (rig, { at, amount }) =>
    onFan(rig, at, (condition) => ({
      ...condition,
      strength: Math.min(condition.strength ?? 1, 1 - SPEED_MISSING * amount),
    })),
};
