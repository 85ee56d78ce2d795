/** Fans against each other on the same run: at the same watts, at the same flow, and the air each watt moves. */
import { CENTRAL, type Coefficients } from './central.ts';
import { atSpeed, speedForFlow, speedWhere, withFan, type Answer, type SpeedOptions } from './speed.ts';
import type { FlowName } from './subsets.ts';
import type { FanTable, Rig, Solution, Stock } from './types.ts';

/** L/s per W of one of the three flows; null when the fan's table states no power or it draws none. */
export function litresPerWatt(solution: Solution, flow: FlowName = 'room'): number | null {
  const watts = solution.fan.power_W;
  return watts !== null && watts > 0 ? solution.flow_L_s[flow] / watts : null;
}

/** W per L/s (specific fan power), the same the other way up; null also when nothing moves. */
export function wattsPerLitre(solution: Solution, flow: FlowName = 'room'): number | null {
  const moved = solution.flow_L_s[flow];
  return solution.fan.power_W !== null && moved > 0 ? solution.fan.power_W / moved : null;
}

/** The speed at which the rig's fan draws some watts. Refused as `watts-out-of-range` or `one-speed-only`. */
export function speedForWatts(
  rig: Rig,
  stock: Stock,
  watts: number,
  coefficients: Coefficients = CENTRAL,
): Answer {
  const measure = (solution: Solution) => solution.fan.power_W;
  return speedWhere(rig, stock, watts, measure, { code: 'watts-out-of-range', unit: 'W' }, coefficients);
}

export interface Contender {
  readonly fan: string | FanTable;
  readonly answer: Answer;
  /** Share of rated speed, flow and watts it came to; null where refused or failed. */
  readonly speed: number | null;
  readonly flow_L_s: number | null;
  readonly power_W: number | null;
  readonly litresPerWatt: number | null;
}

function contender(fan: string | FanTable, answer: Answer, flow: FlowName): Contender {
  if (answer.outcome !== 'solved')
    return { fan, answer, speed: null, flow_L_s: null, power_W: null, litresPerWatt: null };
  const { solution, speed } = answer;
  return {
    fan,
    answer,
    speed,
    flow_L_s: solution.flow_L_s[flow],
    power_W: solution.fan.power_W,
    litresPerWatt: litresPerWatt(solution, flow),
  };
}

/**
 * Each fan on the same run at the speed that draws `watts`; when absent, the most that all of them can draw,
 * which is the least of their draws at rated speed. Fans of one speed that draw something else are refused.
 */
export function atSameWatts(
  rig: Rig,
  stock: Stock,
  fans: readonly (string | FanTable)[],
  { watts, coefficients = CENTRAL, flow = 'room' }: SpeedOptions & { readonly watts?: number } = {},
): Contender[] {
  const rated = (fan: string | FanTable) => {
    const answer = atSpeed(withFan(rig, fan), stock, 1, coefficients);
    return (answer.outcome === 'solved' ? answer.solution.fan.power_W : null) ?? Infinity;
  };
  const most = watts ?? Math.min(...fans.map(rated));
  return fans.map((fan) => contender(fan, speedForWatts(withFan(rig, fan), stock, most, coefficients), flow));
}

/** Each fan on the same run at the speed that gives a flow (L/s). */
export function atSameFlow(
  rig: Rig,
  stock: Stock,
  fans: readonly (string | FanTable)[],
  flow_L_s: number,
  { coefficients = CENTRAL, flow = 'room' }: SpeedOptions = {},
): Contender[] {
  return fans.map((fan) =>
    contender(fan, speedForFlow(withFan(rig, fan), stock, flow_L_s, { coefficients, flow }), flow),
  );
}
