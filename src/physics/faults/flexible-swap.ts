/** Flexible duct put in where semi-rigid or rigid was meant, used as it relaxes out of the box. */
import { onDuct } from './place.ts';
import type { FaultDefinition } from './index.ts';

export const flexibleSwap: FaultDefinition = {
  kind: 'flexible-swap',
  causes: ['swap'],
  fits: (piece, stock) => piece.kind === 'duct' && stock.materials[piece.material]?.behaviour !== 'flexible',
  measure: (amount) => ({ quantity: 'swapped-share', value: amount }),
  apply: (rig, { at, amount }) =>
    onDuct(rig, at, (condition) => ({
      ...condition,
      swap: { share: Math.max(condition.swap?.share ?? 0, amount), material: 'flexible' },
    })),
};
