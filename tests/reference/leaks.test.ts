/**
 * Leaks, checked against figures worked apart from this engine for the base case (seeds/rigs/base-case.json):
 * own scripts, and EPANET 2.3.5 through epanet-js 0.9.0 for the rows marked so. Class limits are those
 * quoted for EN 12237; hole flows follow from the orifice equation.
 */
import { describe, expect, test } from 'vitest';
import {
  hole,
  LEAK_CLASSES,
  leakFlow,
  SEAM_EXPONENT,
  solve,
  systemCurve,
  fanCurveOf,
  type Duct,
  type Fault,
  type LeakClass,
  type Piece,
  type Rig,
  type Solution,
} from '#physics';
import baseCase from '../../seeds/rigs/base-case.json' with { type: 'json' };
import { expectPrinted, expectWithin, stock } from './support.ts';

const base = baseCase as unknown as Rig;
/** The figures have the inlet bend before the duct, so that the duct's joint lies at the fan. */
const rig: Rig = {
  ...base,
  run: [0, 2, 1, 3, 4, 5, 6].map((i) => base.run[i]!),
};

function solved(changed: Rig): Solution {
  const solution = solve(changed, stock);
  if (solution.outcome !== 'solved') throw new Error(`${solution.path}: ${solution.found}`);
  return solution;
}

const change = (id: string, replacement: Partial<Duct>, of: Rig = rig): Rig => ({
  ...of,
  run: of.run.map((piece) => (piece.id === id ? ({ ...piece, ...replacement } as Piece) : piece)),
});

const joints = (before: number, behind: number, exponent: number): Rig =>
  change(
    'discharge',
    { jointLeak: { coefficient_L_s: behind, exponent } },
    change('inlet', { jointLeak: { coefficient_L_s: before, exponent } }),
  );

const withFault = (fault: Fault): Rig => ({ ...rig, faults: [fault] });
const openBy = (at: string, gap_mm: number): Rig =>
  // 10 mm all round at amount 1; wider gaps stand for a joint on its way off, 50 mm at most.
  gap_mm <= 10
    ? withFault({ kind: 'joint-open', at, amount: gap_mm / 10 })
    : withFault({ kind: 'joint-off', at, amount: gap_mm / 50 });

describe('the base case with a leak on each side of the fan, C 0.6 and 0.4 L/s at 1 Pa, exponent 0.65', () => {
  const solution = solved(joints(0.6, 0.4, 0.65));
  const [drawn, lost] = solution.leaks;
  const at = (after: string) => solution.stations.find((station) => station.after === after)!;

  test('three flows and two leaks', () => {
    expectPrinted(solution.flow_L_s.room, '84.7463');
    expectPrinted(-drawn!.flow_L_s, '8.4636');
    expectPrinted(solution.flow_L_s.fan, '93.2099');
    expectPrinted(lost!.flow_L_s, '6.8470');
    expectPrinted(solution.flow_L_s.outdoors, '86.3629');
  });

  test('pressures before and behind the fan, total and static', () => {
    // The leak stands before the fan with the speed that comes up to it, not the fan's.
    expectPrinted(at('inlet').totalPressure_Pa, '-44.8572');
    expectPrinted(drawn!.static_Pa, '-58.6562');
    expectPrinted(at('fan').totalPressure_Pa, '95.6885');
    expectPrinted(lost!.static_Pa, '78.9957');
    expect([drawn!.side, lost!.side]).toEqual(['suction', 'discharge']);
    expect([drawn!.at, lost!.at]).toEqual(['inlet', 'discharge']);
  });

  test('EPANET, its friction law: 84.7039 / 93.1683 / 86.3144', () => {
    expectWithin(solution.flow_L_s.room, 84.7039, 1e-3);
    expectWithin(solution.flow_L_s.fan, 93.1683, 1e-3);
    expectWithin(solution.flow_L_s.outdoors, 86.3144, 1e-3);
  });

  test('the curves of fan and run cross where it was solved', () => {
    const flow = [solution.flow_L_s.fan];
    const asked = systemCurve(joints(0.6, 0.4, 0.65), stock, flow)![0]!.pressure_Pa;
    expect(Math.abs(asked - fanCurveOf(rig, stock, flow)![0]!.pressure_Pa)).toBeLessThan(1e-6);
  });
});

