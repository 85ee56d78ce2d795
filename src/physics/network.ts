/**
 * The plain twin a rig is solved on: parts in series, each a list of losses that know only a flow, and
 * the leaks on the way. Total-pressure bookkeeping throughout; flows in m3/s, pressures in Pa, lengths in m.
 */
import type { AirState } from './air.ts';
import type { Coefficients } from './central.ts';
import type { FanCurve } from './fan.ts';
import type { ByReynolds } from './friction.ts';
import type { Leakage } from './leakage.ts';
import type { AssumptionCode, WarningCode } from './notes.ts';
import type { Cause, Note, PieceKind, PieceShape, Rig, Stock } from './types.ts';

export interface Term {
  readonly cause: Cause;
  /** Pa at a flow in m3/s >= 0. */
  readonly loss: (flow: number) => number;
  /** Pa lost where air runs backward, at the flow's size; the same as forward when absent (model assumption). */
  readonly backward?: (flow: number) => number;
}

export interface Part {
  readonly id: string;
  readonly kind: PieceKind;
  /** Bore at its end, m. */
  readonly diameter: number;
  readonly terms: readonly Term[];
  readonly shape: PieceShape;
  readonly leakage?: Leakage;
}

export interface Network {
  readonly air: AirState;
  /** In order from room to outdoors; the fan stands among them with the losses of its inlet. */
  readonly parts: readonly Part[];
  readonly fanIndex: number;
  /** Parts that air passes through: from the first up to but not including the second. */
  readonly live: readonly [number, number];
  /** Pressure where the live parts begin and where they end, Pa. */
  readonly startPressure: number;
  readonly endPressure: number;
  /** Pressure of the wind at the terminal, Pa. */
  readonly outdoorPressure: number;
  /** Pressure of the space the duct leaks to, Pa. */
  readonly roofPressure: number;
  readonly leaky: boolean;
  readonly fan: FanCurve;
  readonly speed: number;
  readonly assumptions: readonly Note[];
  readonly warnings: readonly Note[];
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

/** Re at a flow >= 0; at least 1, so that no loss divides by a standing flow. */
export function reynolds(flow: number, diameter: number, viscosity: number): number {
  return Math.max(1, (flow / boreArea(diameter)) * (diameter / viscosity));
}

/** Pa of one term at a flow of either sign; below 0 where air runs backward. */
export function termLoss(term: Term, flow: number): number {
  return flow >= 0 ? term.loss(flow) : -(term.backward ?? term.loss)(-flow);
}

export function lossOf(part: Part, flow: number): number {
  let sum = 0;
  if (flow >= 0) for (const term of part.terms) sum += term.loss(flow);
  else for (const term of part.terms) sum += termLoss(term, flow);
  return sum;
}
