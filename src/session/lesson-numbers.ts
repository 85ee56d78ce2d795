/** The values of a step's words that are worked out while the pages are built. */
import { BUILT, subjectOf, type BuiltName, type BuiltValues, type TaughtStep } from '#lesson';
import {
  absoluteHumidity,
  filmDryAt_min,
  MOISTURE,
  showerStory,
  solve,
  type Rig,
  type RoomAir,
  type Solution,
  type Stock,
} from '#physics';
import type { Quantity } from '#units';

/** A shower of ten minutes in a room at 22 °C, made-up with air at 20 °C and 55 % (model assumption). */
const SHOWER_MIN = 10;
const MAKE_UP = { temperature_C: 20, relativeHumidity: 0.55 };
const ROOM_C = 22;
/** A bathroom counts as clear at 60 % (model assumption). */
const CLEAR = 0.6;
/** Longest story told, minutes. */
const WHOLE_MIN = 24 * 60;

function story(rig: Rig, solution: Solution) {
  const room: RoomAir = {
    volume_m3: rig.room?.volume_m3 ?? 12,
    temperature_C: rig.air?.temperature_C ?? ROOM_C,
    flow_L_s: solution.flow_L_s.room,
    makeUp_g_m3: absoluteHumidity(MAKE_UP.temperature_C, MAKE_UP.relativeHumidity),
  };
  return showerStory({
    room,
    start_g_m3: room.makeUp_g_m3,
    shower_min: SHOWER_MIN,
    runOn_min: WHOLE_MIN,
    whole_min: WHOLE_MIN,
  });
}

/** Minutes after the shower until the air is down to 60 %; null when it is not within a day. */
function clear_min(rig: Rig, solution: Solution): number | null {
  const found = story(rig, solution).find(
    ({ minute, relativeHumidity }) => minute >= SHOWER_MIN && relativeHumidity <= CLEAR,
  );
  return found ? found.minute - SHOWER_MIN : null;
}

function dry_min(rig: Rig, solution: Solution): number | null {
  const at = filmDryAt_min(story(rig, solution), SHOWER_MIN);
  return at === null ? null : at - SHOWER_MIN;
}

const leaking = (solution: Solution) =>
  solution.leaks.reduce((sum, { flow_L_s }) => sum + Math.max(0, flow_L_s), 0);

/** Water that one shower sends into the roof space through the leaks, g: the leaks' share of what the fan takes. */
function roofWater_g(rig: Rig, solution: Solution): number {
  const told = story(rig, solution);
  const taken = told[told.length - 1]!.exhausted_g;
  const made = MOISTURE.shower_g_min.value * SHOWER_MIN;
  return Math.min(made, taken) * (leaking(solution) / Math.max(solution.flow_L_s.fan, 1e-9));
}

/** Each by its name without `_before`. */
const NUMBERS: Record<string, (rig: Rig, solution: Solution, subject: string | undefined) => number | null> =
  {
    power: (_, { fan }) => fan.power_W,
    efficacy: (_, { fan }) => fan.litresPerWatt,
    leak: (_, solution) => leaking(solution),
    room: (_, { flow_L_s }) => flow_L_s.room,
    velocity: (_, { pieces }, subject) => pieces.find(({ id }) => id === subject)?.velocity_m_s ?? null,
    clear: clear_min,
    dry: dry_min,
    roof_water: roofWater_g,
  };

/** Values of the names asked for (all of them when no set is given), as far as the engine has them. */
export function builtValues(
  step: TaughtStep,
  from: Rig,
  to: Rig,
  stock: Stock,
  asked?: ReadonlySet<string>,
): BuiltValues {
  const values: Partial<Record<BuiltName, readonly [Quantity, number]>> = {};
  for (const name of Object.keys(BUILT) as (keyof typeof BUILT)[]) {
    if (asked && !asked.has(name)) continue;
    const rig = name.endsWith('_before') ? from : to;
    const solution = solve(rig, stock);
    const number = NUMBERS[name.replace('_before', '')];
    const value = solution.outcome === 'solved' ? number?.(rig, solution, subjectOf(step)) : undefined;
    if (value !== null && value !== undefined) values[name] = [BUILT[name], value];
  }
  return values;
}