test('small leaks, C 0.05 on both sides: 89.1220 / 0.7529 / 89.8748 / 0.9046 / 88.9702', () => {
  const { flow_L_s, leaks } = solved(joints(0.05, 0.05, 0.65));
  expectPrinted(flow_L_s.room, '89.1220');
  expectPrinted(-leaks[0]!.flow_L_s, '0.7529');
  expectPrinted(flow_L_s.fan, '89.8748');
  expectPrinted(leaks[1]!.flow_L_s, '0.9046');
  expectPrinted(flow_L_s.outdoors, '88.9702');
});

describe('a gap all round a joint at the fan, Cd 0.6', () => {
  test.each([
    [1, '87.0424', '2.8711', '89.9136'],
    [2, '84.7684', '5.5926', '90.3611'],
    [5, '78.5544', '12.9592', '91.5136'],
    [10, '69.8886', '23.0667', '92.9552'],
    [20, '57.0614', '37.6907', '94.7521'],
  ] as const)('suction side, %d mm: room %s, roof %s, fan %s', (gap, room, roof, fan) => {
    const { flow_L_s, leaks } = solved(openBy('inlet', gap));
    expectPrinted(flow_L_s.room, room);
    expectPrinted(-leaks[0]!.flow_L_s, roof);
    expectPrinted(flow_L_s.fan, fan);
    expect(flow_L_s.outdoors).toBe(flow_L_s.fan);
  });

  test.each([
    [1, '90.5775', '87.2732', '3.3044'],
    [2, '91.6314', '85.2231', '6.4083'],
    [5, '94.3104', '79.6675', '14.6429'],
    [10, '97.5643', '72.1356', '25.4288'],
    [20, '101.3866', '61.8211', '39.5655'],
  ] as const)('discharge side, %d mm: room %s, outdoors %s, lost %s', (gap, room, outdoors, lost) => {
    const { flow_L_s, leaks } = solved(openBy('discharge', gap));
    expectPrinted(flow_L_s.room, room);
    expectPrinted(flow_L_s.outdoors, outdoors);
    expectPrinted(leaks[0]!.flow_L_s, lost);
    expect(flow_L_s.fan).toBe(flow_L_s.room);
  });

  test('5 mm of 150 mm: 23.562 cm2, 1.82510 L/s at 1 Pa', () => {
    const path = hole(Math.PI * 0.15 * 0.005, 0.6, 1.2);
    expectPrinted(Math.PI * 15 * 0.5, '23.562');
    expectPrinted(1000 * path.coefficient, '1.82510');
  });
});

describe('a duct off altogether', () => {
  const off = (at: string) => solved(withFault({ kind: 'joint-off', at, amount: 1 }));

  test('before the fan: 95.27 L/s through it, nothing from the room', () => {
    const { flow_L_s, direction, pieces } = off('inlet');
    expectPrinted(flow_L_s.fan, '95.27');
    expect(flow_L_s.room).toBe(0);
    expect(flow_L_s.outdoors).toBe(flow_L_s.fan);
    expect(direction).toBe('forward');
    expect(pieces.find(({ id }) => id === 'bare inlet')!.flow_L_s).toBe(flow_L_s.fan);
    expect(pieces.find(({ id }) => id === 'inlet')!.flow_L_s).toBe(0);
  });

  test('behind the fan: 106.99 L/s from the room, nothing outdoors', () => {
    const { flow_L_s, pieces } = off('discharge');
    expectPrinted(flow_L_s.room, '106.99');
    expect(flow_L_s.outdoors).toBe(0);
    expect(pieces.find(({ id }) => id === 'bare outlet')!.flow_L_s).toBe(flow_L_s.room);
    expect(pieces.find(({ id }) => id === 'termination')!.flow_L_s).toBe(0);
  });

  test('on both sides the fan only stirs the roof space', () => {
    const { flow_L_s } = solved({
      ...rig,
      faults: ['inlet', 'discharge'].map((at) => ({ kind: 'joint-off', at, amount: 1 })),
    });
    expect([flow_L_s.room, flow_L_s.outdoors]).toEqual([0, 0]);
    expect(flow_L_s.fan).toBeGreaterThan(106.99);
  });
});

