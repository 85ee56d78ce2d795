/** A grille clogged with lint, or painted over. */
import { mark } from './place.ts';
import type { FaultDefinition } from './index.ts';

/** Share of the open face closed at amount 1. */
export const CLOGS = 0.9;

export const blockedGrille: FaultDefinition = {
  kind: 'blocked-grille',
  causes: ['blocked'],
  fits: (piece) => piece.kind === 'grille',
  measure: (amount) => ({ quantity: 'blocked-share', value: CLOGS * amount }),
  apply: (rig, { at, amount }) =>
    mark(rig, at, 'grille', (condition) => ({
      ...condition,
      blocked: Math.max(condition.blocked ?? 0, CLOGS * amount),
    })),
};
