/**
 * Leaks: Q = C |s|^n, out where the static pressure s in the duct stands above the space around it, in
 * where it lies below. Classes and the exponent 0.65 are those of EN 12237 as quoted in open pages; a gap
 * is a sharp-edged hole, Q = Cd A sqrt(2 s/rho).
 */
import type { Coefficients } from './central.ts';
import type { Duct, JointCondition, LeakClass } from './types.ts';

export interface LeakPath {
  /** m3/s at 1 Pa. */
  readonly coefficient: number;
  readonly exponent: number;
}

export interface Leakage {
  /** At the joint nearer the fan. */
  readonly joint: readonly LeakPath[];
  /** Each of `nodes` equal shares of the wall; none when it is tight. */
  readonly wall: readonly LeakPath[];
  readonly nodes: number;
}

/** Exponent of seams and cracks, shared by every class. */
export const SEAM_EXPONENT = 0.65;

/** L/s per m2 of surface at 1 Pa, exponent 0.65: the most a class allows (published, EN 12237 classes A to D). */
export const LEAK_CLASSES: Readonly<Record<LeakClass, number>> = { A: 0.027, B: 0.009, C: 0.003, D: 0.001 };

/** Least number of places at which leakage of a wall is charged, and one a metre in long ducts up to the most. */
const FEWEST_NODES = 4;
const MOST_NODES = 16;

/** Pressure at which a weeping seam passes what a hole of the same gap would, Pa. */
const WEEP_MATCHES_PA = 50;

/**
 * Below this pressure the power law is let run straight through nothing, as slow leakage does: a root has
 * no slope there, and the solver would have none to follow. Under 1e-6 of a leak at 10 Pa.
 */
const STRAIGHT_BELOW_PA = 0.01;

/** m3/s out of the duct through one path at a static pressure in Pa; below 0 in. */
export function leakFlow(path: LeakPath, pressure: number): number {
  const size = Math.sqrt(pressure * pressure + STRAIGHT_BELOW_PA * STRAIGHT_BELOW_PA);
  return path.coefficient * pressure * size ** (path.exponent - 1);
}

/** A hole of `area` m2: m3/s at 1 Pa, exponent 0.5. */
export function hole(area: number, discharge: number, density: number): LeakPath {
  return { coefficient: discharge * area * Math.sqrt(2 / density), exponent: 0.5 };
}

function jointPaths(
  joint: JointCondition | undefined,
  bore: number,
  density: number,
  discharge: number,
): LeakPath[] {
  const round = (gap_mm: number) => hole((Math.PI * bore * gap_mm) / 1000, discharge, density);
  const paths: LeakPath[] = [];
  if (joint?.gap_mm) paths.push(round(joint.gap_mm));
  if (joint?.weep_mm) {
    const { coefficient } = round(joint.weep_mm);
    paths.push({
      coefficient: coefficient * WEEP_MATCHES_PA ** (0.5 - SEAM_EXPONENT),
      exponent: SEAM_EXPONENT,
    });
  }
  return paths;
}

type LeakyPiece = Pick<Duct, 'diameter_mm'> &
  Partial<Pick<Duct, 'path_m' | 'leakClass' | 'leakCoefficient_L_s_m2' | 'leakExponent' | 'jointLeak'>>;

/** What a piece leaks, or undefined. `density` in kg/m3; bore in m. */
export function leakageOf(
  piece: LeakyPiece,
  joint: JointCondition | undefined,
  density: number,
  coefficients: Coefficients,
): Leakage | undefined {
  const bore = piece.diameter_mm / 1000;
  const paths = jointPaths(joint, bore, density, coefficients.gapDischarge);
  if (piece.jointLeak && piece.jointLeak.coefficient_L_s > 0) {
    const { coefficient_L_s, exponent = 0.5 } = piece.jointLeak;
    paths.push({ coefficient: coefficient_L_s / 1000, exponent });
  }
  const perArea =
    piece.leakCoefficient_L_s_m2 ?? (piece.leakClass === undefined ? 0 : LEAK_CLASSES[piece.leakClass]);
  const length = piece.path_m ?? 0;
  const surface = Math.PI * bore * length;
  const nodes = Math.min(MOST_NODES, Math.max(FEWEST_NODES, Math.ceil(length)));
  const wall = (perArea / 1000) * surface * coefficients.wallLeakage;
  if (paths.length === 0 && !(wall > 0)) return undefined;
  return {
    joint: paths,
    nodes,
    wall: wall > 0 ? [{ coefficient: wall / nodes, exponent: piece.leakExponent ?? SEAM_EXPONENT }] : [],
  };
}
