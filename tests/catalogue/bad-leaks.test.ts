/** Leaks, changes of bore, flaps, weather and the faults that go with them, written wrong. */
import { expect, it } from 'vitest';
import { readRig, seedRig } from '#catalogue';
import { FAULTS, type FaultKind } from '#physics';
import { changed, type Loose } from './changed.ts';
import { refuses, type Case } from './refused.ts';

const reducer = (from: number, to: number) => (r: Loose) =>
  r.run.splice(3, 0, { id: 'step', kind: 'reducer', diameter_mm: from, toDiameter_mm: to });

const pieces: Case[] = [
  [
    'a reducer that keeps the bore',
    reducer(100, 100),
    'reducer-keeps-bore',
    'run[3].toDiameter_mm',
    '100 mm at both ends',
  ],
  [
    'a reducer of another bore',
    reducer(125, 100),
    'bores-differ',
    'run[3].diameter_mm',
    '125 mm',
    '"reducer"',
  ],
  [
    'what follows a reducer keeps the old bore',
    reducer(100, 150),
    'bores-differ',
    'run[4].diameter_mm',
    '100 mm',
    '150 mm of "step"',
  ],
  ['no such class', (r) => (r.run[1].leakClass = 'E'), 'not-one-of', 'run[1].leakClass', '"E"', '"A"'],
  [
    'a class and a figure',
    (r) => Object.assign(r.run[1], { leakClass: 'A', leakCoefficient_L_s_m2: 0.03 }),
    'leakage-twice',
    'run[1].leakCoefficient_L_s_m2',
    'one of the two',
  ],
  [
    'an exponent no leak has',
    (r) => (r.run[1].leakExponent = 2),
    'out-of-range',
    'run[1].leakExponent',
    'from 0.5 to 1',
  ],
  [
    'a joint leak without its size',
    (r) => (r.run[1].jointLeak = { exponent: 0.5 }),
    'missing-key',
    'run[1].jointLeak.coefficient_L_s',
  ],
  [
    'four gores',
    (r) =>
      r.run.splice(3, 0, {
        id: 'e',
        kind: 'elbow',
        form: 'gored',
        gores: 4,
        angle_deg: 90,
        diameter_mm: 100,
      }),
    'wrong-type',
    'run[3].gores',
    '3, 5 or 7',
  ],
  ['a storm', (r) => (r.outdoors = { wind_Pa: 5000 }), 'out-of-range', 'outdoors.wind_Pa', '500'],
  ['no wind said', (r) => (r.outdoors = {}), 'missing-key', 'outdoors.wind_Pa'],
  [
    'a roof space of another unit',
    (r) => (r.roofSpace = { pressure_kPa: 1 }),
    'unknown-key',
    'roofSpace.pressure_kPa',
  ],
  ['a shut screen', (r) => (r.run[4].screen = { freeArea: 0 }), 'out-of-range', 'run[4].screen.freeArea'],
  [
    'a place the solution names',
    (r) => (r.run[1].id = 'bare inlet'),
    'reserved-id',
    'run[1].id',
    '"bare inlet"',
  ],
];

refuses('leaks, reducers, flaps and weather', pieces);

/** Pieces of the bathroom run that each kind may not sit on: at least the one named. */
const NOT_HERE: Partial<Record<FaultKind, string>> = {
  'bend-at-fan': 'out',
  'fan-reversed': 'out',
  'joint-weep': 'fan',
  'joint-open': 'grille',
  'joint-off': 'cowl',
  crushed: 'fan',
  dented: 'out',
  'blocked-grille': 'cowl',
  'blocked-cowl': 'grille',
  'screened-cowl': 'grille',
  'stuck-damper': 'cowl',
  undersized: 'fan',
  'no-make-up-air': 'inlet',
  'weak-fan': 'inlet',
};

refuses(
  'a fault where it cannot be',
  Object.entries(NOT_HERE).map(([kind, at]): Case => {
    const words = [`"${at}"`, kind];
    return [kind, (r) => (r.faults = [{ kind, at, amount: 0.5 }]), 'wrong-place', 'faults[0].at', ...words];
  }),
);

refuses('keys of a fault', [
  [
    'straight duct before a crimp',
    (r) => (r.faults = [{ kind: 'crimp', at: 'fan', amount: 0.5, straight_m: 1 }]),
    'unknown-key',
    'faults[0].straight_m',
  ],
]);

it('accepts each kind of fault on each piece it fits', () => {
  const rig = seedRig('leaky-loft-run');
  for (const [kind, at] of rig.faults!.map((fault) => [fault.kind, fault.at] as const)) {
    expect(FAULTS[kind].kind).toBe(kind);
    const one = changed((r) => (r.faults = [{ kind, at, amount: 1 }]), 'leaky-loft-run');
    expect(readRig(one, 'a-rig.json')).toMatchObject({ ok: true });
  }
});
