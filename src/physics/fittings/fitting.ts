/** A loss stated outright. */
import type { Fitting } from '../types.ts';
import { coefficientTerm, type Context, type Part } from '../network.ts';

export function fittingPart(fitting: Fitting, context: Context): Part {
  const diameter = fitting.diameter_mm / 1000;
  const term = coefficientTerm('fitting', fitting.lossCoefficient, diameter, context.air.density);
  return { id: fitting.id, kind: 'fitting', diameter, terms: [term], shape: {} };
}
