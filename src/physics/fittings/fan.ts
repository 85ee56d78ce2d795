/**
 * What is wrong at the fan's inlet, as losses on the inlet bore. The system effect is charged to the
 * system so that it can be seen there; taking it off the fan curve instead gives the same crossing.
 */
import type { Fan } from '../types.ts';
import { coefficientTerm, type Context, type Part, type Term } from '../network.ts';
import { crimpSystemEffect, flattenedArea, thickNeck } from '../constriction.ts';

export function fanPart(fan: Fan, context: Context, diameter: number): Part {
  const flattened = fan.condition?.inletFlattening ?? 0;
  const terms: Term[] = [];
  const open = flattenedArea(flattened);
  if (flattened > 0) {
    const { crimpNeck, systemEffect } = context.coefficients;
    const neck = Math.max(0, thickNeck(open) - thickNeck(1));
    terms.push(coefficientTerm('crimp', crimpNeck * neck, diameter, context.air.density));
    terms.push(
      coefficientTerm(
        'fan system effect',
        systemEffect * crimpSystemEffect(open),
        diameter,
        context.air.density,
      ),
    );
    context.assume('crimp-neck', fan.id);
    context.assume('system-effect', fan.id);
  }
  const shape = flattened > 0 ? { crimpOpenArea: open, crimpHeightRatio: 1 - flattened } : {};
  return { id: fan.id, kind: 'fan', diameter, terms, shape };
}
