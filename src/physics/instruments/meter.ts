/** One meter out of the box: its own error stays with it, and only the rest changes from reading to reading. */
import { randomFrom, seedFor } from '../random.ts';
import type { Failure } from '../types.ts';
import { METER_COEFFICIENTS } from './coefficients.ts';
import {
  errorAt,
  standardAt,
  type Bench,
  type InstrumentFigures,
  type InstrumentKind,
  type ReadOptions,
  type Reading,
} from './instrument.ts';
import { INSTRUMENTS } from './meters.ts';

export interface Meter {
  readonly kind: InstrumentKind;
  readonly figures: InstrumentFigures;
  /** Its own error in standard errors of its stated whole; no one on site knows it. */
  readonly own: number;
  /**
   * One reading at a place (see `InstrumentDefinition.read` for places). Read again, only the fresh part
   * of its error differs. A `Failure` where it cannot be held there or the rig has no answer.
   */
  readonly read: (bench: Bench, place: string, options?: ReadOptions) => Reading | Failure;
}

/**
 * A meter of a kind with its figures. `seed` (any whole number) settles both its own error, drawn once,
 * and the fresh parts of its readings in the order they are taken: the same seed gives the same meter and
 * the same readings. Errors are normal and their 95 % half-width is what the figures state.
 */
export function meter(kind: InstrumentKind, figures: InstrumentFigures, seed: number): Meter {
  const share = METER_COEFFICIENTS.systematicShare.value;
  const own = share * randomFrom(seedFor(seed, `${kind} itself`)).normal();
  const chance = randomFrom(seedFor(seed, `${kind} readings`));
  const fresh = () => Math.sqrt(1 - share ** 2) * chance.normal();
  return {
    kind,
    figures,
    own,
    read: (bench, place, options = {}) =>
      INSTRUMENTS[kind].read(bench, place, figures, { own, fresh }, options),
  };
}

/**
 * Half-width (95 %, in the meter's unit) of the error of the mean of `count` readings of one value by one
 * meter: only the fresh part averages away. At a count of 1 it is `errorAt`, resolution included.
 */
export function errorOfMean(figures: InstrumentFigures, value: number, count: number): number {
  const share = METER_COEFFICIENTS.systematicShare.value;
  const whole = errorAt({ ...figures, resolution: 0 }, value);
  const fresh = Math.hypot(whole * Math.sqrt(1 - share ** 2), figures.resolution / 2);
  return Math.hypot(whole * share, fresh / Math.sqrt(Math.max(1, count)));
}

/**
 * Standard error (one sigma, own part and resolution included) of one reading by such a meter, in its
 * unit: what the fitting and the ranking of faults ask for.
 */
export function standardOfReading(figures: InstrumentFigures, value: number): number {
  // A rounded number is spread evenly over its step: step / sqrt(12).
  return Math.hypot(standardAt(figures, value), figures.resolution / Math.sqrt(12));
}
