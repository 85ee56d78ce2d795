/**
 * Water that a run loses into the roof space, place by place. Air of the roof space drawn in before the fan
 * thins what leaks out after it, so the walk keeps both flows in step. SI inside, L/s and kg outside.
 */
import { roofWater } from './moisture.ts';
import type { Solution } from './types.ts';

/** A share of the flow below which a mismatch is rounding and not a parted duct. */
const ROUNDING = 1e-6;

export interface Escape {
  /** The piece it leaks from, or after whose end the duct has come off. */
  readonly at: string;
  readonly manner: 'leak' | 'duct off';
  /** Leaves the duct here, > 0. */
  readonly flow_L_s: number;
  /** Share of what leaves here that came from the room, 0 to 1; the rest was drawn or blown in on the way. */
  readonly roomShare: number;
}

/**
 * Where room air gets into the roof space, in the order the air meets them; empty when the run is tight or
 * its air does not go forward. Leaks along one piece's wall are put together.
 */
export function escapes(solution: Solution): readonly Escape[] {
  if (solution.direction !== 'forward' || !(solution.flow_L_s.room > 0)) return [];
  const found: Escape[] = [];
  let flow = solution.flow_L_s.room;
  let fromRoom = flow;
  const leave = (at: string, manner: Escape['manner'], out: number): void => {
    // Where wind blows in at the terminal, more may leave than came this way from the room.
    const ofRoom = flow > 0 ? (Math.min(out, flow) * fromRoom) / flow : 0;
    flow -= out;
    fromRoom -= ofRoom;
    if (!(ofRoom > 0)) return;
    const last = found.at(-1);
    if (last && last.at === at && last.manner === manner) {
      const whole = last.flow_L_s + out;
      const roomShare = (last.flow_L_s * last.roomShare + ofRoom) / whole;
      found[found.length - 1] = { ...last, flow_L_s: whole, roomShare };
    } else found.push({ at, manner, flow_L_s: out, roomShare: ofRoom / out });
  };
  for (const leak of solution.leaks) {
    if (leak.flow_L_s > 0) leave(leak.at, 'leak', leak.flow_L_s);
    else flow -= leak.flow_L_s;
  }
  const spilt = flow - solution.flow_L_s.outdoors;
  const off = solution.pieces.find((piece) => piece.shape.jointOff);
  if (off && spilt > ROUNDING * solution.flow_L_s.fan) leave(off.id, 'duct off', spilt);
  return found;
}

/** Mean of what the air of the room holds while a fan runs, and for how long it does. */
export interface RunningAir {
  readonly minutes: number;
  readonly temperature_C: number;
  readonly humidity_g_m3: number;
}

export interface RoofAir {
  readonly humidity_g_m3: number;
  /** Its coldest surface. */
  readonly surface_C: number;
}

export interface EscapedWater extends Escape {
  /** Water of the room let into the roof space, kg. */
  readonly carried_kg: number;
  /** Most that can turn liquid on the coldest surface, kg: say "up to". */
  readonly upTo_kg: number;
  /** Of the air as it leaves the duct, degC; null for dry air. */
  readonly dewPoint_C: number | null;
}

/** Water that leaves at one place while the fan runs. No water is taken to settle in the duct itself. */
export function escapedWater(escape: Escape, running: RunningAir, roof: RoofAir): EscapedWater {
  const fromRoom = escape.roomShare * running.humidity_g_m3;
  const humidity_g_m3 = fromRoom + (1 - escape.roomShare) * roof.humidity_g_m3;
  const air = { temperature_C: running.temperature_C, humidity_g_m3 };
  const whole = roofWater(escape.flow_L_s, running.minutes, air, roof.surface_C);
  // Water that was in the roof space before is not the leak's doing.
  const carried_kg = humidity_g_m3 > 0 ? (whole.carried_kg * fromRoom) / humidity_g_m3 : 0;
  return {
    ...escape,
    carried_kg,
    upTo_kg: Math.min(whole.upTo_kg, carried_kg),
    dewPoint_C: whole.dewPoint_C,
  };
}
