/** Overtightened ties: one at every support between the ends, each drawing the bore in. */
import { onDuct } from './place.ts';
import type { FaultDefinition } from './index.ts';

/** Share of the bore taken at amount 1. */
export const TIGHTEST = 0.5;

export const tightTies: FaultDefinition = {
  kind: 'tight-ties',
  causes: ['ties'],
  fits: (piece, stock) => piece.kind === 'duct' && stock.materials[piece.material]?.behaviour !== 'rigid',
  measure: (amount) => ({ quantity: 'tied-share', value: TIGHTEST * amount }),
  apply: (rig, { at, amount }) =>
    onDuct(rig, at, (condition) => ({
      ...condition,
      tieRatio: Math.min(condition.tieRatio ?? 1, 1 - TIGHTEST * amount),
    })),
};
