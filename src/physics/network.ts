/**
 * The plain twin a rig is solved on: parts in series, each a list of losses that know only a flow.
 * Total-pressure bookkeeping throughout; flows in m3/s, pressures in Pa, lengths in m.
 */
import type { AirState } from './air.ts';
import type { Coefficients } from './coefficients.ts';
import type { ByReynolds } from './friction.ts';
import type { AssumptionCode, WarningCode } from './notes.ts';
import type { Cause, PieceKind, PieceShape, Rig, Stock } from './types.ts';

export interface Term {
  readonly cause: Cause;
  /** Pa at a flow in m3/s >= 0. */
  readonly loss: (flow: number) => number;
}

export interface Part {
  readonly id: string;
  readonly kind: PieceKind;
  /** Bore, m. */
  readonly diameter: number;
  readonly terms: readonly Term[];
  readonly shape: PieceShape;
}

/** What a fitting may read while it turns a piece into losses. */
export interface Context {
  readonly air: AirState;
  readonly stock: Stock;
  readonly coefficients: Coefficients;
  readonly rig: Rig;
  /** Friction factor, remembered over one run. */
  readonly friction: ByReynolds;
  readonly assume: (code: AssumptionCode, at: string) => void;
  readonly warn: (code: WarningCode, at: string) => void;
}

/** A constant coefficient on the velocity pressure of `diameter` (m). */
export function coefficientTerm(cause: Cause, coefficient: number, diameter: number, density: number): Term {
  const scale = (coefficient * density) / 2 / boreArea(diameter) ** 2;
  return { cause, loss: (flow) => scale * flow * flow };
}

export function boreArea(diameter: number): number {
  return (Math.PI / 4) * diameter * diameter;
}

export function velocityPressure(flow: number, diameter: number, density: number): number {
  return (density / 2) * (flow / boreArea(diameter)) ** 2;
}

/** Re at a flow; at least 1, so that no loss divides by a standing flow. */
export function reynolds(flow: number, diameter: number, viscosity: number): number {
  return Math.max(1, (flow / boreArea(diameter)) * (diameter / viscosity));
}

export function lossOf(part: Part, flow: number): number {
  let sum = 0;
  for (const term of part.terms) sum += term.loss(flow);
  return sum;
}
