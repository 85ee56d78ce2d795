/** Extra length: duct beyond what the hung path needs, bunched along it or lying in loops. */
import { onDuct } from './place.ts';
import type { FaultDefinition } from './index.ts';

/** Metres left in at amount 1. */
export const LONGEST_M = 3;

export const extraLength: FaultDefinition = {
  kind: 'extra-length',
  causes: ['compression', 'loops'],
  fits: (piece, stock) => piece.kind === 'duct' && stock.materials[piece.material]?.behaviour !== 'rigid',
  measure: (amount) => ({ quantity: 'extra-length', value: LONGEST_M * amount }),
  apply: (rig, { at, amount, manner }) =>
    onDuct(rig, at, (condition) => {
      const key = manner === 'draped' ? 'draped_m' : 'bunched_m';
      return { ...condition, [key]: (condition[key] ?? 0) + LONGEST_M * amount };
    }),
};
