/**
 * What poor exhaust does with the water of a shower. One well-mixed room at one temperature: V dC/dt =
 * G - Q (C - Cm), capped at saturation, the surplus a film that dries at hA (Csat(wall) - C).
 */
import type { Coefficient } from './coefficients.ts';
import { dewPoint, relativeHumidityOf, saturationHumidity } from './psychrometrics.ts';

export const MOISTURE = {
  /** Water a shower gives off, g/min. */
  shower_g_min: {
    value: 43,
    low: 25,
    high: 60,
    mark: 'model assumption',
    source: 'inside 42 to 47 g/min of a solar-housing handbook and a 1988 cold-climate survey; range ours',
  },
  /** Film transfer: coefficient times wetted area, m3/s. */
  film_m3_s: {
    value: 0.04,
    low: 0.02,
    high: 0.08,
    mark: 'model assumption',
    source: 'no source; about 3 mm/s over 13 m2 of wetted wall',
  },
  /** How far the wetted walls are below the room, K. */
  wallBelowRoom_K: { value: 2, low: 0, high: 4, mark: 'model assumption', source: 'no source' },
} as const satisfies Record<string, Coefficient>;

export interface RoomAir {
  readonly volume_m3: number;
  readonly temperature_C: number;
  /** What the fan takes from this room. */
  readonly flow_L_s: number;
  /** Water in the air that replaces it. */
  readonly makeUp_g_m3: number;
}

/** Minutes in which the air of the room is replaced once; Infinity with no flow. */
export function timeConstant_min({ volume_m3, flow_L_s }: RoomAir): number {
  return (volume_m3 * 1000) / flow_L_s / 60;
}

export function airChanges_per_h({ volume_m3, flow_L_s }: RoomAir): number {
  return (3.6 * flow_L_s) / volume_m3;
}

/** Closed form without cap or film, g/m3, after `minutes` of a steady source (0: none). */
export function humidityAfter(room: RoomAir, start_g_m3: number, minutes: number, source_g_min = 0): number {
  if (!(room.flow_L_s > 0)) return start_g_m3 + (source_g_min * minutes) / room.volume_m3;
  const settled = room.makeUp_g_m3 + source_g_min / 60 / (room.flow_L_s / 1000);
  return settled + (start_g_m3 - settled) * Math.exp(-minutes / timeConstant_min(room));
}

/** Minutes until the air is down to a relative humidity (0 to 1), with no film; null when it never gets there. */
export function clearTime_min(room: RoomAir, start_g_m3: number, target: number): number | null {
  const goal = target * saturationHumidity(room.temperature_C);
  if (start_g_m3 <= goal) return 0;
  if (!(room.flow_L_s > 0) || goal <= room.makeUp_g_m3) return null;
  return timeConstant_min(room) * Math.log((start_g_m3 - room.makeUp_g_m3) / (goal - room.makeUp_g_m3));
}

/** Minutes of a steady source until the air can hold no more; null when it never gets there. */
export function saturationTime_min(room: RoomAir, start_g_m3: number, source_g_min: number): number | null {
  const full = saturationHumidity(room.temperature_C);
  if (start_g_m3 >= full) return 0;
  if (!(room.flow_L_s > 0))
    return source_g_min > 0 ? ((full - start_g_m3) * room.volume_m3) / source_g_min : null;
  const settled = room.makeUp_g_m3 + source_g_min / 60 / (room.flow_L_s / 1000);
  return settled > full ? timeConstant_min(room) * Math.log((settled - start_g_m3) / (settled - full)) : null;
}

export interface Shower {
  readonly room: RoomAir;
  /** Water in the air at the start. */
  readonly start_g_m3: number;
  readonly shower_min: number;
  /** How long the fan goes on after it; it runs during it. */
  readonly runOn_min: number;
  /** Length of the story from its start. */
  readonly whole_min: number;
  readonly shower_g_min?: number;
  readonly film_m3_s?: number;
  readonly wallBelowRoom_K?: number;
}

export interface Moment {
  readonly minute: number;
  readonly humidity_g_m3: number;
  /** 0 to 1. */
  readonly relativeHumidity: number;
  /** Liquid on the walls. */
  readonly film_g: number;
  /** Carried out by the fan so far. */
  readonly exhausted_g: number;
}

