/** What the placeholders of a step stand for, against the engine. */
import { describe, expect, it } from 'vitest';
import { stepValues, type TaughtStep } from '#lesson';
import { solve, type Fault } from '#physics';
import { seedRig, stock } from '#catalogue';
import { defaults } from '#units';

const rig = seedRig('upstairs-bathroom');

/** Values of a case that opens with nothing wrong and ends with these faults. */
function valuesWith(faults: Fault[], subject?: string) {
  const solved = (wrong: Fault[]) => {
    const solution = solve({ ...rig, faults: wrong }, stock);
    if (solution.outcome === 'failed') throw new Error(solution.found);
    return solution;
  };
  const step = {
    id: 'step',
    kind: 'case',
    role: 'case',
    to: { faults },
    explain: { options: ['a', 'b', 'c'], right: 'a' },
    ...(subject === undefined ? {} : { subject }),
  } as TaughtStep;
  return stepValues({ step, healthy: solved([]), before: solved([]), after: solved(faults) }, defaults);
}

describe('{open}', () => {
  it.each<[string, Fault, string]>([
    ['a crimped mouth', { kind: 'crimp', at: 'fan', amount: 1 }, '19 %'],
    ['a screened cowl', { kind: 'screened-cowl', at: 'cowl', amount: 1 }, '30 %'],
    ['a blocked cowl', { kind: 'blocked-cowl', at: 'cowl', amount: 0.5 }, '60 %'],
  ])('is what is left of %s', (_name, fault, left) => {
    expect(valuesWith([fault]).open).toBe(left);
  });

  it('is no value of a piece that is not narrowed', () => {
    expect(valuesWith([{ kind: 'crimp', at: 'fan', amount: 1 }], 'cowl').open).toBeUndefined();
  });
});
