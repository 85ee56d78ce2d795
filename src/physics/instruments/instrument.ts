/** What all meters share: the shape of a reading, its two kinds of error, and rounding to what is shown. */
import type { Coefficients } from '../central.ts';
import type { Failure, Rig, Stock } from '../types.ts';
import type { Traverse, TraverseMethod } from './traverse.ts';

export type InstrumentKind =
  'powered-hood' | 'passive-hood' | 'vane-anemometer' | 'manometer' | 'pitot-traverse' | 'bag';

/** Figures of a meter as seeds/instruments.json states them, whatever it measures (L/s, m/s or Pa). */
export interface InstrumentFigures {
  readonly measures: 'flow' | 'velocity' | 'pressure';
  /** Half-width of its error at 95 %, as a share of the reading. */
  readonly errorShare?: number;
  /** The same in the unit of what it measures. */
  readonly error?: number;
  readonly range: readonly [number, number];
  readonly resolution: number;
}

/** The run a meter is held to. */
export interface Bench {
  readonly rig: Rig;
  readonly stock: Stock;
  readonly coefficients?: Coefficients;
}

/** How a meter is used. What does not concern it is left alone. */
export interface ReadOptions {
  /** Manometer: which pressure its tube takes; static when absent. */
  readonly pressure?: 'static' | 'total';
  /** Manometer: station of its second tube, as in `Station.after`; the still air around the house when absent. */
  readonly from?: string;
  /** Pitot tube: log-linear when absent. */
  readonly method?: TraverseMethod;
  /** Pitot tube: points on the diameter, 6 when absent. */
  readonly points?: 6 | 8;
}

export interface Reading {
  readonly instrument: InstrumentKind;
  readonly unit: 'L/s' | 'm/s' | 'Pa';
  /** What the meter shows; null outside its range. */
  readonly shown: number | null;
  /** Half-width of its error (95 %) at what it shows, resolution included. */
  readonly error: number;
  /** What was there while it was measured. */
  readonly present: number;
  /** What is there with the meter taken away. */
  readonly undisturbed: number;
  readonly outOfRange: 'low' | 'high' | null;
  /** The flow through the place by this reading, L/s; null where it gives none. */
  readonly flow_L_s: number | null;
  /** Point by point, of a pitot traverse. */
  readonly traverse?: Traverse;
}

/** Errors of one meter in standard errors of its stated whole: variances of both parts add up to 1. */
export interface MeterErrors {
  /** The meter's own, the same at every reading. */
  readonly own: number;
  /** The part that comes anew; each call draws one. */
  readonly fresh: () => number;
}

export interface InstrumentDefinition {
  readonly kind: InstrumentKind;
  readonly unit: Reading['unit'];
  /**
   * `place` is a piece's id: the grille for hoods, vane and bag, a duct for the pitot tube; a manometer
   * takes any station of the run. Failure `wrong-place` elsewhere, or the failure of the rig itself.
   */
  readonly read: (
    bench: Bench,
    place: string,
    figures: InstrumentFigures,
    errors: MeterErrors,
    options: ReadOptions,
  ) => Reading | Failure;
}

/** 95 % limits lie this many standard deviations out. */
const LIMIT = 1.959964;

const stated = (figures: InstrumentFigures, value: number) =>
  Math.hypot((figures.errorShare ?? 0) * Math.abs(value), figures.error ?? 0);

/** Standard error (one sigma, own and fresh together) of a meter at a value, in its unit; resolution left out. */
export function standardAt(figures: InstrumentFigures, value: number): number {
  return stated(figures, value) / LIMIT;
}

/** Half-width (95 %) of its error at a value, in its unit; half a step of what it shows is in it. */
export function errorAt(figures: InstrumentFigures, value: number): number {
  return Math.hypot(stated(figures, value), figures.resolution / 2);
}

/** What a meter makes of a value already seen through its errors: in range, and rounded to its step. */
export function showSeen(figures: InstrumentFigures, seen: number, value: number) {
  const [low, high] = figures.range;
  const outOfRange = seen < low ? ('low' as const) : seen > high ? ('high' as const) : null;
  const shown = outOfRange ? null : Math.round(seen / figures.resolution) * figures.resolution;
  return { shown, outOfRange, error: errorAt(figures, shown ?? value) };
}

/** What it shows of a true value. */
export function show(figures: InstrumentFigures, value: number, errors: MeterErrors) {
  const seen = value + (errors.own + errors.fresh()) * standardAt(figures, value);
  return showSeen(figures, seen, value);
}

export function noPlace(place: string, allowed: string): Failure {
  return { outcome: 'failed', code: 'wrong-place', path: 'place', found: place, allowed };
}
