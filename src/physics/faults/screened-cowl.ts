/** A mesh put over the cowl against birds, which then catches lint. */
import { mark } from './place.ts';
import type { FaultDefinition } from './index.ts';

/** Share of the opening that wires and lint take at amount 1. */
export const SCREEN_TAKES = 0.7;

export const screenedCowl: FaultDefinition = {
  kind: 'screened-cowl',
  causes: ['screen'],
  fits: (piece) => piece.kind === 'terminal',
  measure: (amount) => ({ quantity: 'blocked-share', value: SCREEN_TAKES * amount }),
  apply: (rig, { at, amount }) =>
    mark(rig, at, 'terminal', (condition) => ({
      ...condition,
      screened: Math.max(condition.screened ?? 0, SCREEN_TAKES * amount),
    })),
};
