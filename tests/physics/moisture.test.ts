/** What must hold of any shower in any room: no water is lost or made, and the limits are the limits. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  absoluteHumidity,
  filmDryAt_min,
  humidityAfter,
  saturationHumidity,
  showerStory,
  type Moment,
  type Shower,
} from '#physics';
import { SEEDED } from './rigs.ts';

const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });

const showers: fc.Arbitrary<Shower> = fc
  .record({
    volume_m3: number(1, 60),
    temperature_C: number(8, 32),
    flow_L_s: fc.oneof(fc.constant(0), number(0.01, 120)),
    makeUpHumidity: number(0, 1),
    startHumidity: number(0, 1.2),
    shower_min: number(0, 40),
    runOn_min: number(0, 60),
    whole_min: fc.integer({ min: 1, max: 150 }),
    shower_g_min: number(0, 90),
    film_m3_s: fc.oneof(fc.constant(0), number(0.001, 0.4)),
    wallBelowRoom_K: number(-3, 15),
  })
  .map(({ volume_m3, temperature_C, flow_L_s, makeUpHumidity, startHumidity, ...rest }) => ({
    ...rest,
    start_g_m3: absoluteHumidity(temperature_C, startHumidity),
    room: {
      volume_m3,
      temperature_C,
      flow_L_s,
      makeUp_g_m3: absoluteHumidity(temperature_C - 2, makeUpHumidity),
    },
  }));

describe('any shower', () => {
  test('given + brought in = exhausted + more in the air + more on the walls, at every moment', () => {
    fc.assert(
      fc.property(showers, (shower) => {
        const story = showerStory(shower);
        const volume = shower.room.volume_m3;
        const held = ({ humidity_g_m3, film_g }: Moment) => humidity_g_m3 * volume + film_g;
        for (const moment of story) {
          const given = Math.min(moment.minute, shower.shower_min) * shower.shower_g_min!;
          const gone = moment.exhausted_g + held(moment) - shower.start_g_m3 * volume;
          const scale = 1 + given + moment.broughtIn_g + shower.start_g_m3 * volume;
          expect(Math.abs(gone - given - moment.broughtIn_g) / scale).toBeLessThan(1e-9);
        }
      }),
      { ...SEEDED, numRuns: 300 },
    );
  }, 60_000);

  test('nothing falls below 0, no air is over full, and what has left never comes back', () => {
    fc.assert(
      fc.property(showers, (shower) => {
        const story = showerStory(shower);
        for (const [i, { humidity_g_m3, relativeHumidity, film_g, exhausted_g }] of story.entries()) {
          expect(film_g).toBeGreaterThanOrEqual(-1e-9);
          expect(humidity_g_m3).toBeGreaterThanOrEqual(-1e-12);
          expect(relativeHumidity).toBeLessThanOrEqual(1 + 1e-12);
          expect(exhausted_g).toBeGreaterThanOrEqual((story[i - 1]?.exhausted_g ?? 0) - 1e-9);
        }
      }),
      { ...SEEDED, numRuns: 300 },
    );
  }, 60_000);

  test('more flow of drier air never leaves the room wetter', () => {
    fc.assert(
      fc.property(showers, number(1, 3), (shower, more) => {
        const { room } = shower;
        const dry = { ...room, makeUp_g_m3: Math.min(room.makeUp_g_m3, 0.3 * shower.start_g_m3) };
        const water = (flow_L_s: number) =>
          showerStory({ ...shower, room: { ...dry, flow_L_s } }).map(
            ({ humidity_g_m3, film_g }) => humidity_g_m3 * room.volume_m3 + film_g,
          );
        const wetter = water(room.flow_L_s);
        water(room.flow_L_s * more).forEach((held, i) => {
          expect(held).toBeLessThanOrEqual(wetter[i]! * (1 + 1e-3) + 1e-3);
        });
      }),
      { ...SEEDED, numRuns: 200 },
    );
  }, 60_000);
});

const base: Shower = {
  room: { volume_m3: 12, temperature_C: 22, flow_L_s: 25, makeUp_g_m3: absoluteHumidity(20, 0.55) },
  start_g_m3: absoluteHumidity(20, 0.55),
  shower_min: 10,
  runOn_min: 1000,
  whole_min: 120,
};
const full = saturationHumidity(22);

describe('at its limits', () => {
  test('no flow: every gram stays, and the walls never dry', () => {
    const story = showerStory({ ...base, room: { ...base.room, flow_L_s: 0 } });
    const end = story.at(-1)!;
    expect(end.exhausted_g).toBe(0);
    expect((end.humidity_g_m3 - base.start_g_m3) * 12 + end.film_g).toBeCloseTo(430, 6);
    expect(filmDryAt_min(story, 10)).toBeNull();
  });

  test('air blown back into the room takes nothing out', () => {
    const back = showerStory({ ...base, room: { ...base.room, flow_L_s: -8 } });
    expect(back).toEqual(showerStory({ ...base, room: { ...base.room, flow_L_s: 0 } }));
  });

  test('a saturated start holds what the air cannot as film, at once', () => {
    const [first] = showerStory({ ...base, start_g_m3: full + 5 });
    expect(first!.relativeHumidity).toBe(1);
    expect(first!.film_g).toBeCloseTo(5 * 12, 9);
  });

  test('cold walls draw still air down to what they can stand, and the water to themselves', () => {
    const still = showerStory({
      ...base,
      room: { ...base.room, flow_L_s: 0 },
      start_g_m3: full,
      shower_min: 0,
      wallBelowRoom_K: 10,
    });
    const wall = saturationHumidity(12);
    expect(still.at(-1)!.humidity_g_m3).toBeCloseTo(wall, 6);
    expect(still.at(-1)!.film_g).toBeCloseTo((full - wall) * 12, 4);
    // exp(-hA t / V): 300 s.
    expect(still[5]!.humidity_g_m3).toBeCloseTo(wall + (full - wall) * Math.exp(-1), 9);
  });

  test('walls that take no water leave the closed form, to the last digit and at any length of step', () => {
    const story = showerStory({ ...base, film_m3_s: 0, shower_min: 0, start_g_m3: full });
    for (const { minute, humidity_g_m3 } of story)
      expect(humidity_g_m3).toBeCloseTo(humidityAfter(base.room, full, minute), 9);
  });
});
