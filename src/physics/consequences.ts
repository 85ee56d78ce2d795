/**
 * From a solved rig to what it does to room, roof and bill: plain numbers for a chart and a sentence. Nothing
 * here changes the solution; whatever is not stated is taken from the marked tables and listed in the answer.
 */
import type { Coefficient } from './coefficients.ts';
import { fanEnergy_kWh, heatCost, heatEnergy_kWh, wattHoursToMove } from './energy.ts';
import { HOUSEHOLD, type HouseholdName } from './household.ts';
import {
  airChanges_per_h,
  filmDryAt_min,
  MOISTURE,
  saturationTime_min,
  showerStory,
  type Moment,
  type RoomAir,
} from './moisture.ts';
import { noiseChange, type NoiseChanges } from './noise.ts';
import { absoluteHumidity, saturationHumidity } from './psychrometrics.ts';
import { escapedWater, escapes, type EscapedWater } from './roof-water.ts';
import type { Room, Solution } from './types.ts';
import { litresPerWatt } from './watts.ts';

const TABLE = { ...HOUSEHOLD, ...MOISTURE };
export type LivingName = HouseholdName | keyof typeof MOISTURE;
/** What may be stated of house and household, each in the unit of its name; humidities 0 to 1. */
export type Living = Readonly<Partial<Record<LivingName, number>>>;

/** What only the user can know. Without it there is no heat and no money in the answer. */
export interface Tariffs {
  /** K day a year. */
  readonly heatingDegreeDays?: number;
  readonly electricityPerkWh?: number;
  /** Price of the energy the heater takes; that of electricity when absent. */
  readonly heatPerkWh?: number;
  /** Heat made per energy bought: 0.8 for a flued heater, 1 resistive, 3.5 a heat pump. */
  readonly cop?: number;
}

export interface ConsequenceOptions {
  readonly living?: Living;
  readonly tariffs?: Tariffs;
  /** The same run in another state, for instance healthy, to compare noise with. */
  readonly before?: Solution;
}

/** One number the answer rests on: as stated by the caller, or from the table with its mark and source. */
export interface Assumed extends Coefficient {
  readonly name: LivingName;
  readonly stated: boolean;
}

export interface Consequences {
  readonly room: {
    readonly airChanges_per_h: number;
    /** A moment a minute from the start of the shower, the fan stopping when its run-on ends. */
    readonly story: readonly Moment[];
    /** Minutes of shower until the air can hold no more; null when it always can. */
    readonly full_min: number | null;
    /** Most liquid on the walls, g. */
    readonly mostFilm_g: number;
    /** Relative humidity when the run-on ends, 0 to 1. */
    readonly atRunOnEnd: number;
    /**
     * Minutes after the shower, with the fan left on: until mirror and walls stop getting wetter, until they
     * are dry, and the run-on until the air is down to the target. null where it takes more than `WATCHED_MIN`.
     */
    readonly mirrorClears_min: number | null;
    readonly wallsDry_min: number | null;
    readonly runOnNeeded_min: number | null;
  };
  readonly roof: {
    readonly places: readonly EscapedWater[];
    /** A shower, all places. */
    readonly carried_kg: number;
    readonly upTo_kg: number;
    readonly upToPerDay_kg: number;
    /** Whether the coldest roof surface is below the dew point of what leaves at any place. */
    readonly condenses: boolean;
  };
  readonly energy: {
    readonly litresPerWatt: number | null;
    readonly hoursPerDay: number;
    /** null when the fan's table states no power. */
    readonly fan_kWh_a: number | null;
    readonly fanCost_a: number | null;
    /** Fan electricity of one shower until the air is at the target; null where it never gets there. */
    readonly toClear_Wh: number | null;
    /** Heat that goes out with the air; null without degree days. */
    readonly heat_kWh_a: number | null;
    readonly heatCost_a: number | null;
  };
  /** Against `before`; null without it. */
  readonly noise: NoiseChanges | null;
  readonly assumed: readonly Assumed[];
  /** Keys of messages: what the model leaves out. */
  readonly leftOut: readonly ConsequenceLimit[];
}

export const CONSEQUENCE_LIMITS = [
  'well-mixed',
  'one-temperature',
  'no-take-up',
  'fan-off-no-air',
  'roof-up-to',
  'heat-sensible',
] as const;
export type ConsequenceLimit = (typeof CONSEQUENCE_LIMITS)[number];

/** Longest the fan is watched after a shower, minutes. */
export const WATCHED_MIN = 720;
/** The story goes on this long after the run-on, minutes. */
const AFTERWARDS_MIN = 30;

type Values = Readonly<Record<LivingName, number>>;

/** `room` as the rig states it. Flow, power and leaks come from the solution; a flow that is not outward counts as none. */
export function consequences(
  solution: Solution,
  room: Room | undefined,
  { living = {}, tariffs = {}, before }: ConsequenceOptions = {},
): Consequences {
  const given: Living = room ? { volume_m3: room.volume_m3, ...living } : living;
  const assumed = Object.entries<Coefficient>(TABLE).map(([key, entry]): Assumed => {
    const name = key as LivingName;
    const stated = given[name] !== undefined;
    return { ...entry, name, stated, value: given[name] ?? entry.value };
  });
  const values = Object.fromEntries(assumed.map(({ name, value }) => [name, value])) as Values;
  const air = roomAir(solution, values);
  const told = roomTold(air, values);
  return {
    room: told,
    roof: roofTold(solution, values, told.story),
    energy: energyTold(solution, values, tariffs, told.runOnNeeded_min),
    noise: before ? noiseChange(before, solution) : null,
    assumed,
    leftOut: CONSEQUENCE_LIMITS,
  };
}

