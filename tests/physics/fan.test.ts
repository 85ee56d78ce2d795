/** A fan's curve beyond its table, and the laws of speed and density. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { fanCurve, monotoneCubic, type FanTable, type Rig } from '#physics';
import { rigs, SEEDED, solved } from './rigs.ts';

const table: FanTable = {
  pressure: 'total',
  points: [
    { flow_L_s: 20, pressure_Pa: 200, power_W: 30 },
    { flow_L_s: 40, pressure_Pa: 170, power_W: 34 },
    { flow_L_s: 60, pressure_Pa: 120, power_W: 36 },
    { flow_L_s: 80, pressure_Pa: 50, power_W: 35 },
  ],
};
const curve = fanCurve(table, 1.2, 1, 0.15);

describe('beyond the table', () => {
  test('shut-off pressure is at least the first point and at most 1.15 of it', () => {
    expect(curve.totalPressure(0)).toBeGreaterThan(200);
    expect(curve.totalPressure(0)).toBeLessThanOrEqual(1.15 * 200);
    const steep = fanCurve(
      {
        ...table,
        points: [
          { flow_L_s: 20, pressure_Pa: 200 },
          { flow_L_s: 30, pressure_Pa: 0 },
        ],
      },
      1.2,
      1,
      0.15,
    );
    expect(steep.totalPressure(0)).toBeCloseTo(230, 9);
  });

  test('the last slope is followed to free delivery; past it the fan resists, and more so the farther', () => {
    const free = curve.freeFlow;
    expect(free).toBeGreaterThan(0.08);
    expect(curve.totalPressure(free)).toBeCloseTo(0, 9);
    expect(curve.totalPressure(free * 1.1)).toBeLessThan(0);
    expect(curve.totalPressure(free * 2)).toBeLessThan(2 * curve.totalPressure(free * 1.2));
  });

  test('one curve without a step, falling throughout', () => {
    let before = curve.totalPressure(0);
    for (let flow = 0.0001; flow < 0.15; flow += 0.0001) {
      const now = curve.totalPressure(flow);
      expect(now).toBeLessThanOrEqual(before);
      expect(before - now, `at ${flow}`).toBeLessThan(1.5);
      before = now;
    }
    expect(curve.falling).toBe(true);
  });

  test('a solution outside the table says so', () => {
    const rig = (lossCoefficient: number): Rig => ({
      name: 'outside',
      run: [
        { id: 'grille', kind: 'grille', diameter_mm: 150, lossCoefficient },
        { id: 'fan', kind: 'fan', fan: table },
        { id: 'end', kind: 'terminal', form: 'open-end', diameter_mm: 150 },
      ],
    });
    const codes = (k: number) => solved(rig(k)).warnings.map((note) => note.code);
    expect(codes(0)).toContain('outside-fan-table');
    expect(codes(10)).toEqual([]);
    expect(codes(1000)).toContain('outside-fan-table');
  });
});

test('a static table gains the velocity pressure of its outlet', () => {
  const still = fanCurve({ ...table, pressure: 'static', outletDiameter_mm: 100 }, 1.2, 1, 0.15);
  const dynamic = 0.6 * (0.05 / (Math.PI * 0.05 ** 2)) ** 2;
  expect(still.totalPressure(0.05) - curve.totalPressure(0.05)).toBeCloseTo(dynamic, 9);
  expect(still.velocityPressure(0.05)).toBeCloseTo(dynamic, 9);
});

test('no power in the table, none in the answer; else within its rows, from the motor floor up', () => {
  expect(
    fanCurve(
      { ...table, points: table.points.map(({ flow_L_s, pressure_Pa }) => ({ flow_L_s, pressure_Pa })) },
      1.2,
      1,
      0.15,
    ).power(0.05),
  ).toBeNull();
  expect(curve.power(0.04)).toBeCloseTo(34, 9);
  expect(curve.power(0.2)).toBeCloseTo(35, 9);
  expect(fanCurve({ ...table, motorFloor_W: 4 }, 1.2, 0.5, 0.15).power(0.02)).toBeCloseTo(4 + 30 / 8, 9);
});

describe('laws', () => {
  const free = rigs({ faulty: false });

  test('thinner air at the same viscosity: same litres, pressure and power in proportion', () => {
    fc.assert(
      fc.property(free, fc.double({ min: 0.6, max: 1.4, noNaN: true }), (rig, density) => {
        const at = (density_kg_m3: number) =>
          solved({ ...rig, air: { density_kg_m3, kinematicViscosity_m2_s: 1.5e-5 } });
        const [one, other] = [at(1.2), at(density)];
        expect(other.flow_L_s.fan / one.flow_L_s.fan).toBeCloseTo(1, 7);
        expect(other.fan.pressure_Pa / one.fan.pressure_Pa).toBeCloseTo(density / 1.2, 6);
      }),
      { ...SEEDED, numRuns: 200 },
    );
  });

  test('power follows density and the cube of speed', () => {
    expect(fanCurve(table, 0.9, 1, 0.15).power(0.05)).toBeCloseTo(0.75 * curve.power(0.05)!, 9);
    expect(fanCurve(table, 1.2, 0.8, 0.15).power(0.04)).toBeCloseTo(0.512 * curve.power(0.05)!, 9);
  });

  test('with losses that are all squares of flow, flow follows speed exactly', () => {
    const at = (speed: number) =>
      solved({
        name: 'squares',
        run: [
          { id: 'grille', kind: 'grille', diameter_mm: 150, lossCoefficient: 7 },
          { id: 'fan', kind: 'fan', fan: table, speed },
          { id: 'end', kind: 'terminal', form: 'open-end', diameter_mm: 150 },
        ],
      });
    for (const speed of [0.05, 0.5, 1.3]) {
      expect(at(speed).flow_L_s.fan / at(1).flow_L_s.fan).toBeCloseTo(speed, 8);
      expect(at(speed).fan.pressure_Pa / at(1).fan.pressure_Pa).toBeCloseTo(speed ** 2, 8);
    }
  });
});

test('a deep stall dip crosses a run three times: outer two stable, the lowest taken, and said', () => {
  const deep = (lossCoefficient: number): Rig => ({
    name: 'dip',
    air: { density_kg_m3: 1.2, kinematicViscosity_m2_s: 1.5e-5 },
    run: [
      { id: 'grille', kind: 'grille', diameter_mm: 100, lossCoefficient },
      {
        id: 'fan',
        kind: 'fan',
        fan: {
          pressure: 'total',
          saddle: true,
          points: [
            [0, 100],
            [20, 30],
            [30, 95],
            [60, 0],
          ].map(([flow_L_s, pressure_Pa]) => ({ flow_L_s: flow_L_s!, pressure_Pa: pressure_Pa! })),
        },
      },
      { id: 'end', kind: 'terminal', form: 'open-end', diameter_mm: 100 },
    ],
  });
  // 0.09 Pa per (L/s)^2 lies over the dip at 20 L/s (36 over 30 Pa) and under the peak at 30 (81 under 95).
  const perK = 0.6 / (Math.PI * 0.05 ** 2) ** 2 / 1e6;
  const solution = solved(deep(0.09 / perK - 1));
  expect(solution.operatingPoints.map((point) => point.stable)).toEqual([true, false, true]);
  const flows = solution.operatingPoints.map((point) => point.flow_L_s);
  for (const [i, [low, high]] of [
    [10, 20],
    [20, 30],
    [30, 40],
  ].entries()) {
    expect(flows[i]).toBeGreaterThan(low!);
    expect(flows[i]).toBeLessThan(high!);
  }
  for (const point of solution.operatingPoints)
    expect(point.pressure_Pa).toBeCloseTo(0.09 * point.flow_L_s ** 2, 6);
  expect(solution.flow_L_s.fan).toBe(flows[0]);
  expect(solution.warnings.map((note) => note.code)).toContain('several-points');
});

test('the interpolant never leaves the two points it lies between', () => {
  const points = fc.array(
    fc.tuple(fc.double({ min: 0.1, max: 50, noNaN: true }), fc.double({ min: 0, max: 500, noNaN: true })),
    { minLength: 2, maxLength: 12 },
  );
  fc.assert(
    fc.property(points, fc.double({ min: 0, max: 1, noNaN: true }), (rows, share) => {
      let x = 0;
      const xs = rows.map(([step]) => (x += step));
      const ys = rows.map(([, y]) => y);
      const { value } = monotoneCubic(xs, ys);
      for (let i = 0; i < xs.length - 1; i++) {
        const between = value(xs[i]! + share * (xs[i + 1]! - xs[i]!));
        expect(between).toBeGreaterThanOrEqual(Math.min(ys[i]!, ys[i + 1]!) - 1e-9);
        expect(between).toBeLessThanOrEqual(Math.max(ys[i]!, ys[i + 1]!) + 1e-9);
      }
    }),
    { ...SEEDED, numRuns: 500 },
  );
});
