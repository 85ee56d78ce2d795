/** Every coefficient that is not a law has a range, a source and a mark, and is really used. */
import { describe, expect, test } from 'vitest';
import { CENTRAL, COEFFICIENTS, solve, type Coefficient, type CoefficientName, type Rig } from '#physics';
import leakyLoftRun from '../../seeds/rigs/leaky-loft-run.json' with { type: 'json' };
import { stock } from './rigs.ts';

const names = Object.keys(COEFFICIENTS) as CoefficientName[];
const MARKS = [
  'published',
  'transcribed',
  'memory',
  'model assumption',
  'common practice, no source',
  'invented',
];

const rig: Rig = {
  name: 'a use for each',
  room: { volume_m3: 12, makeUpFreeArea_mm2: 14000 },
  run: [
    { id: 'grille', kind: 'grille', diameter_mm: 150 },
    {
      id: 'in',
      kind: 'duct',
      material: 'semi-rigid',
      diameter_mm: 150,
      path_m: 2,
      bends: [{ angle_deg: 90, radiusRatio: 1 }],
    },
    { id: 'fan', kind: 'fan', fan: 'mixed-150' },
    { id: 'out', kind: 'duct', material: 'flexible', diameter_mm: 150, path_m: 5, fullLength_m: 5.5 },
    { id: 'end', kind: 'terminal', form: 'wall-cowl', diameter_mm: 150 },
  ],
  faults: [
    { kind: 'sag', at: 'out', amount: 0.5 },
    { kind: 'crimp', at: 'fan', amount: 0.6 },
    { kind: 'flexible-swap', at: 'in', amount: 0.5 },
    { kind: 'tight-ties', at: 'out', amount: 0.5 },
    { kind: 'extra-length', at: 'out', amount: 0.5, manner: 'draped' },
  ],
};
const bare: Rig = { ...rig, faults: [], run: rig.run.slice(1) };
const ending = (form: 'open-end' | 'rain-cap' | 'high-rain-cap' | 'louvre'): Rig => ({
  ...rig,
  run: rig.run.map((piece) => (piece.kind === 'terminal' ? { ...piece, form } : piece)),
});
const loft = leakyLoftRun as unknown as Rig;
const mended: Rig = { ...loft, faults: [] };
const WHERE: Partial<Record<CoefficientName, Rig>> = {
  bareEntry: { ...bare, faults: [] },
  openEnd: ending('open-end'),
  rainCap: ending('rain-cap'),
  highRainCap: ending('high-rain-cap'),
  louvre: ending('louvre'),
  reducer: loft,
  fanBend: loft,
  outletBend: loft,
  flapOpening: mended,
  flapOpen: mended,
  stuckFlap: loft,
  gapDischarge: loft,
  wallLeakage: loft,
  crushedNeck: loft,
  dent: loft,
  screen: mended,
};

function flow(of: Rig, coefficients = CENTRAL): number {
  const solution = solve(of, stock, coefficients);
  if (solution.outcome !== 'solved') throw new Error(solution.found);
  return solution.flow_L_s.fan;
}

describe.each(names)('%s', (name) => {
  const coefficient: Coefficient = COEFFICIENTS[name];

  test('low <= value <= high, a source, a mark; the central set takes the value', () => {
    expect(coefficient.low).toBeLessThanOrEqual(coefficient.value);
    expect(coefficient.value).toBeLessThanOrEqual(coefficient.high);
    expect(coefficient.source.length).toBeGreaterThan(10);
    expect(MARKS).toContain(coefficient.mark);
    expect(CENTRAL[name]).toBe(coefficient.value);
  });

  test('changes the flow of a run it has to do with', () => {
    const where = WHERE[name] ?? rig;
    expect(flow(where, { ...CENTRAL, [name]: coefficient.value * 1.2 })).not.toBe(flow(where));
  });
});
