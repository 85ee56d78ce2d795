/** Where to hold a pitot tube across a round duct, and what it makes of a velocity profile. */

/** Depths y/D from one wall (ISO 5802 tables 2 and 3, as transcribed), per number of points on a diameter. */
export const TRAVERSE_DEPTHS = {
  'log-linear': {
    6: [0.032, 0.135, 0.321, 0.679, 0.865, 0.968],
    8: [0.021, 0.117, 0.184, 0.345, 0.655, 0.816, 0.883, 0.979],
  },
  'log-Tchebycheff': {
    6: [0.032, 0.137, 0.312, 0.688, 0.863, 0.968],
    8: [0.024, 0.1, 0.194, 0.334, 0.666, 0.806, 0.9, 0.976],
  },
} as const;

export type TraverseMethod = keyof typeof TRAVERSE_DEPTHS;

/** Mean of the velocities (never of the velocity pressures) at the depths, of a profile of y/D, 0 to 1. */
export function traverseMean(
  method: TraverseMethod,
  points: 6 | 8,
  profile: (depth: number) => number,
): number {
  const depths = TRAVERSE_DEPTHS[method][points];
  return depths.reduce((sum: number, depth) => sum + profile(depth), 0) / depths.length;
}

/** Turbulent profile by the 1/n power law, over its peak: (distance to the nearer wall / radius)^(1/n). */
export function powerProfile(depth: number, n = 7): number {
  return (2 * Math.min(depth, 1 - depth)) ** (1 / n);
}

/** Its true mean over its peak: 2 n^2 / ((n + 1)(2 n + 1)). */
export function powerProfileMean(n = 7): number {
  return (2 * n * n) / ((n + 1) * (2 * n + 1));
}
