/**
 * Flexible duct that is not pulled out. Correction factor on friction per installed metre (ASHRAE
 * Fundamentals 2021 ch. 21 eqs 22-23, as transcribed; from Abushakra, Walker and Sherman 2004 and Culp
 * 2011). Measured at 150 to 250 mm and up to 30 % (LBNL) or 45 % (Texas A&M): smaller bores are an
 * extrapolation. Stated uncertainty of the part above 1: -30 % to +100 %.
 */
import type { Behaviour } from './types.ts';

export const MEASURED_BORE_MM = 150;
export const MEASURED_COMPRESSION = 0.3;

/** Factor on friction; `compression` 0 to 1 is the share of the full length that is missing. */
export function pressureDropCorrection(compression: number, diameter_mm: number): number {
  return 1 + 0.58 * 100 * compression * Math.exp(-0.00496 * diameter_mm);
}

/**
 * The same by behaviour of the wall. Semi-rigid duct closes its pitch a little: at most 1.3 times
 * (model assumption, nothing measured was found); rigid duct cannot be compressed.
 */
export function compressionFactor(
  behaviour: Behaviour,
  compression: number,
  diameter_mm: number,
  scale: number,
): number {
  if (behaviour === 'flexible') return 1 + (pressureDropCorrection(compression, diameter_mm) - 1) * scale;
  if (behaviour === 'semi-rigid') return 1 + Math.min(0.3, compression);
  return 1;
}

/** Share of a piece's full length that its path leaves unused, 0 to 1. Lengths in m. */
export function compressionOf(used_m: number, full_m: number): number {
  return full_m > 0 ? Math.max(0, 1 - used_m / full_m) : 0;
}
