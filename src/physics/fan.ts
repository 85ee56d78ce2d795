/**
 * A fan as a curve of total pressure against flow, from a table of measured points. Static tables are
 * turned into total by adding the fan velocity pressure on the outlet area (ISO 5801 definition, from
 * memory), because the run is charged in total pressure and pays its own exit loss.
 */
import type { FanTable } from './types.ts';
import { monotoneCubic } from './interpolate.ts';

/** Standard air of fan tables, kg/m3 (ISO 5801, from memory). */
export const RATING_DENSITY = 1.2;

export interface FanCurve {
  /** Total pressure rise in Pa at a flow in m3/s, at the given speed and density. */
  readonly totalPressure: (flow: number) => number;
  /** Fan velocity pressure in Pa at a flow in m3/s. */
  readonly velocityPressure: (flow: number) => number;
  /** Power in W, or null when the table states none. */
  readonly power: (flow: number) => number | null;
  /** Flow in m3/s at which the stated pressure reaches zero. */
  readonly freeFlow: number;
  /** Flows in m3/s within which the table was measured. */
  readonly measured: readonly [number, number];
  /** Flow in m3/s below which it stalls: where its stated pressure last stops rising with flow; 0 when it never rises. */
  readonly stallsBelow: number;
  /** Whether pressure never rises with flow, so that only one crossing is possible. */
  readonly falling: boolean;
}

/**
 * Fan laws: flow follows speed, pressure its square, power its cube above the motor's floor; pressure
 * and power follow density. `outletDiameter` in m is used when the table names none.
 */
export function fanCurve(table: FanTable, density: number, speed: number, outletDiameter: number): FanCurve {
  const flows = table.points.map((point) => point.flow_L_s / 1000);
  const pressures = table.points.map((point) => point.pressure_Pa);
  const rating = table.ratingDensity_kg_m3 ?? RATING_DENSITY;
  const area = (Math.PI / 4) * ((table.outletDiameter_mm ?? outletDiameter * 1000) / 1000) ** 2;
  const dynamic = table.pressure === 'static' ? rating / 2 / area ** 2 : 0;
  const stated = extended(flows, pressures, dynamic);
  const scale = (density / rating) * speed ** 2;
  const powers = table.points.map((point) => point.power_W);
  const known = powers.every((power): power is number => power !== undefined);
  const watts = known ? monotoneCubic(flows, powers) : null;
  const floor = table.motorFloor_W ?? 0;
  const first = flows[0]!;
  const last = flows[flows.length - 1]!;
  return {
    totalPressure: (flow) => {
      const rated = flow / speed;
      // Air driven back through the fan leaves it no velocity pressure at the outlet.
      return scale * (stated.value(rated) + (rated > 0 ? dynamic * rated * rated : 0));
    },
    velocityPressure: (flow) => (density / 2) * (flow / area) ** 2,
    power: (flow) => {
      if (!watts) return null;
      const rated = watts.value(Math.min(last, Math.max(first, flow / speed)));
      return floor + Math.max(0, rated - floor) * (density / rating) * speed ** 3;
    },
    freeFlow: stated.freeFlow * speed,
    measured: [first * speed, last * speed],
    stallsBelow: lastPeak(flows, pressures) * speed,
    falling:
      pressures.every((p, i) => i === 0 || p <= pressures[i - 1]!) && dynamic === 0
        ? true
        : fallsThroughout(stated.value, dynamic, stated.freeFlow),
  };
}

/**
 * The table beyond its ends (model assumption): to shut-off a straight line at the first slope, never
 * above 1.15 times the first point; to free delivery a straight line at one to two times the last
 * slope; past it, where air is driven through the fan, pressure falls with the square of flow, and
 * by no less than the velocity pressure (`dynamic`, Pa per (m3/s)^2) grows: no fan lifts more the more is
 * driven through it.
 */
function extended(flows: readonly number[], pressures: readonly number[], dynamic: number) {
  const inside = monotoneCubic(flows, pressures);
  const n = flows.length;
  const first = flows[0]!;
  const last = flows[n - 1]!;
  const pFirst = pressures[0]!;
  const pLast = pressures[n - 1]!;
  const firstSecant = Math.abs((pressures[1]! - pFirst) / (flows[1]! - first));
  const startSlope = Math.min(Math.max(0, -inside.slopes[0]!), firstSecant);
  const secant = Math.abs((pLast - pressures[n - 2]!) / (last - flows[n - 2]!));
  const endSlope = -Math.min(2 * secant, Math.max(secant, -inside.slopes[n - 1]!)) || -pFirst / last;
  const freeFlow = last + pLast / -endSlope;
  const square = Math.max(-endSlope / (2 * freeFlow), dynamic);
  const value = (flow: number): number => {
    if (flow < first) return Math.min(pFirst + startSlope * (first - flow), 1.15 * pFirst);
    if (flow <= last) return inside.value(flow);
    if (flow <= freeFlow) return pLast + endSlope * (flow - last);
    return -square * (flow ** 2 - freeFlow ** 2);
  };
  return { value, freeFlow };
}

function fallsThroughout(stated: (flow: number) => number, dynamic: number, freeFlow: number): boolean {
  let before = Infinity;
  for (let i = 0; i <= 60; i++) {
    const flow = (freeFlow * i) / 60;
    const pressure = stated(flow) + dynamic * flow * flow;
    if (pressure > before + 1e-9) return false;
    before = pressure;
  }
  return true;
}

/** Flow at which pressure last stops rising; 0 when it never rises. */
function lastPeak(flows: readonly number[], pressures: readonly number[]): number {
  for (let i = flows.length - 1; i > 0; i--) if (pressures[i]! > pressures[i - 1]!) return flows[i]!;
  return 0;
}
