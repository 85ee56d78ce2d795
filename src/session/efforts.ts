/** What a fan draws and moves at its speeds, and what a shower does to a room, ready for the charts. */
import {
  absoluteHumidity,
  atSameWatts,
  atSpeed,
  HOUSEHOLD,
  MOISTURE,
  saturationHumidity,
  showerStory,
  withFan,
  type FanTable,
  type Moment,
  type Rig,
  type Solution,
  type Stock,
} from '#physics';

export interface Effort {
  readonly speed: number;
  readonly power_W: number;
  readonly flow_L_s: number;
}

/** The rig with a fan at a share of rated speed; undefined where it cannot run or states no power. */
export function effortAt(rig: Rig, stock: Stock, fan: FanTable, speed: number): Effort | undefined {
  const answer = atSpeed(withFan(rig, fan), stock, speed);
  const power_W = answer.outcome === 'solved' ? answer.solution.fan.power_W : null;
  if (answer.outcome !== 'solved' || power_W === null) return undefined;
  return { speed, power_W, flow_L_s: answer.solution.flow_L_s.outdoors };
}

/** Flows of fans at the most watts all of them can draw; undefined where none can. */
export function effortsAtSameWatts(rig: Rig, stock: Stock, fans: readonly FanTable[]) {
  const contenders = atSameWatts(rig, stock, fans, { flow: 'outdoors' });
  const power_W = contenders.find((one) => one.power_W !== null)?.power_W;
  return power_W == null ? undefined : { power_W, flow_L_s: contenders.map(({ flow_L_s }) => flow_L_s) };
}

/** The shower and the room every consequence is told of. */
export const SHOWER_MIN = HOUSEHOLD.shower_min.value;
const ROOM_C = HOUSEHOLD.room_C.value;

/** How far walls and mirror are taken to be below the room, K. */
export const WALL_BELOW_K = MOISTURE.wallBelowRoom_K.value;

/** A mirror as cold as the walls fogs once the air holds more than air at its face can. */
export const MIRROR_FOGS = saturationHumidity(ROOM_C - WALL_BELOW_K) / saturationHumidity(ROOM_C);

/** A shower with the fan on, and off again some minutes after it. */
export function showerOf(
  rig: Rig,
  solution: Solution,
  whole_min: number,
  runOn_min = whole_min,
): readonly Moment[] {
  const makeUp_g_m3 = absoluteHumidity(HOUSEHOLD.makeUp_C.value, HOUSEHOLD.makeUpHumidity.value);
  const room = {
    volume_m3: rig.room?.volume_m3 ?? HOUSEHOLD.volume_m3.value,
    temperature_C: ROOM_C,
    flow_L_s: solution.flow_L_s.room,
    makeUp_g_m3,
  };
  return showerStory({ room, start_g_m3: makeUp_g_m3, shower_min: SHOWER_MIN, runOn_min, whole_min });
}
