/**
 * A rig's Solution and its curves. A rig that has no answer gives a Failure, never a throw.
 */
import { CENTRAL, type Coefficients } from './central.ts';
import { buildNetwork, isFailure } from './build.ts';
import { isStable, operate, systemPressure, type Operation } from './operate.ts';
import type { Network } from './network.ts';
import { report } from './report.ts';
import type { CurvePoint, Failure, OperatingPoint, Rig, Solution, Stock } from './types.ts';
import { toFan } from './walk.ts';

/**
 * Solve a rig. `stock` gives the fans and materials it names; `coefficients` defaults to central values.
 * Flows in the result in L/s, pressures in Pa. Failures name the path in the rig, what was found and what
 * is allowed. A run that the wind blows back through, or that stands still, is a Solution that says so in
 * `direction`.
 */
export function solve(rig: Rig, stock: Stock, coefficients: Coefficients = CENTRAL): Solution | Failure {
  const network = buildNetwork(rig, stock, coefficients);
  if (isFailure(network)) return network;
  const operation = operate(network);
  if (isFailure(operation)) return operation;
  const points = operation.roots.map((start) => operatingPoint(network, operation, start));
  return report(network, operation.start, points);
}

/** `start` is the flow at the start of the live run. */
function operatingPoint(network: Network, { surplus }: Operation, start: number): OperatingPoint {
  const flow = network.leaky ? toFan(network, start).flow : start;
  return {
    flow_L_s: flow * 1000,
    pressure_Pa: network.fan.totalPressure(flow),
    stable: isStable(network, surplus, start),
  };
}

/**
 * What a rig's run asks of the fan as total pressure (Pa) at flows through the fan (L/s >= 0, rising); null
 * where the rig cannot be built. Leaks and wind are in it. It ends with the first point above `most_Pa`: more
 * flow asks for more.
 */
export function systemCurve(
  rig: Rig,
  stock: Stock,
  flows_L_s: readonly number[],
  most_Pa = Infinity,
): CurvePoint[] | null {
  const network = buildNetwork(rig, stock, CENTRAL);
  if (isFailure(network)) return null;
  const near = { lost: 0, behind: 0 };
  const points: CurvePoint[] = [];
  for (const flow_L_s of flows_L_s) {
    const pressure_Pa = systemPressure(network, flow_L_s / 1000, near);
    points.push({ flow_L_s, pressure_Pa });
    if (pressure_Pa > most_Pa) break;
  }
  return points;
}

/** The fan's total-pressure curve of a rig (Pa) at flows (L/s >= 0); null where the rig cannot be built. */
export function fanCurveOf(rig: Rig, stock: Stock, flows_L_s: readonly number[]): CurvePoint[] | null {
  const network = buildNetwork(rig, stock, CENTRAL);
  if (isFailure(network)) return null;
  return flows_L_s.map((flow) => ({ flow_L_s: flow, pressure_Pa: network.fan.totalPressure(flow / 1000) }));
}
