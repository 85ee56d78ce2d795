/** Crimp: the duct is flattened where it meets the fan's inlet. Area from a flat oval of the same perimeter. */
import { onFan } from './place.ts';
import type { FaultDefinition } from './index.ts';

/** Share of the bore pressed flat at amount 1. */
export const FLATTEST = 0.9;

export const crimp: FaultDefinition = {
  kind: 'crimp',
  causes: ['crimp', 'fan system effect'],
  fits: (piece) => piece.kind === 'fan',
  measure: (amount) => ({ quantity: 'flattened-share', value: FLATTEST * amount }),
  apply: (rig, { at, amount }) =>
    onFan(rig, at, (condition) => ({
      ...condition,
      inletFlattening: Math.max(condition.inletFlattening ?? 0, FLATTEST * amount),
    })),
};
