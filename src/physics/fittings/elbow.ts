/**
 * Made elbows. Tables are ASHRAE round fittings in SI as reprinted (CD3-1, -9, -10, -12), on the duct's
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
import { jointOf } from './joint.ts';

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
/** CD3-10 seven-gore, r/D 2.5: bore mm, K. */
export const SEVEN_GORE: Table = [
  [75, 0.16],
  [150, 0.12],
  [230, 0.1],
  [300, 0.08],
];
/** Five-piece 90 degree elbow of one size: r/D, K (SMACNA table 14-10B, from memory); only its shape is used. */
const FIVE_PIECE_BY_RADIUS: Table = [
  [0.75, 0.46],
  [1, 0.33],
  [1.5, 0.24],
  [2, 0.19],
  [2.5, 0.175],
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
  radiusRatio?: number,
  gores: 3 | 5 | 7 = 3,
): number {
  const share = angle_deg / 90;
  if (form === 'mitred') return mitreLoss(angle_deg);
  if (form === 'pressed') return share * lookUp(PRESSED, bore_mm);
  if (form === 'gored' && gores > 3) return share * manyGores(bore_mm, gores, radiusRatio);
  // Three gores are no better than five of the same bore, which small bores show.
  const gored = (radius: number) => Math.max(lookUp(THREE_GORE, radius), lookUp(FIVE_GORE, bore_mm));
  return share * gored(form === 'adjustable' ? ADJUSTABLE_RADIUS : (radiusRatio ?? 1.5));
}

/** Five and seven gores, each table at its one r/D (1.5 and 2.5), carried to others as a five-piece elbow goes (model assumption). */
function manyGores(bore_mm: number, gores: 5 | 7 | 3, radiusRatio?: number): number {
  const [table, measured] = gores === 7 ? [SEVEN_GORE, 2.5] : [FIVE_GORE, 1.5];
  const by = (radius: number) => lookUp(FIVE_PIECE_BY_RADIUS, radius);
  return (lookUp(table, bore_mm) * by(radiusRatio ?? measured)) / by(measured);
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
    const coefficient = elbowLoss(
      elbow.form,
      elbow.diameter_mm,
      elbow.angle_deg,
      elbow.radiusRatio,
      elbow.gores,
    );
    if (elbow.form === 'gored' && (elbow.gores ?? 3) > 3) context.assume('gore-radius', elbow.id);
    term = coefficientTerm('bend', coefficients.bend * coefficient, diameter, air.density);
  }
  const joint = jointOf(elbow, context);
  return {
    id: elbow.id,
    kind: 'elbow',
    diameter,
    terms: [term, ...closeToFan(elbow, term, context, diameter)],
    shape: joint.shape,
    ...(joint.leakage ? { leakage: joint.leakage } : {}),
  };
}

/** Before the fan a close elbow spoils its inflow; behind it the elbow itself loses more. */
function closeToFan(elbow: Elbow, own: Term, context: Context, diameter: number): Term[] {
  const close = elbow.condition?.closeToFan ?? 0;
  if (close === 0) return [];
  const { air, coefficients, rig } = context;
  context.assume('fan-bend', elbow.id);
  const index = rig.run.findIndex((piece) => piece.id === elbow.id);
  const fan = rig.run.findIndex((piece) => piece.kind === 'fan');
  if (index < fan) return [coefficientTerm('fan bend', close * coefficients.fanBend, diameter, air.density)];
  return [{ cause: 'fan bend', loss: (flow) => close * coefficients.outletBend * own.loss(flow) }];
}
