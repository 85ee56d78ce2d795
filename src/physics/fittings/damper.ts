/**
 * A backdraught flap: it takes a pressure to lift, then the loss of the open blade; air that would come in
 * shuts it, and only the seat leaks. The step at no flow is rounded off over a couple of litres so that
 * a solver has a slope to follow (model assumption).
 */
import type { Damper } from '../types.ts';
import { boreArea, coefficientTerm, type Context, type Part, type Term } from '../network.ts';

/** m3/s over which the opening pressure comes in. */
const LIFTS_OVER = 0.002;
/** Loss of the shut flap on the bore's velocity pressure: about 0.2 L/s through 150 mm at 100 Pa (model assumption). */
export const SHUT_FLAP = 1e6;

/** Single-leaf butterfly: degrees from open, K (SMACNA and ASHRAE CD9-1 kind, from memory). */
export const STUCK_FLAP: readonly (readonly [number, number])[] = [
  [0, 0.2],
  [10, 0.52],
  [20, 1.5],
  [30, 4.5],
  [40, 11],
  [50, 29],
  [60, 108],
];

/** K of a leaf stuck 0 to 60 degrees from open; between rows the logarithm of K is taken straight. */
export function stuckFlapLoss(degrees: number): number {
  const last = STUCK_FLAP[STUCK_FLAP.length - 1]!;
  for (let i = 1; i < STUCK_FLAP.length; i++) {
    const [a1, k1] = STUCK_FLAP[i]!;
    const [a0, k0] = STUCK_FLAP[i - 1]!;
    if (degrees <= a1) return k0 * (k1 / k0) ** (Math.max(0, degrees - a0) / (a1 - a0));
  }
  return last[1];
}

export function damperPart(damper: Damper, context: Context): Part {
  const { air, coefficients } = context;
  const diameter = damper.diameter_mm / 1000;
  const lift = damper.openingPressure_Pa ?? coefficients.flapOpening;
  const open = coefficientTerm(
    'flap',
    damper.lossCoefficient ?? coefficients.flapOpen,
    diameter,
    air.density,
  );
  const seat = (SHUT_FLAP * air.density) / 2 / boreArea(diameter) ** 2;
  const stuck = damper.condition?.stuck_deg ?? 0;
  // A leaf stuck part of the way cannot fall shut: what comes back passes the same gap.
  const backward = stuck > 0 ? open.loss : (flow: number) => seat * flow * flow;
  const terms: Term[] = [
    { cause: 'flap', loss: (flow) => lift * Math.tanh(flow / LIFTS_OVER) + open.loss(flow), backward },
  ];
  if (damper.openingPressure_Pa === undefined || damper.lossCoefficient === undefined)
    context.assume('backdraught-flap', damper.id);
  if (stuck > 0) {
    const more = coefficients.stuckFlap * (stuckFlapLoss(stuck) - stuckFlapLoss(0));
    terms.push(coefficientTerm('stuck flap', more, diameter, air.density));
    context.assume('stuck-flap', damper.id);
  }
  return { id: damper.id, kind: 'damper', diameter, terms, shape: stuck > 0 ? { stuck_deg: stuck } : {} };
}
