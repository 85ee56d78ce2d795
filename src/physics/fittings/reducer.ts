/** A change of bore, as a step or a cone, either way round. */
import type { Reducer } from '../types.ts';
import { conicalContraction, conicalDiffuser, suddenContraction, suddenExpansion } from '../bore-changes.ts';
import { reynolds, velocityPressure, type Context, type Part } from '../network.ts';

export const DEFAULT_CONE_DEG = 30;
/** Wall of a made cone, mm: galvanised, long seam. */
const CONE_ROUGHNESS_MM = 0.09;

export function reducerPart(reducer: Reducer, context: Context): Part {
  const from = reducer.diameter_mm / 1000;
  const to = reducer.toDiameter_mm / 1000;
  const small = Math.min(from, to);
  const share = small / Math.max(from, to);
  const { form = 'conical', angle_deg = DEFAULT_CONE_DEG, lossCoefficient } = reducer;
  const narrowing = (back: boolean) => (back ? to > from : to < from);
  const coefficient = (flow: number, back: boolean): number => {
    if (lossCoefficient !== undefined) return lossCoefficient;
    const scale = context.coefficients.reducer;
    if (share === 1) return 0;
    if (form === 'sudden')
      return scale * (narrowing(back) ? suddenContraction(share ** 2) : suddenExpansion(share ** 2));
    const factor = context.friction(
      reynolds(flow, small, context.air.viscosity),
      CONE_ROUGHNESS_MM / (small * 1000),
    );
    const cone = narrowing(back) ? conicalContraction : conicalDiffuser;
    return scale * cone(angle_deg, share, factor);
  };
  const loss = (back: boolean) => (flow: number) =>
    coefficient(flow, back) * velocityPressure(flow, small, context.air.density);
  return {
    id: reducer.id,
    kind: 'reducer',
    diameter: to,
    terms: [{ cause: 'reducer', loss: loss(false), backward: loss(true) }],
    shape: {},
  };
}
