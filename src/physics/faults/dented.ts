/** Semi-rigid duct dented as it was dragged in: once every half metre, and it does not spring back. */
import { onDuct } from './place.ts';
import type { FaultDefinition } from './index.ts';

/** Share of the bore that each dent takes at amount 1. */
export const DEEPEST_DENT = 0.5;

export const dented: FaultDefinition = {
  kind: 'dented',
  causes: ['dents'],
  fits: (piece, stock) =>
    piece.kind === 'duct' && stock.materials[piece.material]?.behaviour === 'semi-rigid',
  measure: (amount) => ({ quantity: 'dent-depth', value: DEEPEST_DENT * amount }),
  apply: (rig, { at, amount }) =>
    onDuct(rig, at, (condition) => ({
      ...condition,
      dented: Math.max(condition.dented ?? 0, DEEPEST_DENT * amount),
    })),
};
