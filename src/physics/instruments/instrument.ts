/** What all meters share: the shape of a reading, one meter's own error, and rounding to what it shows. */
import type { Coefficients } from '../coefficients.ts';
import type { Failure, Rig, Stock } from '../types.ts';

export type InstrumentKind =
  'powered-hood' | 'passive-hood' | 'vane-anemometer' | 'manometer' | 'pitot-traverse' | 'bag';

/** Figures of a meter as seeds/instruments.json states them, whatever it measures. */
export interface InstrumentFigures {
  readonly measures: 'flow' | 'velocity' | 'pressure';
  /** Half-width of its error at 95 %, as a share of the reading. */
  readonly errorShare?: number;
  /** The same in the unit of what it measures. */
  readonly error?: number;
  readonly range: readonly [number, number];
  readonly resolution: number;
}

export interface Bench {
  readonly rig: Rig;
  readonly stock: Stock;
  readonly coefficients?: Coefficients;
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
}

export interface InstrumentDefinition {
  readonly kind: InstrumentKind;
  readonly unit: Reading['unit'];
  /**
   * `place` is a piece's id: the grille for hoods, vane and bag; a manometer reads static pressure just
   * behind the piece. `random` gives even numbers in [0, 1); the same ones give the same reading.
   */
  readonly read: (
    bench: Bench,
    place: string,
    figures: InstrumentFigures,
    random: () => number,
  ) => Reading | Failure;
}

/** Share of a meter's error that is its own and stays; the rest comes anew each time (model assumption). */
export const SYSTEMATIC_SHARE = 0.8;
/** 95 % limits lie this many standard deviations out. */
const LIMIT = 1.959964;

/** Standard normal from two even numbers (Box and Muller). */
export function normal(random: () => number): number {
  const radius = Math.sqrt(-2 * Math.log(1 - random()));
  return radius * Math.cos(2 * Math.PI * random());
}

export function errorAt(figures: InstrumentFigures, value: number): number {
  return Math.hypot((figures.errorShare ?? 0) * Math.abs(value), figures.error ?? 0, figures.resolution / 2);
}

/**
 * What it shows of a value. Two normals: the first is the meter's own error, the second this reading's;
 * variances add up to the stated error.
 */
export function show(figures: InstrumentFigures, value: number, random: () => number) {
  const own = normal(random) * SYSTEMATIC_SHARE;
  const fresh = normal(random) * Math.sqrt(1 - SYSTEMATIC_SHARE ** 2);
  const stated = Math.hypot((figures.errorShare ?? 0) * Math.abs(value), figures.error ?? 0);
  const seen = value + ((own + fresh) * stated) / LIMIT;
  const [low, high] = figures.range;
  const outOfRange = seen < low ? ('low' as const) : seen > high ? ('high' as const) : null;
  const shown = outOfRange ? null : Math.round(seen / figures.resolution) * figures.resolution;
  return { shown, outOfRange, error: errorAt(figures, shown ?? value) };
}

export function noPlace(place: string, allowed: string): Failure {
  return { outcome: 'failed', code: 'wrong-place', path: 'place', found: place, allowed };
}
