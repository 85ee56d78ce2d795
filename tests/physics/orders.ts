/** Every order of n things, for checks by brute force; and a run with ten faults. */
import type { Fault, Rig } from '#physics';
import laundry from '../../seeds/rigs/long-laundry-run.json' with { type: 'json' };

export function orders(count: number): number[][] {
  if (count === 0) return [[]];
  return orders(count - 1).flatMap((order) =>
    Array.from({ length: count }, (_, at) => order.toSpliced(at, 0, count - 1)),
  );
}

export const five = laundry as unknown as Rig;

const more: Fault[] = [
  { kind: 'tight-ties', at: 'riser', amount: 0.5 },
  { kind: 'extra-length', at: 'riser', amount: 0.3, manner: 'draped' },
  { kind: 'sag', at: 'tail', amount: 0.6 },
  { kind: 'extra-length', at: 'tail', amount: 0.3 },
  { kind: 'tight-ties', at: 'tail', amount: 0.4 },
];

export const ten: Rig = { ...five, faults: [...five.faults!, ...more] };
export const six: Rig = { ...five, faults: ten.faults!.slice(0, 6) };
