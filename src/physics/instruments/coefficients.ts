/**
 * Every figure the meters and the reading of them rest on that is no law and stands in no instrument's
 * entry: value, range, source and mark, as for the engine's own coefficients.
 */
import type { Coefficient } from '../coefficients.ts';
import { HELD_COEFFICIENTS } from './held.ts';

export const METER_COEFFICIENTS = {
  /** Share of a meter's standard error that is its own and stays; the rest comes anew each reading. */
  systematicShare: {
    value: 0.8,
    low: 0.5,
    high: 0.95,
    mark: 'model assumption',
    source:
      'published meter errors are mostly of calibration and of how the meter suits the grille, which stay; no split was found',
  },
  ...HELD_COEFFICIENTS,
  /** Gross face of a plain grille over the area of its spigot. */
  faceArea: {
    value: 1.6,
    low: 1.3,
    high: 2,
    mark: 'model assumption',
    source: 'a face about a quarter wider than its spigot; measure the grille at hand',
  },
  /** Factor on the mean speed at the gross face of an extract grille. */
  faceFactor: {
    value: 0.85,
    low: 0.7,
    high: 1,
    mark: 'memory',
    source: 'grille makers give 0.7 to 1 for extract grilles, or it is found by a traverse on site',
  },
  /** n of the 1/n-power law of speed across a duct. */
  profilePower: {
    value: 7,
    low: 6,
    high: 10,
    mark: 'model assumption',
    source: 'textbook law of developed turbulent flow; a short run with bends is not developed',
  },
  /** Step to which the pressure at one point of a traverse is read, Pa. */
  pitotStep_Pa: {
    value: 0.1,
    low: 0.1,
    high: 1,
    mark: 'model assumption',
    source: 'the resolution of the manometer in the catalogue',
  },
  /** How many faults a run brought to a call-out is taken to have, before anything is read. */
  faultsExpected: {
    value: 1,
    low: 0.3,
    high: 3,
    mark: 'model assumption',
    source: 'each fault that fits somewhere is as likely as any other; no survey with counts was found',
  },
  /** Mean amount, of 0 to 1, by which faults are taken to run: small ones are the commoner. */
  faultAmount: {
    value: 0.5,
    low: 0.2,
    high: 2,
    mark: 'model assumption',
    source: 'chance of an amount falls off as exp(-amount / this), cut at 1',
  },
} as const satisfies Record<string, Coefficient>;

export type MeterCoefficientName = keyof typeof METER_COEFFICIENTS;
