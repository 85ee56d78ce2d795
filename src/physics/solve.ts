/**
 * The operating point of a rig: where the fan's total pressure equals what the run asks for. Found by a
 * bracketed method, with the residual reported; a rig that has no answer gives a Failure, never a throw.
 */
import { CENTRAL, type Coefficients } from './coefficients.ts';
import { buildNetwork, isFailure } from './build.ts';
import { crossings } from './crossings.ts';
import { lossOf, type Network } from './network.ts';
import { report } from './report.ts';
import { bracketedRoot } from './root.ts';
import type { CurvePoint, Failure, OperatingPoint, Rig, Solution, Stock } from './types.ts';
import { fromFan, leftOver, toFan } from './walk.ts';

/**
 * Where a run leaks nearly all its air on the way, what is left at its end hangs on digits a number does
 * not hold, and the walk cannot be closed: a residual above this is no solution.
 */
const UNSETTLED_PA = 1e-6;

/** Total pressure in Pa that the run asks of the fan at a flow through the fan in m3/s. */
export function systemPressure(network: Network, flow: number): number {
  if (network.leaky) return leakySystemPressure(network, flow);
  let sum = 0;
  for (let i = network.live[0]; i < network.live[1]; i++) sum += lossOf(network.parts[i]!, flow);
  return sum + (network.endPressure - network.startPressure);
}

/** The same where flow is lost or gained on the way: both sides of the fan are solved for their far ends. */
function leakySystemPressure(network: Network, flow: number): number {
  const room = root((start) => toFan(network, start).flow - flow, flow, 0.01);
  const before = toFan(network, room).total;
  const behind = root((total) => fromFan(network, flow, total), before, 10);
  return behind - before;
}

/** Root of a function that grows with x; searched outward from `near` by `step` and its doublings. */
function root(f: (x: number) => number, near: number, step: number): number {
  let low = near - step;
  let high = near + step;
  for (let i = 0; i < 60 && f(low) > 0; i++) low -= step * 2 ** i;
  for (let i = 0; i < 60 && f(high) < 0; i++) high += step * 2 ** i;
  return bracketedRoot(f, low, high, 1e-13);
}

/**
 * Solve a rig. `stock` gives the fans and materials it names; `coefficients` defaults to central values.
 * Flows in the result in L/s, pressures in Pa. Failures name the path in the rig, what was found and what
 * is allowed. A run that the wind blows back through, or that stands still, is a Solution that says so in
 * `direction`.
 */
export function solve(rig: Rig, stock: Stock, coefficients: Coefficients = CENTRAL): Solution | Failure {
  const network = buildNetwork(rig, stock, coefficients);
  if (isFailure(network)) return network;
  const surplus = network.leaky
    ? (flow: number) => leftOver(network, flow)
    : (flow: number) => network.fan.totalPressure(flow) - systemPressure(network, flow);
  const least = network.fan.freeFlow * 1e-6;
  // A fan that lifts nothing, or a run shut so fast that no flow passes it at any pressure.
  const able = network.fan.totalPressure(least) > 0 && Number.isFinite(surplus(least));
  const roots = able ? crossings(network, surplus) : [];
  if (roots.length === 0) {
    return {
      outcome: 'failed',
      code: 'no-crossing',
      path: 'run',
      found: 'fan and system curve do not meet',
      allowed: 'a fan with some pressure at some flow',
    };
  }
  const points = roots.map((flow) => operatingPoint(network, surplus, flow));
  // Starting from rest a fan settles on the first stable crossing.
  const chosen = Math.max(
    0,
    points.findIndex((point) => point.stable),
  );
  const solution = report(network, roots[chosen]!, points);
  if (!network.leaky || Math.abs(solution.residual_Pa) < UNSETTLED_PA) return solution;
  return {
    outcome: 'failed',
    code: 'no-crossing',
    path: 'run',
    found: 'leaks so large that next to nothing gets past them',
    allowed: 'leakage that leaves air to follow along the run',
  };
}

/** `start` is the flow at the start of the live run. */
function operatingPoint(network: Network, surplus: (flow: number) => number, start: number): OperatingPoint {
  const step = Math.max(1e-7, Math.abs(start) * 1e-5);
  const flow = network.leaky ? toFan(network, start).flow : start;
  return {
    flow_L_s: flow * 1000,
    pressure_Pa: network.fan.totalPressure(flow),
    // On a falling fan curve every crossing is: the run asks for more at more flow.
    stable: network.fan.falling || surplus(start + step) < surplus(start - step),
  };
}

/**
 * What a rig's run asks of the fan as total pressure (Pa) at flows through the fan (L/s >= 0); null where
 * the rig cannot be built. Leaks and wind are in it.
 */
export function systemCurve(
  rig: Rig,
  stock: Stock,
  flows_L_s: readonly number[],
  coefficients: Coefficients = CENTRAL,
): CurvePoint[] | null {
  const network = buildNetwork(rig, stock, coefficients);
  if (isFailure(network)) return null;
  return flows_L_s.map((flow) => ({ flow_L_s: flow, pressure_Pa: systemPressure(network, flow / 1000) }));
}

/** The fan's total-pressure curve of a rig (Pa) at flows (L/s >= 0); null where the rig cannot be built. */
export function fanCurveOf(rig: Rig, stock: Stock, flows_L_s: readonly number[]): CurvePoint[] | null {
  const network = buildNetwork(rig, stock, CENTRAL);
  if (isFailure(network)) return null;
  return flows_L_s.map((flow) => ({ flow_L_s: flow, pressure_Pa: network.fan.totalPressure(flow / 1000) }));
}
