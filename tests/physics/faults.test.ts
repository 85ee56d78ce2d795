/** What must hold of every fault, whatever the rig: nothing at 0, never better with more, in any order the same. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  addFault,
  applyFaults,
  fanCurveOf,
  FAULTS,
  solve,
  systemCurve,
  type Fault,
  type FaultKind,
  type Rig,
} from '#physics';
import { flowOf, KINDS, LEAKS, leakyRigs, rigs, SEEDED, solved, stock } from './rigs.ts';

/** Faults at work on the fan or on the way, not as a loss of the run. */
const NO_LOSS: readonly FaultKind[] = [...LEAKS, 'weak-fan'];

const share = fc.double({ min: 0, max: 1, noNaN: true });
const manner = fc.constantFrom('bunched' as const, 'draped' as const);

function place(rig: Rig, kind: FaultKind): string | undefined {
  return rig.run.find((piece) => FAULTS[kind].fits(piece, stock))?.id;
}

/** Few runs have a flap; this one gets one before its terminal. */
function withFlap(rig: Rig): Rig {
  if (rig.run.some(({ kind }) => kind === 'damper')) return rig;
  const bore = rig.run.at(-1)!.diameter_mm!;
  return { ...rig, run: rig.run.toSpliced(-1, 0, { id: 'flap', kind: 'damper', diameter_mm: bore }) };
}

/** Whether the fan gives less pressure the more it moves, all the way. */
function falls(rig: Rig): boolean {
  const flows = Array.from({ length: 200 }, (_, i) => i * 3);
  const pressures = fanCurveOf(rig, stock, flows)!.map((point) => point.pressure_Pa);
  return pressures.every((pressure, i) => i === 0 || pressure <= pressures[i - 1]! + 1e-12);
}

/** The rig as `onFirst` would leave it without the fault. */
const ready = (rig: Rig, kind: FaultKind): Rig => (kind === 'stuck-damper' ? withFlap(rig) : rig);

/** Puts a fault on the first piece it fits; rigs with no such piece say nothing about it. */
function onFirst(given: Rig, fault: Omit<Fault, 'at'>): Rig {
  const rig = fault.kind === 'stuck-damper' ? withFlap(given) : given;
  const at = place(rig, fault.kind);
  fc.pre(at !== undefined);
  return { ...rig, faults: [...(rig.faults ?? []), { ...fault, at: at! }] };
}

describe.each(KINDS)('%s', (kind) => {
  test('amount 0 changes nothing', () => {
    fc.assert(
      fc.property(rigs(), manner, (rig, how) => {
        expect(solve(onFirst(rig, { kind, amount: 0, manner: how }), stock)).toEqual(
          solve(ready(rig, kind), stock),
        );
      }),
      { ...SEEDED, numRuns: 150 },
    );
  });

  // On slack duct sag may raise the flow; a leak raises some flow wherever it is, and is held to what it
  // may do further down. The file of each such fault says why.
  if (!LEAKS.includes(kind)) {
    test('more of it never raises any flow of a run with taut duct, whatever else is wrong with it', () => {
      fc.assert(
        fc.property(rigs({ taut: true }), share, share, manner, (rig, one, other, how) => {
          const at = (amount: number) => solved(onFirst(rig, { kind, amount, manner: how })).flow_L_s;
          const [less, more] = [at(Math.min(one, other)), at(Math.max(one, other))];
          for (const flow of ['room', 'fan', 'outdoors'] as const)
            expect(more[flow]).toBeLessThanOrEqual(less[flow] * (1 + 1e-9));
        }),
        { ...SEEDED, numRuns: 300 },
      );
    }, 60_000);
  }

  test('says that it may raise a flow only where it is sag or a leak', () => {
    expect(FAULTS[kind].mayRaise !== undefined).toBe(kind === 'sag' || LEAKS.includes(kind));
  });

  test('at its worst it costs a sound run flow', () => {
    fc.assert(
      fc.property(rigs({ taut: true, faulty: false }), (rig) => {
        const { room, outdoors } = solved(onFirst(rig, { kind, amount: 1 })).flow_L_s;
        // On the rising part of a fan's curve a leak can lift everything.
        fc.pre(!LEAKS.includes(kind) || falls(rig));
        const sound = flowOf(ready(rig, kind));
        // What counts is air from the room that gets outdoors; a leak may raise either by itself.
        expect(Math.min(room, outdoors)).toBeLessThan(sound);
      }),
      { ...SEEDED, numRuns: 100 },
    );
  });

  test('measures what an amount means on the job, from nothing up', () => {
    expect(FAULTS[kind].kind).toBe(kind);
    expect(FAULTS[kind].measure(0).value).toBe(0);
    expect(FAULTS[kind].measure(1).value).toBeGreaterThan(FAULTS[kind].measure(0.5).value);
  });

  if (NO_LOSS.includes(kind)) return;

  test('the system curve with it lies above the one without, at every flow', () => {
    const flows = [2, 10, 25, 50, 100, 200, 300];
    fc.assert(
      fc.property(
        rigs({ taut: true, faulty: false }),
        share.filter((amount) => amount > 0.02),
        manner,
        (rig, amount, how) => {
          const sound = systemCurve(ready(rig, kind), stock, flows)!;
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

  test('any order gives the same three flows, leaks and all', () => {
    fc.assert(
      fc.property(leakyRigs(), (rig) => {
        const turned = { ...rig, faults: [...rig.faults!].reverse() };
        expect(solved(turned).flow_L_s).toEqual(solved(rig).flow_L_s);
      }),
      { ...SEEDED, numRuns: 300 },
    );
  }, 60_000);

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

describe('leaks on one side of the fan', () => {
  const sides = fc.constantFrom('before' as const, 'behind' as const);
  const joint = fc.constantFrom('joint-weep' as const, 'joint-open' as const);

  test('before it: more leak, less from the room; behind it: more from the room, less outdoors', () => {
    fc.assert(
      fc.property(
        rigs({ taut: true, faulty: false }),
        sides,
        joint,
        share,
        share,
        (rig, side, kind, a, b) => {
          const fan = rig.run.findIndex((piece) => piece.kind === 'fan');
          const at = rig.run.find(
            (piece, i) => (side === 'before' ? i < fan : i > fan) && FAULTS[kind].fits(piece, stock),
          );
          fc.pre(at !== undefined && falls(rig));
          const flows = (amount: number) =>
            solved({ ...rig, faults: [{ kind, at: at!.id, amount }] }).flow_L_s;
          const [less, more] = [flows(Math.min(a, b)), flows(Math.max(a, b))];
          const slack = 1 + 1e-9;
          expect(more.fan * slack).toBeGreaterThanOrEqual(less.fan);
          if (side === 'before') {
            expect(more.room).toBeLessThanOrEqual(less.room * slack);
            expect(more.outdoors * slack).toBeGreaterThanOrEqual(less.outdoors);
          } else {
            expect(more.room * slack).toBeGreaterThanOrEqual(less.room);
            expect(more.outdoors).toBeLessThanOrEqual(less.outdoors * slack);
          }
        },
      ),
      { ...SEEDED, numRuns: 500 },
    );
  }, 60_000);
});
