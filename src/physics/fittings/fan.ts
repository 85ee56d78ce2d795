/**
 * What is wrong at the fan's inlet, as losses on the inlet bore. The system effect is charged to the
 * system so that it can be seen there; taking it off the fan curve instead gives the same crossing.
 */
import type { Fan, FanCondition, PieceShape } from '../types.ts';
import {
  coefficientTerm,
  reynolds,
  velocityPressure,
  type Context,
  type Part,
  type Term,
} from '../network.ts';
import { bendOf } from '../bends.ts';
import { crimpSystemEffect, flattenedArea, thickNeck } from '../constriction.ts';

/** Bends of site-bent flexible at the fan: centreline radius over bore, and wall, mm. */
const TIGHT_RADIUS = 1;
const FLEXIBLE_ROUGHNESS_MM = 0.9;
/** Bores of straight duct over which a bend's effect on the fan dies out (model assumption after ASHRAE ED7-2). */
const FADES_OVER_BORES = 5;

/** System effect of a tight bend, of what it is on the flange: 1 - x/(5 D), never below 0. Lengths in m. */
export function bendEffectLeft(straight: number, diameter: number): number {
  return Math.max(0, 1 - straight / (FADES_OVER_BORES * diameter));
}

export function fanPart(fan: Fan, context: Context, diameter: number): Part {
  const condition = fan.condition ?? {};
  const terms = [
    ...crimped(fan.id, condition.inletFlattening ?? 0, context, diameter),
    ...bent(fan.id, condition, context, diameter),
  ];
  const { strength = 1 } = condition;
  if (strength < 1) context.assume('weak-fan', fan.id);
  return { id: fan.id, kind: 'fan', diameter, terms, shape: shapeOf(condition) };
}

function shapeOf({ inletFlattening = 0, inletBend, doubledBack_deg, strength }: FanCondition): PieceShape {
  return {
    ...(inletFlattening > 0
      ? { crimpOpenArea: flattenedArea(inletFlattening), crimpHeightRatio: 1 - inletFlattening }
      : {}),
    ...(inletBend ? { inletBend_deg: inletBend.angle_deg } : {}),
    ...(doubledBack_deg === undefined ? {} : { doubledBack_deg }),
    ...(strength === undefined ? {} : { fanStrength: strength }),
  };
}

function crimped(id: string, flattened: number, context: Context, diameter: number): Term[] {
  if (flattened === 0) return [];
  const open = flattenedArea(flattened);
  const { crimpNeck, systemEffect } = context.coefficients;
  const neck = Math.max(0, thickNeck(open) - thickNeck(1));
  context.assume('crimp-neck', id);
  context.assume('system-effect', id);
  return [
    coefficientTerm('crimp', crimpNeck * neck, diameter, context.air.density),
    coefficientTerm(
      'fan system effect',
      systemEffect * crimpSystemEffect(open),
      diameter,
      context.air.density,
    ),
  ];
}

/** A tight bend before the fan with its system effect, and the two bends of a duct that doubles back. */
function bent(
  id: string,
  { inletBend, doubledBack_deg }: FanCondition,
  context: Context,
  diameter: number,
): Term[] {
  const { air, coefficients } = context;
  const bend = (angle: number) => {
    const coefficient = bendOf(angle, TIGHT_RADIUS, context.friction);
    return (flow: number) =>
      coefficients.bend *
      coefficient(reynolds(flow, diameter, air.viscosity), FLEXIBLE_ROUGHNESS_MM / (diameter * 1000)) *
      velocityPressure(flow, diameter, air.density);
  };
  const terms: Term[] = [];
  if (inletBend) {
    const turn = bend(inletBend.angle_deg);
    const share = (inletBend.angle_deg / 90) * bendEffectLeft(inletBend.straight_m, diameter);
    const effect = coefficientTerm('fan bend', share * coefficients.fanBend, diameter, air.density);
    terms.push({ cause: 'fan bend', loss: (flow) => turn(flow) + effect.loss(flow) });
    context.assume('fan-bend', id);
  }
  if (doubledBack_deg !== undefined) {
    const turn = bend(doubledBack_deg);
    terms.push({ cause: 'doubling back', loss: (flow) => 2 * turn(flow) });
    context.assume('doubling-back', id);
  }
  return terms;
}
