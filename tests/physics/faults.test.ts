/** What must hold of every fault, whatever the rig: nothing at 0, never better with more, in any order the same. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  addFault,
  applyFaults,
  FAULTS,
  solve,
  systemCurve,
  type Fault,
  type FaultKind,
  type Rig,
} from '#physics';
import { flowOf, KINDS, rigs, SEEDED, solved, stock } from './rigs.ts';

const share = fc.double({ min: 0, max: 1, noNaN: true });
const manner = fc.constantFrom('bunched' as const, 'draped' as const);

function place(rig: Rig, kind: FaultKind): string | undefined {
  return rig.run.find((piece) => FAULTS[kind].fits(piece, stock))?.id;
}

/** Puts a fault on the first piece it fits; rigs with no such piece say nothing about it. */
function onFirst(rig: Rig, fault: Omit<Fault, 'at'>): Rig {
  const at = place(rig, fault.kind);
  fc.pre(at !== undefined);
  return { ...rig, faults: [...(rig.faults ?? []), { ...fault, at: at! }] };
}

describe.each(KINDS)('%s', (kind) => {
  test('amount 0 changes nothing', () => {
    fc.assert(
      fc.property(rigs(), manner, (rig, how) => {
        expect(solve(onFirst(rig, { kind, amount: 0, manner: how }), stock)).toEqual(solve(rig, stock));
      }),
      { ...SEEDED, numRuns: 150 },
    );
  });

  // On slack duct sag may raise the flow: src/physics/faults/sag.ts says why.
  test('more of it never raises the flow of a run with taut duct, whatever else is wrong with it', () => {
    fc.assert(
      fc.property(rigs({ taut: true }), share, share, manner, (rig, one, other, how) => {
        const at = (amount: number) => flowOf(onFirst(rig, { kind, amount, manner: how }));
        const [less, more] = [Math.min(one, other), Math.max(one, other)];
        expect(at(more)).toBeLessThanOrEqual(at(less) * (1 + 1e-9));
      }),
      { ...SEEDED, numRuns: 400 },
    );
  });

  test('at its worst it costs a sound run flow', () => {
    fc.assert(
      fc.property(rigs({ taut: true, faulty: false }), (rig) => {
        expect(flowOf(onFirst(rig, { kind, amount: 1 }))).toBeLessThan(flowOf(rig));
      }),
      { ...SEEDED, numRuns: 100 },
    );
  });

  test('measures what an amount means on the job, from nothing up', () => {
    expect(FAULTS[kind].kind).toBe(kind);
    expect(FAULTS[kind].measure(0).value).toBe(0);
    expect(FAULTS[kind].measure(1).value).toBeGreaterThan(FAULTS[kind].measure(0.5).value);
  });

  test('the system curve with it lies above the one without, at every flow', () => {
    const flows = [2, 10, 25, 50, 100, 200, 300];
    fc.assert(
      fc.property(
        rigs({ taut: true, faulty: false }),
        share.filter((amount) => amount > 0.02),
        manner,
        (rig, amount, how) => {
          const sound = systemCurve(rig, stock, flows)!;
          const worse = systemCurve(onFirst(rig, { kind, amount, manner: how }), stock, flows)!;
          sound.forEach((point, i) => expect(worse[i]!.pressure_Pa).toBeGreaterThan(point.pressure_Pa));
        },
      ),
      { ...SEEDED, numRuns: 200 },
    );
  });
});

describe('faults together', () => {
  test('any order gives the same flow', () => {
    const shuffled = rigs().chain((rig) =>
      fc
        .shuffledSubarray([...rig.faults!], { minLength: rig.faults!.length })
        .map((faults) => ({ rig, faults })),
    );
    fc.assert(
      fc.property(shuffled, ({ rig, faults }) => {
        expect(Math.abs(flowOf({ ...rig, faults }) / flowOf(rig) - 1)).toBeLessThan(1e-9);
      }),
      { ...SEEDED, numRuns: 500 },
    );
  });

  test('listed on the rig or put into its pieces beforehand, they cost the same', () => {
    fc.assert(
      fc.property(rigs(), (rig) => {
        const listed = solved(rig);
        expect(solved({ ...applyFaults(rig), faults: [] })).toEqual(listed);
        expect(solved({ ...rig.faults!.reduce(addFault, rig), faults: [] })).toEqual(listed);
      }),
      { ...SEEDED, numRuns: 100 },
    );
  });

  test('a swap that is whole is that material relaxed: 15 % short of its full length', () => {
    const run = (material: string, fullLength_m: number): Rig => ({
      name: 'swap',
      run: [
        { id: 'grille', kind: 'grille', diameter_mm: 150 },
        { id: 'duct', kind: 'duct', material, diameter_mm: 150, path_m: 6, fullLength_m },
        { id: 'fan', kind: 'fan', fan: 'mixed-150' },
        { id: 'end', kind: 'terminal', form: 'wall-cowl', diameter_mm: 150 },
      ],
    });
    const swapped = flowOf({
      ...run('semi-rigid', 6),
      faults: [{ kind: 'flexible-swap', at: 'duct', amount: 1 }],
    });
    expect(swapped).toBeCloseTo(flowOf(run('flexible', 6 / 0.85)), 8);
  });
});
