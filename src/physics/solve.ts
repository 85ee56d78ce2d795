/**
 * The operating point of a rig: where the fan's total pressure equals what the run asks for. Found by a
 * bracketed method, with the residual reported; a rig that has no answer gives a Failure, never a throw.
 */
import { CENTRAL, type Coefficients } from './coefficients.ts';
import { buildNetwork, isFailure, type Network } from './build.ts';
import { boreArea, lossOf, reynolds, velocityPressure } from './network.ts';
import { LAMINAR_LIMIT, TURBULENT_LIMIT } from './friction.ts';
import { bracketedRoot } from './root.ts';
import type {
  CurvePoint,
  Failure,
  Note,
  OperatingPoint,
  PieceResult,
  Rig,
  Solution,
  Station,
  Stock,
} from './types.ts';

/** Pa; far below what any instrument or drawing shows. */
const TOLERANCE = 1e-9;
/** The station between what is wrong at the fan's inlet and the fan itself. */
export const FAN_INLET = 'fan inlet';
/** Intervals searched when a curve may cross more than once. */
const SCAN_STEPS = 240;

/** Total pressure in Pa that the run asks of the fan at a flow in m3/s. */
export function systemPressure(network: Network, flow: number): number {
  let sum = 0;
  for (const part of network.parts) sum += lossOf(part, flow);
  return sum;
}

/**
 * Solve a rig. `stock` gives the fans and materials it names; `coefficients` defaults to central values.
 * Flows in the result in L/s, pressures in Pa. Failures name the path in the rig, what was found and what
 * is allowed.
 */
export function solve(rig: Rig, stock: Stock, coefficients: Coefficients = CENTRAL): Solution | Failure {
  const network = buildNetwork(rig, stock, coefficients);
  if (isFailure(network)) return network;
  const surplus = (flow: number) => network.fan.totalPressure(flow) - systemPressure(network, flow);
  const roots = crossings(network, surplus);
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
  return report(network, roots[chosen]!, surplus(roots[chosen]!), points);
}

function crossings(network: Network, surplus: (flow: number) => number): number[] {
  const start = network.fan.freeFlow * 1e-6;
  if (!(surplus(start) > 0)) return [];
  let end = network.fan.freeFlow;
  for (let i = 0; i < 60 && surplus(end) >= 0; i++) end *= 1.5;
  if (!(surplus(end) < 0)) return [];
  if (network.fan.falling) return [bracketedRoot(surplus, start, end, TOLERANCE)];
  const roots: number[] = [];
  const edges = brackets(network, start, end);
  let left = start;
  let atLeft = surplus(left);
  for (const right of edges) {
    const atRight = surplus(right);
    if (atLeft * atRight <= 0 && atRight !== 0) roots.push(bracketedRoot(surplus, left, right, TOLERANCE));
    left = right;
    atLeft = atRight;
  }
  return roots;
}

/**
 * Ends of the brackets to search, in order. What the run asks for grows with flow, so where the fan's
 * pressure falls there is one crossing at most and the stretch is one bracket; where it rises it is cut fine.
 */
function brackets(network: Network, start: number, end: number): number[] {
  const edges: number[] = [];
  let flow = start;
  let pressure = network.fan.totalPressure(start);
  let rose = false;
  for (let i = 1; i <= SCAN_STEPS; i++) {
    const next = start + ((end - start) * i) / SCAN_STEPS;
    const atNext = network.fan.totalPressure(next);
    const rises = atNext > pressure;
    if ((rises || rose) && i > 1) edges.push(flow);
    flow = next;
    pressure = atNext;
    rose = rises;
  }
  edges.push(end);
  return edges;
}

function operatingPoint(network: Network, surplus: (flow: number) => number, flow: number): OperatingPoint {
  const step = Math.max(1e-7, flow * 1e-5);
  return {
    flow_L_s: flow * 1000,
    pressure_Pa: network.fan.totalPressure(flow),
    // On a falling fan curve every crossing is: the run asks for more at more flow.
    stable: network.fan.falling || surplus(flow + step) < surplus(flow - step),
  };
}

function report(network: Network, flow: number, residual: number, points: OperatingPoint[]): Solution {
  const { air, fan, parts, fanIndex } = network;
  const litres = flow * 1000;
  const pressure = fan.totalPressure(flow);
  const power = fan.power(flow);
  const pieces: PieceResult[] = parts.map((part) => {
    const causes = part.terms.map((term) => ({ cause: term.cause, loss_Pa: term.loss(flow) }));
    return {
      id: part.id,
      kind: part.kind,
      flow_L_s: litres,
      velocity_m_s: flow / boreArea(part.diameter),
      velocityPressure_Pa: velocityPressure(flow, part.diameter, air.density),
      loss_Pa: causes.reduce((sum, cause) => sum + cause.loss_Pa, 0),
      causes,
      shape: part.shape,
    };
  });
  return {
    outcome: 'solved',
    flow_L_s: { room: litres, fan: litres, outdoors: litres },
    fan: {
      pressure_Pa: pressure,
      staticPressure_Pa: pressure - fan.velocityPressure(flow),
      power_W: power,
      litresPerWatt: power ? litres / power : null,
      speed: network.speed,
    },
    air: { density_kg_m3: air.density, kinematicViscosity_m2_s: air.viscosity },
    residual_Pa: residual,
    pieces,
    stations: stations(network, flow, pieces, fanIndex, pressure),
    operatingPoints: points,
    warnings: warnings(network, flow, points),
    assumptions: network.assumptions,
  };
}

function stations(
  network: Network,
  flow: number,
  pieces: PieceResult[],
  fanIndex: number,
  rise: number,
): Station[] {
  const list: Station[] = [
    {
      after: 'outside air',
      flow_L_s: flow * 1000,
      totalPressure_Pa: 0,
      staticPressure_Pa: 0,
      velocity_m_s: 0,
    },
  ];
  let total = 0;
  for (const [i, piece] of pieces.entries()) {
    const open = piece.kind === 'room' || piece.kind === 'terminal';
    const place = (after: string): Station => ({
      after,
      flow_L_s: piece.flow_L_s,
      totalPressure_Pa: total,
      staticPressure_Pa: total - (open ? 0 : piece.velocityPressure_Pa),
      velocity_m_s: open ? 0 : piece.velocity_m_s,
    });
    total -= piece.loss_Pa;
    if (i === fanIndex) {
      list.push(place(FAN_INLET));
      total += rise;
    }
    list.push(place(piece.id));
  }
  if (network.parts[0]!.kind !== 'room') list[0] = { ...list[0]!, after: 'room' };
  return list;
}

function warnings(network: Network, flow: number, points: OperatingPoint[]): Note[] {
  const list: Note[] = [...network.warnings];
  const fan = network.parts[network.fanIndex]!.id;
  const [low, high] = network.fan.measured;
  if (flow < low || flow > high) list.push({ code: 'outside-fan-table', at: fan });
  if (points.length > 1) list.push({ code: 'several-points', at: fan });
  for (const part of network.parts) {
    const re = reynolds(flow, part.diameter, network.air.viscosity);
    if (part.kind === 'duct' && re > LAMINAR_LIMIT && re < TURBULENT_LIMIT)
      list.push({ code: 'transitional-flow', at: part.id });
  }
  return list;
}

/** The system curve of a rig as total pressure (Pa) at flows (L/s >= 0); null where the rig cannot be built. */
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