describe('holes and classes', () => {
  test.each([
    [10, 50, '0.4302'],
    [20, 100, '2.4335'],
  ] as const)('a hole of %d mm at %d Pa: %s L/s', (diameter, pressure, printed) => {
    const path = hole((Math.PI / 4) * (diameter / 1000) ** 2, 0.6, 1.2);
    expectPrinted(1000 * leakFlow(path, pressure), printed);
    expectPrinted(-1000 * leakFlow(path, -pressure), printed);
  });

  test.each([
    ['A', '0.34332', '0.84534', '1.32649', '0.16178'],
    ['B', '0.11444', '0.28178', '0.44216', '0.05393'],
    ['C', '0.03815', '0.09393', '0.14739', '0.01798'],
    ['D', '0.01272', '0.03131', '0.04913', '0.00599'],
  ] as const)(
    'class %s: %s, %s, %s L/s per m2 at 50, 200, 400 Pa; %s a metre of 150 mm',
    (name, at50, at200, at400, metre) => {
      const path = { coefficient: LEAK_CLASSES[name], exponent: SEAM_EXPONENT };
      expectPrinted(leakFlow(path, 50), at50);
      expectPrinted(leakFlow(path, 200), at200);
      expectPrinted(leakFlow(path, 400), at400);
      expectPrinted(leakFlow(path, 50) * Math.PI * 0.15, metre);
    },
  );

  test.each(['A', 'B', 'C', 'D'] as const)(
    'a run of class %s leaks what the class allows at its pressures',
    (name) => {
      const leakClass: LeakClass = name;
      const solution = solved(change('discharge', { leakClass }));
      expect(solution.leaks.length).toBeGreaterThanOrEqual(4);
      const surface = (Math.PI * 0.15 * 6) / solution.leaks.length;
      const allowed = solution.leaks.map(
        (leak) => LEAK_CLASSES[name] * surface * Math.abs(leak.static_Pa) ** 0.65,
      );
      solution.leaks.forEach((leak, i) => expectWithin(Math.abs(leak.flow_L_s), allowed[i]!, 1e-4));
      const lost = solution.leaks.reduce((sum, leak) => sum + leak.flow_L_s, 0);
      expect(solution.flow_L_s.outdoors).toBeCloseTo(solution.flow_L_s.fan - lost, 9);
    },
  );

  test('a leak may be stated per m2 in place of a class, with its own exponent', () => {
    const one = solved(change('discharge', { leakClass: 'B' }));
    expect(solved(change('discharge', { leakCoefficient_L_s_m2: 0.009 })).flow_L_s).toEqual(one.flow_L_s);
    const other = solved(change('discharge', { leakCoefficient_L_s_m2: 0.009, leakExponent: 0.5 }));
    expect(other.flow_L_s.outdoors).toBeGreaterThan(one.flow_L_s.outdoors);
  });
});

test('the pressure of the roof space drives leaks; 0 is what is taken when none is stated', () => {
  const leaking = joints(0.6, 0.4, 0.65);
  const still = solved({ ...leaking, roofSpace: { pressure_Pa: 0 }, outdoors: { wind_Pa: 0 } });
  expect(still.flow_L_s).toEqual(solved(leaking).flow_L_s);
  // A roof space under pressure pushes more in before the fan and lets less out behind it.
  const pushed = solved({ ...leaking, roofSpace: { pressure_Pa: 20 } });
  expect(pushed.leaks[0]!.flow_L_s).toBeLessThan(still.leaks[0]!.flow_L_s);
  expect(pushed.leaks[1]!.flow_L_s).toBeLessThan(still.leaks[1]!.flow_L_s);
});
