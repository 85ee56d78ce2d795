/**
 * Sag: the duct hangs between its supports, or between those that are left. The length its curve needs
 * comes out of the slack there is and then from duct let in. Where much slack lies bunched, more sag can
 * raise the flow a little, because it pulls the folds out.
 */
import { onDuct } from './place.ts';
import type { FaultDefinition } from './index.ts';

/** Depth over span at amount 1. */
export const DEEPEST = 0.25;

export const sag: FaultDefinition = {
  kind: 'sag',
  causes: ['sag'],
  mayRaise: ['room', 'fan', 'outdoors'],
  fits: (piece, stock) => piece.kind === 'duct' && stock.materials[piece.material]?.behaviour === 'flexible',
  measure: (amount) => ({ quantity: 'sag-ratio', value: DEEPEST * amount }),
  apply: (rig, { at, amount, span_m }) =>
    onDuct(rig, at, (condition) => ({
      ...condition,
      sagRatio: Math.max(condition.sagRatio ?? 0, DEEPEST * amount),
      ...(span_m === undefined ? {} : { span_m: Math.max(condition.span_m ?? 0, span_m) }),
    })),
};
