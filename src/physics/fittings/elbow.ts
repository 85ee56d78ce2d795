/**
 * Made elbows. Tables are ASHRAE round fittings in SI as reprinted (CD3-1, CD3-9, CD3-12), on the duct's
 * velocity pressure at 90 degrees; other angles in proportion, which the 45 degree tables bear out.
 */
import type { Elbow } from '../types.ts';
import {
  coefficientTerm,
  reynolds,
  velocityPressure,
  type Context,
  type Part,
  type Term,
} from '../network.ts';
import { bendOf, mitreLoss } from '../bends.ts';

type Table = readonly (readonly [number, number])[];

/** CD3-1 die-stamped, r/D 1.5: bore mm, K. */
export const PRESSED: Table = [
  [75, 0.3],
  [100, 0.21],
  [125, 0.16],
  [150, 0.14],
  [180, 0.12],
  [200, 0.11],
  [250, 0.11],
];
/** CD3-9 five-gore, r/D 1.5: bore mm, K. */
export const FIVE_GORE: Table = [
  [75, 0.51],
  [150, 0.28],
  [230, 0.21],
  [300, 0.18],
];
/** CD3-12 three-gore: r/D, K. */
export const THREE_GORE: Table = [
  [0.75, 0.54],
  [1, 0.42],
  [1.5, 0.34],
  [2, 0.33],
];
/** An adjustable elbow is taken as gored at this r/D (model assumption). */
const ADJUSTABLE_RADIUS = 0.85;
const FLEXIBLE_ROUGHNESS_MM = 0.9;

/** Straight lines between rows, ends held. */
export function lookUp(table: Table, x: number): number {
  const first = table[0]!;
  if (x <= first[0]) return first[1];
  for (let i = 1; i < table.length; i++) {
    const [x1, y1] = table[i]!;
    const [x0, y0] = table[i - 1]!;
    if (x <= x1) return y0 + ((y1 - y0) * (x - x0)) / (x1 - x0);
  }
  return table[table.length - 1]![1];
}

/** K of an elbow whose form fixes it; bore in mm, angle in degrees. */
export function elbowLoss(
  form: 'gored' | 'pressed' | 'mitred' | 'adjustable',
  bore_mm: number,
  angle_deg: number,
  radiusRatio = 1.5,
): number {
  const share = angle_deg / 90;
  if (form === 'mitred') return mitreLoss(angle_deg);
  if (form === 'pressed') return share * lookUp(PRESSED, bore_mm);
  // Three gores are no better than five of the same bore, which small bores show.
  const gored = (radius: number) => Math.max(lookUp(THREE_GORE, radius), lookUp(FIVE_GORE, bore_mm));
  return share * gored(form === 'adjustable' ? ADJUSTABLE_RADIUS : radiusRatio);
}

export function elbowPart(elbow: Elbow, context: Context): Part {
  const { air, coefficients } = context;
  const diameter = elbow.diameter_mm / 1000;
  let term: Term;
  if (elbow.lossCoefficient !== undefined) {
    term = coefficientTerm('bend', elbow.lossCoefficient, diameter, air.density);
  } else if (elbow.form === 'flexible') {
    const bend = bendOf(elbow.angle_deg, elbow.radiusRatio ?? 1, context.friction);
    term = {
      cause: 'bend',
      loss: (flow) =>
        coefficients.bend *
        bend(reynolds(flow, diameter, air.viscosity), FLEXIBLE_ROUGHNESS_MM / elbow.diameter_mm) *
        velocityPressure(flow, diameter, air.density),
    };
    context.assume('bend-blend', elbow.id);
  } else {
    const coefficient = elbowLoss(elbow.form, elbow.diameter_mm, elbow.angle_deg, elbow.radiusRatio);
    term = coefficientTerm('bend', coefficients.bend * coefficient, diameter, air.density);
  }
  return { id: elbow.id, kind: 'elbow', diameter, terms: [term], shape: {} };
}
