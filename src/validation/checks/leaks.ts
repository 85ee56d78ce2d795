/** Leaks: classes in two systems of units, holes, and the base case with leaks against a network solver. */
import {
  hole,
  LEAK_CLASSES,
  leakFlow,
  SEAM_EXPONENT,
  type Duct,
  type Piece,
  type Rig,
  type Solution,
} from '#physics';
import { seedRig } from '#catalogue';
import type { Check } from '../types.ts';
import { SAME_FORMULA, solved } from '../engine.ts';

/** L/s per m2 for an American leak class (cubic feet a minute per 100 ft2 at 1 in of water, exponent 0.65). */
const american = (leakClass: number, pressure_Pa: number) =>
  leakClass * (0.4719474 / 9.290304) * (pressure_Pa / 249.089) ** 0.65;
/** L/s per m2 as the engine lets a wall of a class leak. */
const european = (name: keyof typeof LEAK_CLASSES, pressure_Pa: number) =>
  1000 * leakFlow({ coefficient: LEAK_CLASSES[name] / 1000, exponent: SEAM_EXPONENT }, pressure_Pa);
/** L/s through a round hole, discharge 0.6, air of 1.2 kg/m3. */
const through = (diameter_m: number, pressure_Pa: number) =>
  1000 * leakFlow(hole((Math.PI / 4) * diameter_m ** 2, 0.6, 1.2), pressure_Pa);

type Leak = Duct['jointLeak'];
/** 5 mm clear all round a 150 mm joint, L/s at 1 Pa. */
const GAP: Leak = { coefficient_L_s: 1.8251, exponent: 0.5 };

/** The base case with leaks on the flanges of its fan, each in a stub too short to lose anything. */
function leaking(before: Leak, behind: Leak): Solution['flow_L_s'] {
  const rig: Rig = seedRig('base-case');
  const stub = (id: string, jointLeak: Leak): Duct[] =>
    jointLeak ? [{ id, kind: 'duct', material: 'rigid', diameter_mm: 150, path_m: 1e-4, jointLeak }] : [];
  const run = rig.run.flatMap((piece): Piece[] =>
    piece.kind === 'fan' ? [...stub('before', before), piece, ...stub('behind', behind)] : [piece],
  );
  return solved({ ...rig, run }).flow_L_s;
}

const SEAMS = [
  { coefficient_L_s: 0.6, exponent: 0.65 },
  { coefficient_L_s: 0.4, exponent: 0.65 },
] as const;

const solverChecks = (
  [
    ['seams', 'seams of 0.6 before and 0.4 behind the fan', 'room', 84.7039, () => leaking(...SEAMS)],
    ['seams', 'seams of 0.6 before and 0.4 behind the fan', 'fan', 93.1683, () => leaking(...SEAMS)],
    ['seams', 'seams of 0.6 before and 0.4 behind the fan', 'outdoors', 86.3144, () => leaking(...SEAMS)],
    ['gap-before', '5 mm gap before the fan', 'room', 78.5079, () => leaking(GAP, undefined)],
    ['gap-before', '5 mm gap before the fan', 'outdoors', 91.468, () => leaking(GAP, undefined)],
    ['gap-behind', '5 mm gap behind the fan', 'room', 94.2713, () => leaking(undefined, GAP)],
    ['gap-behind', '5 mm gap behind the fan', 'outdoors', 79.6165, () => leaking(undefined, GAP)],
  ] as const
).map(([id, what, side, published, flows]): Check => ({
  id: `epanet-${id}-${side}`,
  source: 'epanet',
  where: 'base case with leaks driven by static pressure',
  mark: 'computed independently',
  quantity: `flow ${side === 'room' ? 'from the room' : side === 'fan' ? 'through the fan' : 'outdoors'}, ${what}`,
  unit: 'L/s',
  published,
  ours: () => flows()[side],
  allowed: { kind: 'relative', by: 1e-3, why: 'it takes another friction formula' },
}));

export const leakChecks: readonly Check[] = [
  {
    id: 'leak-unsealed',
    source: 'smacna',
    where: 'leak class 48, unsealed; the European class 6 is stated as 0.0675',
    mark: 'published',
    quantity: 'leakage at 1 Pa of one class in the units of the other',
    unit: 'L/s per m²',
    published: 0.0675,
    ours: () => american(48, 1),
    allowed: { kind: 'absolute', by: 0.0001, why: 'two systems of units, rounded apart' },
  },
  {
    id: 'leak-class-american',
    source: 'en-12237',
    where: 'class A, 0.027',
    mark: 'computed independently',
    quantity: 'the American leak class that is the same',
    unit: '',
    published: 19.2,
    ours: () => european('A', 1) / american(1, 1),
    allowed: { kind: 'absolute', by: 0.06, why: SAME_FORMULA },
  },
  ...(
    [
      ['A', 0.84534],
      ['C', 0.09393],
    ] as const
  ).map(([name, published]): Check => ({
    id: `leak-class-${name.toLowerCase()}`,
    source: 'en-12237',
    where: `class ${name} at 200 Pa`,
    mark: 'computed independently',
    quantity: 'most that the class lets through',
    unit: 'L/s per m²',
    published,
    ours: () => european(name, 200),
    allowed: { kind: 'absolute', by: 0.00001, why: SAME_FORMULA },
  })),
  ...(
    [
      [10, 50, 0.4302],
      [20, 100, 2.4335],
    ] as const
  ).map(([bore, pressure, published]): Check => ({
    id: `hole-${bore}`,
    source: 'orifice',
    where: `${bore} mm hole at ${pressure} Pa`,
    mark: 'computed independently',
    quantity: 'leak through a hole',
    unit: 'L/s',
    published,
    ours: () => through(bore / 1000, pressure),
    allowed: { kind: 'absolute', by: 0.00006, why: SAME_FORMULA },
  })),
  ...solverChecks,
];
