/** Worked examples and the size table of ASHRAE Fundamentals 2021 (SI) ch. 21, as transcribed. */
import { airState } from '#physics';
import type { Check } from '../types.ts';
import { ductLoss, PRINTED, straight } from '../engine.ts';

const handbook = (check: Omit<Check, 'source' | 'mark'>): Check => ({
  source: 'ashrae-2021',
  mark: 'transcribed',
  ...check,
});

const INCHES = 'printed figures come from inch units and are rounded: they fit 6 ft where 1.8 m is printed';
const compressed = [
  ['spiral', 'spiral', 0, 7.7],
  ['flexible, taut', 'flexible', 0, 11.4],
  ['flexible, 4 % compressed', 'flexible', 0.04, 19.5],
  ['flexible, 15 % compressed', 'flexible', 0.15, 40],
  ['flexible, 30 % compressed', 'flexible', 0.3, 68.9],
] as const;

const example6 = compressed.map(([name, material, share, published], i) =>
  handbook({
    id: `handbook-6-${i + 1}`,
    where: 'Example 6: 250 mm, 1.8 m, 470 L/s',
    quantity: `pressure lost, ${name}`,
    unit: 'Pa',
    published,
    ours: () => ductLoss(470, { material, diameter_mm: 250, path_m: 1.8, fullLength_m: 1.8 / (1 - share) }),
    allowed: { kind: 'relative', by: 0.04, why: INCHES },
  }),
);

const example8 = (
  [
    [1520, 375, 6, 26],
    [1140, 350, 6, 21],
    [760, 300, 6, 21],
    [380, 225, 4.5, 18],
    [380, 200, 3, 22],
    [760, 350, 6, 10],
    [380, 250, 4.5, 11],
  ] as const
).map(([flow, bore, length, published], i) =>
  handbook({
    id: `handbook-8-${i + 1}`,
    where: 'Example 8: Denver air, spiral',
    quantity: `pressure lost, ${flow} L/s in ${length} m of ${bore} mm`,
    unit: 'Pa',
    published,
    ours: () =>
      ductLoss(
        flow,
        { material: 'spiral', diameter_mm: bore, path_m: length },
        { density_kg_m3: 0.978, kinematicViscosity_m2_s: 1.851e-5 },
      ),
    allowed: { kind: 'absolute', by: 0.6, why: PRINTED },
  }),
);

const example9 = (
  [
    [860, 200, 40, 0.01, 'rounding to whole pascals'],
    [290, 125, 54, 0.01, 'rounding to whole pascals'],
    [580, 180, 32, 0.01, 'rounding to whole pascals'],
    [1440, 280, 18.5, 0.06, 'the printed value looks 5 % low beside its neighbours'],
    [1440, 355, 6, 0.02, 'rounding to whole pascals'],
  ] as const
).map(([flow, bore, published, by, why], i) =>
  handbook({
    id: `handbook-9-${i + 1}`,
    where: 'Example 9: galvanised, 0.09 mm',
    quantity: `friction, ${flow} L/s in ${bore} mm`,
    unit: 'Pa/m',
    published,
    ours: () => ductLoss(flow, { material: 'rigid', diameter_mm: bore, path_m: 1 }),
    allowed: { kind: 'relative', by, why },
  }),
);

const table13 = (
  [
    [240, 0.8, 270],
    [240, 1, 258],
    [240, 1.6, 234],
    [470, 0.4, 402],
    [470, 1, 332],
    [940, 0.8, 452],
    [940, 1.6, 394],
  ] as const
).map(([flow, published, bore], i) =>
  handbook({
    id: `handbook-13-${i + 1}`,
    where: 'Table 13: bores for a friction rate, spiral',
    quantity: `friction, ${flow} L/s in ${bore} mm`,
    unit: 'Pa/m',
    published,
    ours: () => ductLoss(flow, { material: 'spiral', diameter_mm: bore, path_m: 1 }),
    allowed: { kind: 'relative', by: 0.041, why: 'bores are printed to the millimetre, from a chart' },
  }),
);

export const handbookChecks: readonly Check[] = [
  ...example6,
  ...example8,
  ...example9,
  handbook({
    id: 'handbook-9-section',
    where: 'Example 9, section 1: 7.32 m and fittings of 1.09',
    quantity: 'pressure lost, 860 L/s in 200 mm',
    unit: 'Pa',
    published: 785,
    ours: () => 7.32 * straight(200, 860, 0.09).perMetre + 1.09 * straight(200, 860, 0.09).velocityPressure,
    allowed: { kind: 'relative', by: 0.003, why: 'sum of rounded parts' },
  }),
  ...table13,
  handbook({
    id: 'handbook-roughness',
    where: 'Text on roughness 0.15 to 0.09 mm: a drop of 5 to 6 %',
    quantity: 'less friction, 250 mm at 10 m/s',
    unit: '%',
    published: 5.5,
    ours: () => 100 * (1 - straight(250, 490.87, 0.09).perMetre / straight(250, 490.87, 0.15).perMetre),
    allowed: { kind: 'absolute', by: 0.6, why: 'the range printed' },
  }),
  handbook({
    id: 'handbook-air-density',
    where: 'Standard air',
    quantity: 'density, 20 °C, dry',
    unit: 'kg/m³',
    published: 1.204,
    ours: () => airState({ temperature_C: 20, relativeHumidity: 0 }).density,
    allowed: { kind: 'absolute', by: 0.0006, why: PRINTED },
  }),
  handbook({
    id: 'handbook-air-reynolds',
    where: 'Standard air: Re = 66.4 D V',
    quantity: 'Reynolds number of 1 mm at 1 m/s, 20 °C, dry',
    unit: '',
    published: 66.4,
    ours: () => 0.001 / airState({ temperature_C: 20, relativeHumidity: 0 }).viscosity,
    allowed: { kind: 'absolute', by: 0.06, why: PRINTED },
  }),
];
