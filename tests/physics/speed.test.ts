/** Running at another speed: the laws on a solved run, what a fan refuses, and the speed a rate needs. */
import { describe, expect, test } from 'vitest';
import {
  atSpeed,
  LOWEST_SPEED,
  solve,
  speedForFlow,
  speedRange,
  withFan,
  withSpeed,
  type Answer,
  type AtSpeed,
  type FanTable,
  type Rig,
} from '#physics';
import baseCase from '../../seeds/rigs/base-case.json' with { type: 'json' };
import laundry from '../../seeds/rigs/long-laundry-run.json' with { type: 'json' };
import { flowOf, stock } from './rigs.ts';

const base = baseCase as unknown as Rig;
const table = (base.run.find((piece) => piece.kind === 'fan') as { fan: FanTable }).fan;
const FLOOR = 2;
/** The base case's fan with an EC motor: 60 W throughout at rated speed, 2 W of it electronics. */
const ec: FanTable = {
  ...table,
  motor: 'EC',
  motorFloor_W: FLOOR,
  points: table.points.map((point) => ({ ...point, power_W: 60 })),
};
const rig = withFan(base, ec);

function had(answer: Answer): AtSpeed {
  if (answer.outcome !== 'solved') throw new Error(JSON.stringify(answer));
  return answer;
}

describe('EC fan', () => {
  test('80 % speed: 0.79974 of the flow, 0.6396 of the pressure, 0.512 of the watts above the floor', () => {
    const full = had(atSpeed(rig, stock, 1)).solution;
    const slow = had(atSpeed(rig, stock, 0.8)).solution;
    expect(slow.flow_L_s.room / full.flow_L_s.room).toBeCloseTo(0.79974, 5);
    // Pressure follows the square of flow but for friction's own dependence on it.
    expect(slow.fan.pressure_Pa / full.fan.pressure_Pa).toBeCloseTo(0.64, 2);
    expect(slow.fan.power_W).toBeCloseTo(FLOOR + 58 * 0.512, 9);
    expect(slow.fan.speed).toBe(0.8);
  });

  test('without Reynolds at work the laws are exact: flow as speed, pressure as its square', () => {
    const lossy: Rig = { ...rig, run: rig.run.filter((piece) => piece.kind !== 'duct') };
    const full = had(atSpeed(lossy, stock, 1)).solution;
    const half = had(atSpeed(lossy, stock, 0.5)).solution;
    expect(half.flow_L_s.fan / full.flow_L_s.fan).toBeCloseTo(0.5, 9);
    expect(half.fan.pressure_Pa / full.fan.pressure_Pa).toBeCloseTo(0.25, 9);
  });

  test('the speed for a flow gives that flow; it undoes the law', () => {
    const wanted = flowOf(withSpeed(rig, 0.8));
    const found = had(speedForFlow(rig, stock, wanted));
    expect(found.speed).toBeCloseTo(0.8, 6);
    expect(found.solution.flow_L_s.room).toBeCloseTo(wanted, 5);
    expect(had(speedForFlow(rig, stock, flowOf(rig))).speed).toBe(1);
  });

  test('what a fault took, speed can give back while there is speed left', () => {
    const faulty: Rig = { ...rig, faults: [{ kind: 'crimp', at: 'fan', amount: 0.8 }] };
    const rate = flowOf(withSpeed(rig, 0.7));
    const healthy = had(speedForFlow(rig, stock, rate));
    const needed = had(speedForFlow(faulty, stock, rate));
    expect(needed.speed).toBeGreaterThan(healthy.speed + 0.02);
    expect(needed.solution.flow_L_s.room).toBeCloseTo(rate, 5);
    // Same air, more watts.
    expect(needed.solution.fan.power_W!).toBeGreaterThan(healthy.solution.fan.power_W! * 1.1);
  });

  test('cannot: refused with the flows its speeds give', () => {
    const faulty: Rig = { ...rig, faults: [{ kind: 'crimp', at: 'fan', amount: 0.95 }] };
    const range = [flowOf(withSpeed(faulty, LOWEST_SPEED.value)), flowOf(faulty)];
    expect(speedForFlow(faulty, stock, flowOf(rig))).toEqual({
      outcome: 'refused',
      code: 'cannot-reach',
      found: flowOf(rig),
      allowed: range,
      unit: 'L/s',
    });
    for (const flow of [1, -5, NaN, Infinity])
      expect(speedForFlow(faulty, stock, flow)).toMatchObject({ outcome: 'refused', code: 'cannot-reach' });
  });

  test.each([0.1, 0, -1, 1.01, NaN])('speed %d is out of range', (speed) => {
    expect(atSpeed(rig, stock, speed)).toMatchObject({
      outcome: 'refused',
      code: 'speed-out-of-range',
      allowed: [LOWEST_SPEED.value, 1],
    });
  });
});

describe('AC fan, and one that states no motor', () => {
  const one = laundry as unknown as Rig;
  test.each([
    ['AC', one],
    ['no motor stated', base],
  ])('%s: one speed only', (_name, fixed) => {
    expect(speedRange(fixed, stock)).toEqual([1, 1]);
    expect(had(atSpeed(fixed, stock, 1)).solution).toEqual(solve(withSpeed(fixed, 1), stock));
    expect(atSpeed(fixed, stock, 0.8)).toEqual({
      outcome: 'refused',
      code: 'one-speed-only',
      found: 0.8,
      allowed: [1, 1],
      unit: 'share of rated speed',
    });
    const flow = flowOf(fixed);
    expect(speedForFlow(fixed, stock, 1.2 * flow)).toMatchObject({
      code: 'one-speed-only',
      allowed: [flow, flow],
      unit: 'L/s',
    });
    expect(had(speedForFlow(fixed, stock, flow)).speed).toBe(1);
  });
});

test('a rig that cannot be solved gives its Failure', () => {
  const nowhere: Rig = { ...rig, run: rig.run.filter((piece) => piece.kind !== 'fan') };
  expect(speedForFlow(nowhere, stock, 20)).toMatchObject({ outcome: 'failed', code: 'no-fan' });
  expect(atSpeed(withFan(rig, 'nobody’s'), stock, 1)).toMatchObject({
    outcome: 'failed',
    code: 'unknown-fan',
  });
});