function roomAir(solution: Solution, values: Values): RoomAir {
  return {
    volume_m3: values.volume_m3,
    temperature_C: values.room_C,
    flow_L_s: Math.max(0, solution.flow_L_s.room),
    makeUp_g_m3: absoluteHumidity(values.makeUp_C, values.makeUpHumidity),
  };
}

function roomTold(room: RoomAir, values: Values): Consequences['room'] {
  const { shower_min, runOn_min, shower_g_min } = values;
  // The room starts as dry as the air that comes in, or full where it could not even hold that.
  const start = Math.min(room.makeUp_g_m3, saturationHumidity(room.temperature_C));
  const told = (runOn: number, whole: number) =>
    showerStory({ ...values, room, start_g_m3: start, runOn_min: runOn, whole_min: whole });
  const story = told(runOn_min, Math.ceil(shower_min + runOn_min + AFTERWARDS_MIN));
  const leftOn = told(WATCHED_MIN, Math.ceil(shower_min) + WATCHED_MIN);
  const after = (is: (moment: Moment) => boolean): number | null => {
    const found = leftOn.find((moment) => moment.minute >= shower_min && is(moment));
    return found ? found.minute - shower_min : null;
  };
  const wall = saturationHumidity(room.temperature_C - values.wallBelowRoom_K);
  const dry = filmDryAt_min(leftOn, shower_min);
  return {
    airChanges_per_h: airChanges_per_h(room),
    story,
    full_min: atMost(saturationTime_min(room, start, shower_g_min), shower_min),
    mostFilm_g: Math.max(...leftOn.map(({ film_g }) => film_g)),
    atRunOnEnd: momentAt(story, shower_min + runOn_min).relativeHumidity,
    mirrorClears_min: after(({ humidity_g_m3 }) => humidity_g_m3 < wall),
    wallsDry_min: dry === null ? null : dry - shower_min,
    runOnNeeded_min: after(({ relativeHumidity }) => relativeHumidity <= values.targetHumidity),
  };
}

const atMost = (minutes: number | null, most: number) =>
  minutes !== null && minutes <= most ? minutes : null;

const momentAt = (story: readonly Moment[], minute: number): Moment =>
  story[Math.min(story.length - 1, Math.round(minute))]!;

function roofTold(solution: Solution, values: Values, story: readonly Moment[]): Consequences['roof'] {
  const minutes = values.shower_min + values.runOn_min;
  const running = story.slice(0, Math.round(minutes) + 1);
  const held = running.reduce((sum, { humidity_g_m3 }) => sum + humidity_g_m3, 0) / running.length;
  const air = { minutes, temperature_C: values.room_C, humidity_g_m3: held };
  const roofAir = {
    humidity_g_m3: absoluteHumidity(values.roofAir_C, values.roofAirHumidity),
    surface_C: values.roofSurface_C,
  };
  const places = escapes(solution).map((escape) => escapedWater(escape, air, roofAir));
  const sum = (of: (place: EscapedWater) => number) => places.reduce((whole, place) => whole + of(place), 0);
  const upTo_kg = sum((place) => place.upTo_kg);
  return {
    places,
    carried_kg: sum((place) => place.carried_kg),
    upTo_kg,
    upToPerDay_kg: upTo_kg * values.showersPerDay,
    condenses: places.some(({ dewPoint_C }) => dewPoint_C !== null && values.roofSurface_C < dewPoint_C),
  };
}

function energyTold(
  solution: Solution,
  values: Values,
  { heatingDegreeDays, electricityPerkWh, heatPerkWh, cop }: Tariffs,
  runOnNeeded_min: number | null,
): Consequences['energy'] {
  const hoursPerDay = Math.min(24, (values.showersPerDay * (values.shower_min + values.runOn_min)) / 60);
  const watts = solution.fan.power_W;
  const flow = Math.max(0, solution.flow_L_s.room);
  const fan_kWh_a = watts === null ? null : fanEnergy_kWh(watts, hoursPerDay);
  const heat_kWh_a =
    heatingDegreeDays === undefined ? null : heatEnergy_kWh(flow, heatingDegreeDays, hoursPerDay);
  const heatPrice = heatPerkWh ?? electricityPerkWh;
  const clear_m3 =
    runOnNeeded_min === null ? null : (flow / 1000) * 60 * (values.shower_min + runOnNeeded_min);
  return {
    litresPerWatt: litresPerWatt(solution),
    hoursPerDay,
    fan_kWh_a,
    fanCost_a: fan_kWh_a === null || electricityPerkWh === undefined ? null : fan_kWh_a * electricityPerkWh,
    toClear_Wh: clear_m3 === null || watts === null ? null : wattHoursToMove(clear_m3, watts, flow),
    heat_kWh_a,
    heatCost_a:
      heat_kWh_a === null || heatPrice === undefined || cop === undefined
        ? null
        : heatCost(heat_kWh_a, cop, heatPrice),
  };
}
