/** The shape of a fault in words: read off the piece, whichever fault made it. */
import { expect, it } from 'vitest';
import { stepValues, type TaughtStep } from '#lesson';
import { solve, type Fault, type Solution } from '#physics';
import { seedRig, stock } from '#session';
import { defaults } from '#units';

function solved(faults: readonly Fault[]): Solution {
  const solution = solve({ ...seedRig('upstairs-bathroom'), faults }, stock);
  if (solution.outcome === 'failed') throw new Error(solution.code);
  return solution;
}

function valuesOf(fault: Fault) {
  const step = { id: 'one', kind: 'case', role: 'case', to: { faults: [fault] } } as unknown as TaughtStep;
  return stepValues({ step, healthy: solved([]), before: solved([]), after: solved([fault]) }, defaults);
}

it.each<[Fault, Record<string, string | undefined>]>([
  // Half the width gone from one side, a flat oval of the same girth: 1 - 0.5 squared.
  [
    { kind: 'dented', at: 'inlet', amount: 1 },
    { open: '75 %', dents: '3', bore: undefined },
  ],
  // Four fifths of the width is 0.8 squared of the area.
  [
    { kind: 'tight-ties', at: 'out', amount: 0.4 },
    { open: '64 %', bore: '80 %', ties: '4' },
  ],
  [
    { kind: 'undersized', at: 'out', amount: 0.5 },
    { open: undefined, bore: '80 %', dents: undefined },
  ],
  [
    { kind: 'crimp', at: 'fan', amount: 0.5 },
    { bore: undefined, ties: undefined },
  ],
])('tells %o', (fault, expected) => {
  expect(valuesOf(fault)).toMatchObject(
    Object.fromEntries(Object.entries(expected).filter(([, value]) => value !== undefined)),
  );
  for (const [name, value] of Object.entries(expected))
    if (value === undefined) expect(valuesOf(fault)).not.toHaveProperty(name);
});

it('tells the smallest opening where a duct has several', () => {
  const faults: Fault[] = [
    { kind: 'crushed', at: 'out', amount: 0.5 },
    { kind: 'tight-ties', at: 'out', amount: 0.4 },
  ];
  const step = { id: 'two', kind: 'case', role: 'case', to: { faults } } as unknown as TaughtStep;
  const after = solved(faults);
  const { open } = stepValues({ step, healthy: after, before: after, after }, defaults);
  const crushed = after.pieces.find(({ id }) => id === 'out')!.shape.crushedOpenArea!;
  expect(open).toBe(`${Math.round(100 * Math.min(crushed, 0.64))} %`);
});
