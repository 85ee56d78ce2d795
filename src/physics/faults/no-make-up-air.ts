/**
 * No way in for replacement air: the door shuts on its seals. Named at the grille, where the room's air
 * goes in. Amount is 2 000 mm2 over the opening that is left, beside what the room had.
 */
import { mark } from './place.ts';
import type { FaultDefinition } from './index.ts';

export const noMakeUpAir: FaultDefinition = {
  kind: 'no-make-up-air',
  causes: ['make-up'],
  fits: (piece) => piece.kind === 'grille',
  measure: (amount) => ({ quantity: 'sealed-share', value: amount }),
  apply: (rig, { at, amount }) =>
    mark(rig, at, 'grille', (condition) => ({
      ...condition,
      sealed: Math.max(condition.sealed ?? 0, amount),
    })),
};