/** Seconds a step: well under the 5 minutes in which V over hA settles. */
const STEP_S = 1;

/**
 * The story of a shower, a moment a minute. Air is stepped in closed form over each second, so no step is
 * unstable. With the fan off no air is exchanged (model assumption).
 */
export function showerStory(shower: Shower): readonly Moment[] {
  const { room } = shower;
  const volume = room.volume_m3;
  const full = saturationHumidity(room.temperature_C);
  const filmRate = shower.film_m3_s ?? MOISTURE.film_m3_s.value;
  const wall = saturationHumidity(
    room.temperature_C - (shower.wallBelowRoom_K ?? MOISTURE.wallBelowRoom_K.value),
  );
  const source = (shower.shower_g_min ?? MOISTURE.shower_g_min.value) / 60;
  let humidity = Math.min(shower.start_g_m3, full);
  let film = Math.max(0, shower.start_g_m3 - full) * volume;
  let exhausted = 0;
  const story: Moment[] = [];
  const steps = Math.round((shower.whole_min * 60) / STEP_S);
  for (let step = 0; ; step++) {
    const minute = (step * STEP_S) / 60;
    if (step % (60 / STEP_S) === 0)
      story.push({
        minute,
        humidity_g_m3: humidity,
        relativeHumidity: humidity / full,
        film_g: film,
        exhausted_g: exhausted,
      });
    if (step >= steps) return story;
    const given = minute < shower.shower_min ? source * STEP_S : 0;
    const flow = minute < shower.shower_min + shower.runOn_min ? room.flow_L_s / 1000 : 0;
    const dried = film > 0 ? Math.min(film, Math.max(0, filmRate * (wall - humidity)) * STEP_S) : 0;
    const before = humidity;
    // Exact over the step for a source spread evenly through it.
    const rate = (given + dried) / STEP_S;
    if (flow > 0) {
      const settled = room.makeUp_g_m3 + rate / flow;
      humidity = settled + (humidity - settled) * Math.exp((-flow * STEP_S) / volume);
    } else humidity += (rate * STEP_S) / volume;
    const broughtIn = flow * room.makeUp_g_m3 * STEP_S;
    exhausted += given + dried + broughtIn - (humidity - before) * volume;
    const surplus = Math.max(0, humidity - full) * volume;
    humidity = Math.min(humidity, full);
    film += surplus - dried;
  }
}

/** First minute at or after `from` at which the film is gone; null when it is still there at the end. */
export function filmDryAt_min(story: readonly Moment[], from: number): number | null {
  return story.find(({ minute, film_g }) => minute >= from && film_g < 1e-6)?.minute ?? null;
}

/** Whether a surface is at or below the dew point of the air at it. */
export function condensesOn(surface_C: number, air_C: number, relativeHumidity: number): boolean {
  const dew = dewPoint(air_C, relativeHumidity);
  return dew !== null && surface_C < dew;
}

export interface RoofWater {
  /** Water carried into the roof space as vapour, kg. */
  readonly carried_kg: number;
  /** Most that can turn liquid on its coldest surface: say "up to". */
  readonly upTo_kg: number;
  readonly dewPoint_C: number | null;
}

/**
 * Water let into a roof space by a leak or a parted duct. `escaping_L_s` is what leaves the duct there, as
 * the solution's leaks state it (those above 0). An upper bound: a ventilated roof and dry timber take some.
 */
export function roofWater(
  escaping_L_s: number,
  minutes: number,
  air: { readonly temperature_C: number; readonly humidity_g_m3: number },
  surface_C: number,
): RoofWater {
  const volume = (Math.max(0, escaping_L_s) / 1000) * minutes * 60;
  const over = Math.max(0, air.humidity_g_m3 - saturationHumidity(surface_C));
  return {
    carried_kg: (volume * air.humidity_g_m3) / 1000,
    upTo_kg: (volume * over) / 1000,
    dewPoint_C: dewPoint(air.temperature_C, relativeHumidityOf(air.temperature_C, air.humidity_g_m3)),
  };
}
