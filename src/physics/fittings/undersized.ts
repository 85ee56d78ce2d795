/**
 * A duct put in a size too small, with a step down before it and a step up behind: everything in it
 * is reckoned at the bore that is there, and what that costs over the bore meant stands as one loss.
 */
import type { Duct } from '../types.ts';
import { suddenContraction, suddenExpansion } from '../bore-changes.ts';
import { coefficientTerm, lossOf, type Context, type Part } from '../network.ts';

export function undersizedPart(
  duct: Duct,
  ratio: number,
  context: Context,
  build: (duct: Duct, context: Context) => Part,
): Part {
  const condition = { ...duct.condition, boreRatio: 1 };
  const meant = build({ ...duct, condition }, context);
  const small = duct.diameter_mm * ratio;
  const fitted = build({ ...duct, diameter_mm: small, condition }, context);
  const share = ratio ** 2;
  const steps = coefficientTerm(
    'undersized',
    context.coefficients.reducer * (suddenContraction(share) + suddenExpansion(share)),
    small / 1000,
    context.air.density,
  );
  context.assume('undersized', duct.id);
  return {
    ...meant,
    terms: [
      ...meant.terms,
      {
        cause: 'undersized',
        loss: (flow) => steps.loss(flow) + lossOf(fitted, flow) - lossOf(meant, flow),
      },
    ],
    shape: { ...meant.shape, boreRatio: ratio },
  };
}
