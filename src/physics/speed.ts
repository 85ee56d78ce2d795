/**
 * Running a fan at another speed. EC motors follow their signal by the speed laws down to a lowest speed; AC
 * fans run at the one speed of their table, since a voltage controller does not follow the laws closely
 * (fan textbooks, from memory). What cannot be had is a Refusal with what can.
 */
import { bracketedRoot } from './root.ts';
import { CENTRAL, type Coefficients } from './central.ts';
import type { Coefficient } from './coefficients.ts';
import { refused, type Refusal } from './refusal.ts';
import { solve } from './solve.ts';
import type { Failure, FanTable, Rig, Solution, Stock } from './types.ts';
import type { FlowName } from './subsets.ts';

/** Lowest share of rated speed an EC fan keeps to. */
export const LOWEST_SPEED: Coefficient = {
  value: 0.2,
  low: 0.1,
  high: 0.3,
  mark: 'model assumption',
  source:
    'EC fans stop answering their signal somewhere near a fifth of rated speed; no published figure found',
};

export interface AtSpeed {
  readonly outcome: 'solved';
  /** Share of rated speed asked of the fan. */
  readonly speed: number;
  readonly solution: Solution;
}

export type Answer = AtSpeed | Failure | Refusal;

export interface SpeedOptions {
  readonly coefficients?: Coefficients;
  /** Which flow is meant; room when absent. */
  readonly flow?: FlowName;
}

/** The same run with its fan at a share of rated speed; all else as it was. */
export function withSpeed(rig: Rig, speed: number): Rig {
  return { ...rig, run: rig.run.map((piece) => (piece.kind === 'fan' ? { ...piece, speed } : piece)) };
}

/** The same run with another fan, a name from the stock or a table, at rated speed. */
export function withFan(rig: Rig, fan: string | FanTable): Rig {
  return {
    ...rig,
    run: rig.run.map((piece) => (piece.kind === 'fan' ? { ...piece, fan, speed: 1 } : piece)),
  };
}

/** Shares of rated speed the rig's fan can run at. A fan that states no motor is taken for an AC one. */
export function speedRange(rig: Rig, stock: Stock): readonly [number, number] {
  const piece = rig.run.find((one) => one.kind === 'fan');
  const table = piece?.kind === 'fan' && (typeof piece.fan === 'string' ? stock.fans[piece.fan] : piece.fan);
  return table && table.motor === 'EC' ? [LOWEST_SPEED.value, 1] : [1, 1];
}

/** The rig at a share of rated speed. Refuses a speed its fan cannot run at. */
export function atSpeed(rig: Rig, stock: Stock, speed: number, coefficients: Coefficients = CENTRAL): Answer {
  const range = speedRange(rig, stock);
  const [lowest, highest] = range;
  if (!(speed >= lowest && speed <= highest)) {
    const code = lowest === highest ? 'one-speed-only' : 'speed-out-of-range';
    return refused(code, speed, range, 'share of rated speed');
  }
  const solution = solve(withSpeed(rig, speed), stock, coefficients);
  return solution.outcome === 'failed' ? solution : { outcome: 'solved', speed, solution };
}

/** What is close enough to what was asked, as a share of it. */
const CLOSE = 1e-4;

/**
 * The speed at which a measure of the solution, taken to rise with speed, comes to what is wanted. `measure`
 * gives null where the solution cannot say, else a number in the unit of `wanted`; speed is a share of rated; `code` is the Refusal when no speed gives it.
 */
export function speedWhere(
  rig: Rig,
  stock: Stock,
  wanted: number,
  measure: (solution: Solution) => number | null,
  refusal: { readonly code: Refusal['code']; readonly unit: Refusal['unit'] },
  coefficients: Coefficients = CENTRAL,
): Answer {
  const [lowest, highest] = speedRange(rig, stock);
  const ends = [
    atSpeed(rig, stock, lowest, coefficients),
    atSpeed(rig, stock, highest, coefficients),
  ] as const;
  const [slow, fast] = ends;
  if (slow.outcome !== 'solved') return slow;
  if (fast.outcome !== 'solved') return fast;
  const range = [measure(slow.solution), measure(fast.solution)] as const;
  if (range[0] === null || range[1] === null) return refused('no-power-stated', wanted, [0, 0], 'W');
  const possible: readonly [number, number] = [range[0], range[1]];
  const near = (value: number) => Math.abs(value - wanted) <= CLOSE * Math.abs(value);
  if (near(range[1])) return fast;
  if (near(range[0])) return slow;
  const { code, unit } = refusal;
  const no = refused(lowest === highest ? 'one-speed-only' : code, wanted, possible, unit);
  if (!(wanted > range[0] && wanted < range[1])) return no;
  const short = (speed: number) => {
    const solution = solve(withSpeed(rig, speed), stock, coefficients);
    return (solution.outcome === 'failed' ? 0 : (measure(solution) ?? 0)) - wanted;
  };
  const found = atSpeed(rig, stock, bracketedRoot(short, lowest, highest, 1e-9 * wanted), coefficients);
  // Where a stalling fan jumps, no speed gives what lies in between.
  return found.outcome === 'solved' && !near(measure(found.solution) ?? 0) ? no : found;
}

/**
 * The speed that gives a flow (L/s), for instance what a faulty run needs to get its rate back. Refused as
 * `cannot-reach` or `one-speed-only` with the flows its speeds can give.
 */
export function speedForFlow(
  rig: Rig,
  stock: Stock,
  flow_L_s: number,
  { coefficients, flow = 'room' }: SpeedOptions = {},
): Answer {
  const measure = (solution: Solution) => solution.flow_L_s[flow];
  return speedWhere(rig, stock, flow_L_s, measure, { code: 'cannot-reach', unit: 'L/s' }, coefficients);
}
