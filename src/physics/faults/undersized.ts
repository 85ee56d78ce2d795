/** Duct of a smaller bore put in between two reducers. */
import { onDuct } from './place.ts';
import type { FaultDefinition } from './index.ts';

/** Share of the bore missing at amount 1: 150 mm becomes 90 mm. */
export const BORE_MISSING = 0.4;

export const undersized: FaultDefinition = {
  kind: 'undersized',
  causes: ['undersized'],
  fits: (piece) => piece.kind === 'duct',
  measure: (amount) => ({ quantity: 'bore-missing', value: BORE_MISSING * amount }),
  apply: (rig, { at, amount }) =>
    onDuct(rig, at, (condition) => ({
      ...condition,
      boreRatio: Math.min(condition.boreRatio ?? 1, 1 - BORE_MISSING * amount),
    })),
};
