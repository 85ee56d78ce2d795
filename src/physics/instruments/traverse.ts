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

export interface TraversePoint {
  /** y/D from one wall, 0 to 1. */
  readonly depth: number;
  readonly velocityPressure_Pa: number;
  readonly velocity_m_s: number;
}

export interface Traverse {
  readonly method: TraverseMethod;
  readonly points: readonly TraversePoint[];
  /** Mean of the velocities: right. */
  readonly mean_m_s: number;
  /**
   * Velocity of the mean velocity pressure: the common mistake. Never below `mean_m_s`, because a mean of
   * squares is never below the square of the mean; about 1 % above on a smooth profile, far more on a
   * ragged one.
   */
  readonly ofMeanPressure_m_s: number;
}

/** Speed in m/s that goes with a velocity pressure in Pa at a density in kg/m3; below 0 it runs backward. */
export function speedOf(pressure_Pa: number, density_kg_m3: number): number {
  return Math.sign(pressure_Pa) * Math.sqrt((2 * Math.abs(pressure_Pa)) / density_kg_m3);
}

/**
 * A traverse worked out from the velocity pressures (Pa) read at its depths, in their order; kg/m3 of the
 * air. As many pressures as points.
 */
export function traverseOf(
  method: TraverseMethod,
  points: 6 | 8,
  pressures_Pa: readonly number[],
  density_kg_m3: number,
): Traverse {
  const list = TRAVERSE_DEPTHS[method][points].map((depth, i) => ({
    depth,
    velocityPressure_Pa: pressures_Pa[i] ?? 0,
    velocity_m_s: speedOf(pressures_Pa[i] ?? 0, density_kg_m3),
  }));
  const mean = (of: (point: TraversePoint) => number) =>
    list.reduce((sum, point) => sum + of(point), 0) / list.length;
  return {
    method,
    points: list,
    mean_m_s: mean(({ velocity_m_s }) => velocity_m_s),
    ofMeanPressure_m_s: speedOf(
      mean(({ velocityPressure_Pa }) => velocityPressure_Pa),
      density_kg_m3,
    ),
  };
}

/** Mean of the velocities (never of the velocity pressures) at the depths, of a profile of y/D, 0 to 1. */
export function traverseMean(
  method: TraverseMethod,
  points: 6 | 8,
  profile: (depth: number) => number,
): number {
  const depths = TRAVERSE_DEPTHS[method][points];
  return depths.reduce((sum: number, depth) => sum + profile(depth), 0) / depths.length;
}

/** Turbulent profile by the 1/n power law, over its peak, at `depth`, a share of the bore from one wall, 0 to 1: (distance to the nearer wall / radius)^(1/n). */
export function powerProfile(depth: number, n = 7): number {
  return (2 * Math.min(depth, 1 - depth)) ** (1 / n);
}

/** Its true mean over its peak, a ratio: 2 n^2 / ((n + 1)(2 n + 1)) (textbook integral over the round section). */
export function powerProfileMean(n = 7): number {
  return (2 * n * n) / ((n + 1) * (2 * n + 1));
}

/** Mean of its square over its peak's: n^2 / ((n + 1)(n + 2)), the same integral of the squared profile. */
export function powerProfileMeanSquare(n = 7): number {
  return (n * n) / ((n + 1) * (n + 2));
}
