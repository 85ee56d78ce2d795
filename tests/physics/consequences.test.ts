/** From a solved rig to what it does to room, roof and bill. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { seedRig } from '#catalogue';
import {
  clearTime_min,
  CONSEQUENCE_LIMITS,
  consequences,
  escapes,
  HOUSEHOLD,
  litresPerWatt,
  MOISTURE,
  noiseChange,
  type Fault,
  type Rig,
} from '#physics';
import { leakyRigs, SEEDED, solved } from './rigs.ts';

const bathroom = (faults: readonly Fault[] = []): Rig => ({ ...seedRig('upstairs-bathroom'), faults });
const duct = bathroom().run.filter((piece) => piece.kind === 'duct');
const [inlet, outlet] = [duct[0]!.id, duct.at(-1)!.id];
const SAG: Fault = { kind: 'sag', at: outlet, amount: 1 };
const CRIMP: Fault = { kind: 'crimp', at: 'fan', amount: 1 };
const of = (faults: readonly Fault[], options: Parameters<typeof consequences>[2] = {}) => {
  const rig = bathroom(faults);
  return consequences(solved(rig), rig.room, options);
};

describe('the room', () => {
  test('less air takes longer for mirror, walls and target, and more water stays', () => {
    const [well, badly] = [of([]).room, of([SAG, CRIMP]).room];
    for (const key of ['mirrorClears_min', 'wallsDry_min', 'runOnNeeded_min'] as const)
      expect(badly[key]!, key).toBeGreaterThan(well[key]!);
    expect(badly.atRunOnEnd).toBeGreaterThan(well.atRunOnEnd);
    expect(badly.mostFilm_g).toBeGreaterThan(well.mostFilm_g);
  });

  test('the run-on needed is the closed form where walls take no water', () => {
    const rig = bathroom();
    const solution = solved(rig);
    const { room } = consequences(solution, rig.room, { living: { film_m3_s: 0, makeUpHumidity: 0.4 } });
    const end = room.story[HOUSEHOLD.shower_min.value]!;
    const { flow_L_s } = solution;
    const air = { volume_m3: rig.room!.volume_m3, temperature_C: 22, flow_L_s: flow_L_s.room };
    const makeUp_g_m3 = room.story[0]!.humidity_g_m3;
    const exact = clearTime_min({ ...air, makeUp_g_m3 }, end.humidity_g_m3, 0.6)!;
    expect(room.runOnNeeded_min! - exact).toBeGreaterThanOrEqual(0);
    expect(room.runOnNeeded_min! - exact).toBeLessThan(1);
  });

  test('a fan that moves nothing dries nothing', () => {
    const rig = bathroom([{ kind: 'joint-off', at: inlet, amount: 1 }]);
    const { room } = consequences(solved(rig), rig.room);
    expect(room).toMatchObject({ mirrorClears_min: null, wallsDry_min: null, runOnNeeded_min: null });
    expect(room.story.at(-1)!.exhausted_g).toBe(0);
  });

  test('air brought in wetter than the target never gets there', () => {
    expect(of([], { living: { targetHumidity: 0.4 } }).room.runOnNeeded_min).toBeNull();
  });
});

describe('the roof', () => {
  test('a tight run lets nothing in', () => {
    const { roof } = of([SAG]);
    expect(roof).toEqual({ places: [], carried_kg: 0, upTo_kg: 0, upToPerDay_kg: 0, condenses: false });
  });

  test('a duct that is off behind the fan carries all the water that leaves the room', () => {
    const { roof, room } = of([{ kind: 'joint-off', at: outlet, amount: 1 }]);
    expect(roof.places.map(({ manner }) => manner)).toEqual(['duct off']);
    const until = HOUSEHOLD.shower_min.value + HOUSEHOLD.runOn_min.value;
    const exhausted = room.story[until]!.exhausted_g / 1000;
    expect(Math.abs(roof.carried_kg / exhausted - 1)).toBeLessThan(0.02);
    expect(roof.upTo_kg).toBeLessThan(roof.carried_kg);
    expect(roof.condenses).toBe(true);
  });

  test('a warm roof takes the water as vapour', () => {
    const off: Fault = { kind: 'joint-off', at: outlet, amount: 1 };
    const { roof } = of([off], { living: { roofSurface_C: 30 } });
    expect(roof).toMatchObject({ upTo_kg: 0, condenses: false });
    expect(roof.carried_kg).toBeGreaterThan(0.3);
  });

  test('air drawn in before the fan thins what leaks out behind it', () => {
    const behind: Fault = { kind: 'joint-open', at: outlet, amount: 0.5 };
    const [alone, both] = [of([behind]), of([behind, { kind: 'joint-open', at: inlet, amount: 0.5 }])];
    expect(alone.roof.places[0]!.roomShare).toBe(1);
    expect(both.roof.places[0]!.roomShare).toBeLessThan(0.95);
    expect(both.roof.places[0]!.dewPoint_C!).toBeLessThan(alone.roof.places[0]!.dewPoint_C!);
  });

  test('any leaky run: room air that escapes and room air that gets outdoors make up what left the room', () => {
    fc.assert(
      fc.property(leakyRigs(), (rig) => {
        const solution = solved(rig);
        const { room, outdoors } = solution.flow_L_s;
        fc.pre(solution.direction === 'forward' && room > 0);
        const places = escapes(solution);
        const escaped = places.reduce((sum, place) => sum + place.flow_L_s * place.roomShare, 0);
        expect(escaped).toBeLessThanOrEqual(room * (1 + 1e-9));
        // Where no air is drawn in, the sums are whole flows.
        if (solution.leaks.every(({ flow_L_s }) => flow_L_s >= 0)) {
          expect(Math.abs(escaped + Math.max(0, outdoors) - room)).toBeLessThan(1e-5 * solution.flow_L_s.fan);
        }
        for (const { flow_L_s, roomShare } of places) {
          expect(flow_L_s).toBeGreaterThan(0);
          expect(roomShare).toBeGreaterThanOrEqual(0);
          expect(roomShare).toBeLessThanOrEqual(1 + 1e-12);
        }
      }),
      { ...SEEDED, numRuns: 300 },
    );
  }, 60_000);
});

describe('the bill', () => {
  const tariffs = { heatingDegreeDays: 1500, electricityPerkWh: 0.33, cop: 3.5 };

  test('electricity by hand: watts for four showers and their run-on, every day', () => {
    const { energy } = of([], { tariffs });
    const watts = solved(bathroom()).fan.power_W!;
    expect(energy.hoursPerDay).toBeCloseTo((4 * 20) / 60, 12);
    expect(energy.fan_kWh_a!).toBeCloseTo((watts * (4 / 3) * 365) / 1000, 9);
    expect(energy.fanCost_a!).toBeCloseTo(energy.fan_kWh_a! * 0.33, 12);
    expect(energy.litresPerWatt).toBe(litresPerWatt(solved(bathroom())));
  });

  test('heat by hand: 1.207 kJ a cubic metre and kelvin over the degree days', () => {
    const { energy } = of([], { tariffs });
    const flow = solved(bathroom()).flow_L_s.room;
    const heat = (1.2072 * flow * 1500 * 24 * (4 / 3 / 24)) / 1000;
    expect(energy.heat_kWh_a!).toBeCloseTo(heat, 6);
    expect(energy.heatCost_a!).toBeCloseTo((heat / 3.5) * 0.33, 6);
  });

  test('a choked duct needs more electricity to clear the room', () => {
    expect(of([SAG, CRIMP]).energy.toClear_Wh!).toBeGreaterThan(of([]).energy.toClear_Wh! * 1.2);
  });

  test('no tariff, no money; no degree days, no heat', () => {
    const { energy } = of([]);
    expect(energy).toMatchObject({ fanCost_a: null, heat_kWh_a: null, heatCost_a: null });
  });
});

test('noise against another state of the same run', () => {
  expect(of([SAG]).noise).toBeNull();
  const before = solved(bathroom());
  expect(of([SAG], { before }).noise).toEqual(noiseChange(before, solved(bathroom([SAG]))));
});

test('every number taken is listed with mark and source, and whether it was stated', () => {
  const { assumed, leftOut } = of([], { living: { shower_min: 7 } });
  expect(assumed.map(({ name }) => name)).toEqual(Object.keys({ ...HOUSEHOLD, ...MOISTURE }));
  const by = Object.fromEntries(assumed.map((each) => [each.name, each]));
  expect(by.shower_min).toMatchObject({ value: 7, stated: true });
  expect(by.volume_m3).toMatchObject({ value: bathroom().room!.volume_m3, stated: true });
  expect(by.roofSurface_C).toMatchObject({ value: 4, stated: false, mark: 'model assumption' });
  for (const { value, low, high, stated, source, name } of assumed) {
    expect(source, name).not.toBe('');
    if (!stated) expect(value >= low && value <= high, name).toBe(true);
  }
  expect(leftOut).toEqual(CONSEQUENCE_LIMITS);
});
