/** Crushed: boxes stored on the duct press it flat over a metre of its length. */
import { onDuct } from './place.ts';
import type { FaultDefinition } from './index.ts';

/** Share of the bore pressed flat at amount 1. */
export const CRUSHED_FLATTEST = 0.85;

export const crushed: FaultDefinition = {
  kind: 'crushed',
  causes: ['crushed'],
  fits: (piece, stock) => piece.kind === 'duct' && stock.materials[piece.material]?.behaviour !== 'rigid',
  measure: (amount) => ({ quantity: 'flattened-share', value: CRUSHED_FLATTEST * amount }),
  apply: (rig, { at, amount }) =>
    onDuct(rig, at, (condition) => ({
      ...condition,
      crushed: Math.max(condition.crushed ?? 0, CRUSHED_FLATTEST * amount),
    })),
};
