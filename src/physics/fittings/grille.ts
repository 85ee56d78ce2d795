/** A ceiling grille: the loss of its slotted face plus the entry to its spigot; clogging takes from the open face. */
import type { Grille } from '../types.ts';
import { coefficientTerm, type Context, type Part } from '../network.ts';
import { thinNeck } from '../constriction.ts';

/** Open share of the face when a rig states none. */
export const DEFAULT_FREE_AREA = 0.7;

export function grillePart(grille: Grille, context: Context): Part {
  const diameter = grille.diameter_mm / 1000;
  let coefficient = grille.lossCoefficient;
  if (coefficient === undefined) {
    // Face reckoned on the duct's own area; a larger face makes this an over-estimate.
    coefficient = thinNeck(grille.freeArea ?? DEFAULT_FREE_AREA) + context.coefficients.grilleEntry;
    context.assume('grille-face', grille.id);
  }
  const terms = [coefficientTerm('entry', coefficient, diameter, context.air.density)];
  const held = grille.condition?.held ?? 0;
  if (held > 0) terms.push(coefficientTerm('fitting', held, diameter, context.air.density));
  const blocked = grille.condition?.blocked ?? 0;
  if (blocked === 0) return { id: grille.id, kind: 'grille', diameter, terms, shape: {} };
  const clean = grille.freeArea ?? DEFAULT_FREE_AREA;
  const open = clean * (1 - blocked);
  terms.push(coefficientTerm('blocked', thinNeck(open) - thinNeck(clean), diameter, context.air.density));
  context.assume('blocked-opening', grille.id);
  return { id: grille.id, kind: 'grille', diameter, terms, shape: { freeArea: open } };
}
