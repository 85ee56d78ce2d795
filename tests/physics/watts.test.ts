/** Two fans on one run: at the same watts, at the same flow, and the air a watt moves. */
import { describe, expect, test } from 'vitest';
import {
  atSameFlow,
  atSameWatts,
  litresPerWatt,
  speedForWatts,
  wattsPerLitre,
  withFan,
  withSpeed,
  type FanTable,
  type Rig,
} from '#physics';
import laundry from '../../seeds/rigs/long-laundry-run.json' with { type: 'json' };
import { flowOf, solved, stock } from './rigs.ts';

const rig = { ...(laundry as unknown as Rig), faults: [] };
const ac = stock.fans['mixed-150']!;
/** The same curve on an EC motor that draws less for it. */
const ec: FanTable = {
  ...ac,
  motor: 'EC',
  motorFloor_W: 2,
  points: ac.points.map((point) => ({ ...point, power_W: 0.6 * point.power_W! })),
};

describe('L/s per W', () => {
  const solution = solved(rig);
  test('flow over watts, and the other way up', () => {
    expect(litresPerWatt(solution)).toBeCloseTo(solution.flow_L_s.room / solution.fan.power_W!, 12);
    expect(litresPerWatt(solution)! * wattsPerLitre(solution)!).toBeCloseTo(1, 12);
  });
  // 25 W at 25 L/s is 1.0 W per L/s, 22 W at 12.5 is 1.76; 1.4 cfm/W is 0.66 L/s per W.
  test('printed figures', () => {
    const at = (flow: number, power_W: number) => ({
      ...solution,
      flow_L_s: { room: flow, fan: flow, outdoors: flow },
      fan: { ...solution.fan, power_W },
    });
    expect(wattsPerLitre(at(25, 25))).toBe(1);
    expect(wattsPerLitre(at(12.5, 22))).toBe(1.76);
    expect(litresPerWatt(at(1.4 * 0.47194745, 1))).toBeCloseTo(0.66, 2);
    expect(wattsPerLitre(at(0, 22))).toBeNull();
    expect(litresPerWatt(at(25, 0))).toBeNull();
  });
  test('no watts stated, none told', () => {
    const silent = solved(
      withFan(rig, { ...ac, points: ac.points.map(({ power_W: _, ...point }) => point) }),
    );
    expect([litresPerWatt(silent), wattsPerLitre(silent)]).toEqual([null, null]);
  });
});

describe('the speed that draws some watts', () => {
  const full = solved(withFan(rig, ec)).fan.power_W!;
  test('half of what it draws at rated speed: near the cube root of the part above the floor', () => {
    const found = speedForWatts(withFan(rig, ec), stock, full / 2);
    if (found.outcome !== 'solved') throw new Error(found.code);
    expect(found.solution.fan.power_W).toBeCloseTo(full / 2, 6);
    expect(found.speed).toBeCloseTo(((full / 2 - 2) / (full - 2)) ** (1 / 3), 2);
    expect(found.solution).toEqual(solved(withSpeed(withFan(rig, ec), found.speed)));
  });
  test.each([1, 500, NaN])('%d W cannot be drawn: refused with the range', (watts) => {
    const found = speedForWatts(withFan(rig, ec), stock, watts);
    expect(found).toMatchObject({ outcome: 'refused', code: 'watts-out-of-range', unit: 'W' });
    expect(found.outcome === 'refused' && found.allowed[1]).toBe(full);
  });
});

describe('at the same watts on the same run', () => {
  test('by default at what the thriftier one draws at rated speed: the other is slowed to it', () => {
    const own = { ...ac, motor: 'EC' as const };
    const [first, second] = atSameWatts(rig, stock, [own, ec]);
    expect(second!.speed).toBe(1);
    expect(first!.speed!).toBeLessThan(0.9);
    expect(first!.power_W).toBeCloseTo(second!.power_W!, 5);
    expect(first!.flow_L_s!).toBeLessThan(second!.flow_L_s! * 0.9);
    expect(second!.litresPerWatt!).toBeGreaterThan(first!.litresPerWatt!);
    for (const one of [first!, second!])
      expect(one.flow_L_s).toBeCloseTo(flowOf(withSpeed(withFan(rig, one.fan), one.speed!)), 9);
  });

  test('an AC fan has one speed: at other watts it is refused with its own', () => {
    const drawn = solved(withFan(rig, 'mixed-150')).fan.power_W!;
    const [fixed, free] = atSameWatts(rig, stock, ['mixed-150', ec], { watts: 20 });
    expect(fixed!.answer).toMatchObject({
      outcome: 'refused',
      code: 'one-speed-only',
      allowed: [drawn, drawn],
    });
    expect([fixed!.speed, fixed!.flow_L_s, fixed!.power_W, fixed!.litresPerWatt]).toEqual([
      null,
      null,
      null,
      null,
    ]);
    expect(free!.power_W).toBeCloseTo(20, 6);
  });

  test('no watts in the table: refused', () => {
    const silent = { ...ac, points: ac.points.map(({ power_W: _, ...point }) => point) };
    expect(atSameWatts(rig, stock, [silent], { watts: 30 })[0]!.answer).toMatchObject({
      code: 'no-power-stated',
    });
  });
});

test('at the same flow: each at its own speed, and the watts tell them apart', () => {
  const wanted = 0.8 * flowOf(withFan(rig, ec));
  const [thirsty, thrifty] = atSameFlow(rig, stock, [{ ...ac, motor: 'EC' }, ec], wanted);
  expect(thirsty!.flow_L_s).toBeCloseTo(wanted, 5);
  expect(thrifty!.flow_L_s).toBeCloseTo(wanted, 5);
  expect(thirsty!.speed).toBeCloseTo(thrifty!.speed!, 6);
  expect(thirsty!.power_W!).toBeGreaterThan(1.3 * thrifty!.power_W!);
});
