/**
 * What poor exhaust does with the water of a shower. One well-mixed room at one temperature: V dC/dt =
 * G - Q (C - Cm) - hA (C - Csat(wall)), the last term while air is wetter than that or walls are wet;
 * capped at saturation, and what the air cannot hold joins the film on the walls.
 */
import type { Coefficient } from './coefficients.ts';
import { dewPoint, relativeHumidityOf, saturationHumidity } from './psychrometrics.ts';

const ZERO_CELSIUS = 273.15;

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

/** How often an hour the air of the room is replaced. */
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
  /** Carried out by the fan so far, and brought in by the air that replaced it. */
  readonly exhausted_g: number;
  readonly broughtIn_g: number;
}

/** Seconds a step. The air is exact within it; only where film runs out or air fills up is it late by one. */
const STEP_S = 1;

/** What happens in one step, all in g, m3 and s. Water given is water held, exhausted and on the walls. */
interface Balance {
  /** Constant terms: water given plus make-up water plus what walls offer, g/s. */
  readonly fed: number;
  /** What takes water in proportion to what the air holds, m3/s. */
  readonly taken: number;
}

/** Exact over one step: V dC/dt = fed - taken C. Gives C at its end and the integral of C over it. */
function stepped(volume: number, start: number, { fed, taken }: Balance): { end: number; sum: number } {
  if (!(taken > 0))
    return {
      end: start + (fed * STEP_S) / volume,
      sum: start * STEP_S + (fed * STEP_S * STEP_S) / volume / 2,
    };
  const settled = fed / taken;
  const gone = -Math.expm1((-taken * STEP_S) / volume);
  return {
    end: start + (settled - start) * gone,
    sum: settled * STEP_S + ((start - settled) * gone * volume) / taken,
  };
}

/**
 * The story of a shower, a moment a minute. Air is stepped in closed form over each second, so no step is
 * unstable. With the fan off no air is exchanged (model assumption), and a flow below 0 counts as none.
 */
export function showerStory(shower: Shower): readonly Moment[] {
  const { room } = shower;
  const volume = room.volume_m3;
  const full = saturationHumidity(room.temperature_C);
  const film_m3_s = shower.film_m3_s ?? MOISTURE.film_m3_s.value;
  const wall = saturationHumidity(
    room.temperature_C - (shower.wallBelowRoom_K ?? MOISTURE.wallBelowRoom_K.value),
  );
  const source = (shower.shower_g_min ?? MOISTURE.shower_g_min.value) / 60;
  let humidity = Math.min(shower.start_g_m3, full);
  let film = Math.max(0, shower.start_g_m3 - full) * volume;
  let exhausted = 0;
  let broughtIn = 0;
  const story: Moment[] = [];
  const steps = Math.round((shower.whole_min * 60) / STEP_S);
  for (let step = 0; ; step++) {
    if (step % (60 / STEP_S) === 0)
      story.push({
        minute: (step * STEP_S) / 60,
        humidity_g_m3: humidity,
        relativeHumidity: humidity / full,
        film_g: film,
        exhausted_g: exhausted,
        broughtIn_g: broughtIn,
      });
    if (step >= steps) return story;
    // A shower or a run-on that ends within a step counts for its part of it.
    const part = (end_min: number) => Math.min(1, Math.max(0, (end_min * 60) / STEP_S - step));
    const given = source * part(shower.shower_min);
    const flow = (Math.max(0, room.flow_L_s) / 1000) * part(shower.shower_min + shower.runOn_min);
    const fed = given + flow * room.makeUp_g_m3;
    // Dry walls give nothing; the air gives to them once it is wetter than they can stand.
    const walls = film > 0 || humidity > wall ? film_m3_s : 0;
    let next = stepped(volume, humidity, { fed: fed + walls * wall, taken: flow + walls });
    let dried = walls * (wall * STEP_S - next.sum);
    if (dried > film) {
      // The last of the film goes within this step.
      dried = film;
      next = stepped(volume, humidity, { fed: fed + dried / STEP_S, taken: flow });
    }
    const surplus = Math.max(0, next.end - full) * volume;
    humidity = Math.min(next.end, full);
    film += surplus - dried;
    exhausted += flow * next.sum;
    broughtIn += flow * room.makeUp_g_m3 * STEP_S;
  }
}

/** First minute at or after `from` at which the film is gone; null when it is still there at the end. */
export function filmDryAt_min(story: readonly Moment[], from: number): number | null {
  return story.find(({ minute, film_g }) => minute >= from && film_g < 1e-6)?.minute ?? null;
}

/** Whether a surface is at or below the dew point of the air at it; `relativeHumidity` 0 to 1. */
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
 * `surface_C` is the coldest surface; above 0 kg turns liquid there only where it is below the dew point.
 */
export function roofWater(
  escaping_L_s: number,
  minutes: number,
  air: { readonly temperature_C: number; readonly humidity_g_m3: number },
  surface_C: number,
): RoofWater {
  const volume = (Math.max(0, escaping_L_s) / 1000) * minutes * 60;
  // The air shrinks as it cools, so what it can still hold is counted on the volume it had in the duct.
  const shrunk = (surface_C + ZERO_CELSIUS) / (air.temperature_C + ZERO_CELSIUS);
  const over = Math.max(0, air.humidity_g_m3 - saturationHumidity(surface_C) * shrunk);
  return {
    carried_kg: (volume * air.humidity_g_m3) / 1000,
    upTo_kg: (volume * over) / 1000,
    dewPoint_C: dewPoint(air.temperature_C, relativeHumidityOf(air.temperature_C, air.humidity_g_m3)),
  };
}
