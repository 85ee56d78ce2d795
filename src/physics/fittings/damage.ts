/** What loads, boots and ladders did to a duct: one long crush, or many dents. Both are necks (model assumption). */
import type { Duct } from '../types.ts';
import { coefficientTerm, type Context, type Term } from '../network.ts';
import { flattenedArea, roundedNeck, thickNeck } from '../constriction.ts';

/** Most of the path that one load lies on, m. */
const CRUSHED_OVER_M = 1;
/** One dent to this much duct, m. */
const DENT_EVERY_M = 0.5;
/** Edge radius of a dent over the neck's diameter. */
const DENT_EDGE = 0.08;

interface Damage {
  readonly terms: readonly Term[];
  readonly shape: {
    crushedOpenArea?: number;
    crushedLength_m?: number;
    dents?: number;
    dentOpenArea?: number;
  };
}

/** `perMetre` is friction of the sound duct, Pa/m at a flow in m3/s. */
export function damageOf(duct: Duct, context: Context, perMetre: (flow: number) => number): Damage {
  const { crushed = 0, dented = 0 } = duct.condition ?? {};
  const { air, coefficients } = context;
  const diameter = duct.diameter_mm / 1000;
  const terms: Term[] = [];
  const shape: Damage['shape'] = {};
  if (crushed > 0) {
    const open = flattenedArea(crushed);
    const length = Math.min(duct.path_m, CRUSHED_OVER_M);
    const neck = coefficientTerm(
      'crushed',
      coefficients.crushedNeck * Math.max(0, thickNeck(open) - thickNeck(1)),
      diameter,
      air.density,
    );
    // Faster by the area lost, through a hydraulic diameter smaller by as much.
    const more = length * (1 / open ** 3 - 1);
    terms.push({ cause: 'crushed', loss: (flow) => neck.loss(flow) + more * perMetre(flow) });
    shape.crushedOpenArea = open;
    shape.crushedLength_m = length;
    context.assume('crushed-neck', duct.id);
  }
  if (dented > 0) {
    const open = flattenedArea(dented);
    const count = Math.max(1, Math.round(duct.path_m / DENT_EVERY_M));
    const each = coefficients.dent * roundedNeck(open, DENT_EDGE);
    terms.push(coefficientTerm('dents', count * each, diameter, air.density));
    shape.dents = count;
    shape.dentOpenArea = open;
    context.assume('dents', duct.id);
  }
  return { terms, shape };
}
