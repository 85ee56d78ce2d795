/** A length of duct with its bends, and what hanging, tying, bunching or swapping did to it. */
import type { Duct, Material } from '../types.ts';
import {
  coefficientTerm,
  reynolds,
  velocityPressure,
  type Context,
  type Part,
  type Term,
} from '../network.ts';
import { bendOf } from '../bends.ts';
import { compressionFactor, compressionOf, MEASURED_BORE_MM, MEASURED_COMPRESSION } from '../compression.ts';
import { roundedNeck } from '../constriction.ts';
import { damageOf } from './damage.ts';
import { jointOf } from './joint.ts';
import { undersizedPart } from './undersized.ts';
import { sagShape, supportRadiusRatio } from '../sag.ts';

/** Spacing taken when a rig states no supports: the figure of ADC section 4.6 as a US DOE guide quotes it. */
export const DEFAULT_SPACING_M = 1.2;
const DEFAULT_WIDTH_MM = 75;
/** Draped duct lies in quarter turns of this radius over bore. */
const LOOP_RADIUS = 1;

/** Lengths of a duct in m: what its path uses as it hangs, and all there is of it. */
export function ductLengths(duct: Duct) {
  const condition = duct.condition ?? {};
  const spacing = condition.span_m ?? duct.supports?.spacing_m ?? DEFAULT_SPACING_M;
  const spans = Math.max(1, Math.ceil(duct.path_m / spacing - 1e-9));
  const sag = sagShape(condition.sagRatio ?? 0);
  const hung = duct.path_m * sag.lengthRatio;
  const draped = condition.draped_m ?? 0;
  const full = Math.max(duct.fullLength_m ?? duct.path_m, hung) + (condition.bunched_m ?? 0) + draped;
  return { spans, span: duct.path_m / spans, sag, hung, draped, used: hung + draped, full };
}

export function ductPart(duct: Duct, context: Context): Part {
  const { air, coefficients, stock } = context;
  const condition = duct.condition ?? {};
  if (condition.boreRatio !== undefined && condition.boreRatio < 1)
    return undersizedPart(duct, condition.boreRatio, context, ductPart);
  const diameter = duct.diameter_mm / 1000;
  const material = stock.materials[duct.material]!;
  const lengths = ductLengths(duct);
  const compression = compressionOf(lengths.used, lengths.full);
  const wall = wallOf(duct, material);
  const terms: Term[] = [];
  const share = condition.swap?.share ?? 0;

  const friction = (roughness: number) => (flow: number) =>
    (context.friction(reynolds(flow, diameter, air.viscosity), roughness / duct.diameter_mm) / diameter) *
    velocityPressure(flow, diameter, air.density);
  const perMetre = friction(wall);
  const factor = compressionFactor(
    material.behaviour,
    compression,
    duct.diameter_mm,
    coefficients.compression,
  );
  terms.push({ cause: 'friction', loss: (flow) => perMetre(flow) * duct.path_m });
  if (factor > 1) {
    terms.push({ cause: 'compression', loss: (flow) => perMetre(flow) * lengths.used * (factor - 1) });
    noteCompression(material, compression, duct, context);
  }

  const bend = (angle: number, radius: number, roughness: number) => {
    const coefficient = bendOf(angle, radius, context.friction);
    return (flow: number) =>
      coefficient(reynolds(flow, diameter, air.viscosity), roughness / duct.diameter_mm) *
      velocityPressure(flow, diameter, air.density);
  };
  for (const turn of duct.bends ?? []) {
    const loss = bend(turn.angle_deg, turn.radiusRatio, wall);
    terms.push({ cause: 'bend', loss: (flow) => coefficients.bend * loss(flow) });
    context.assume('bend-blend', duct.id);
  }

  if (lengths.sag.turn_deg > 0) {
    const width = duct.supports?.width_mm ?? DEFAULT_WIDTH_MM;
    const middle = bend(lengths.sag.turn_deg, (lengths.sag.radiusOverSpan * lengths.span) / diameter, wall);
    const support = bend(
      lengths.sag.turn_deg,
      supportRadiusRatio(lengths.sag.turn_deg, width, duct.diameter_mm),
      wall,
    );
    const extra = lengths.hung - duct.path_m;
    terms.push({
      cause: 'sag',
      loss: (flow) =>
        coefficients.sagTurning * (lengths.spans * middle(flow) + (lengths.spans - 1) * support(flow)) +
        perMetre(flow) * extra,
    });
    context.assume('sag-turning', duct.id);
  }

  if (lengths.draped > 0) {
    const turn = bend(90, LOOP_RADIUS, wall);
    const turns = coefficients.loopTurns * lengths.draped;
    terms.push({ cause: 'loops', loss: (flow) => turns * turn(flow) + perMetre(flow) * lengths.draped });
    context.assume('draped-loops', duct.id);
  }

  const ties = condition.tieRatio === undefined ? 0 : Math.max(1, lengths.spans - 1);
  if (condition.tieRatio !== undefined && condition.tieRatio < 1) {
    const neck = roundedNeck(condition.tieRatio ** 2, coefficients.tieEdge);
    terms.push(coefficientTerm('ties', ties * neck, diameter, air.density));
    context.assume('tie-neck', duct.id);
  }

  if (condition.swap && share > 0) terms.push(swapTerm(duct, context, share, perMetre, bend, friction));

  const damage = damageOf(duct, context, perMetre);
  terms.push(...damage.terms);
  const joint = jointOf(duct, context);

  return {
    id: duct.id,
    kind: 'duct',
    diameter,
    terms,
    ...(joint.leakage ? { leakage: joint.leakage } : {}),
    shape: {
      spans: lengths.spans,
      span_m: lengths.span,
      sag_m: (condition.sagRatio ?? 0) * lengths.span,
      usedLength_m: lengths.used,
      fullLength_m: lengths.full,
      compression,
      ...(lengths.draped > 0 ? { drapedLoops: Math.max(1, Math.round(lengths.draped / 2)) } : {}),
      ...(ties > 0 ? { ties, tieRatio: condition.tieRatio! } : {}),
      ...(share > 0 ? { swappedShare: share } : {}),
      ...damage.shape,
      ...joint.shape,
    },
  };
}

/** What swapping costs over the piece that should be there: friction and bends of the swapped share, as relaxed, less the original's. */
function swapTerm(
  duct: Duct,
  context: Context,
  share: number,
  original: (flow: number) => number,
  bend: (angle: number, radius: number, roughness: number) => (flow: number) => number,
  friction: (roughness: number) => (flow: number) => number,
): Term {
  const { coefficients, stock } = context;
  const swap = duct.condition!.swap!;
  const material = stock.materials[swap.material]!;
  const factor = compressionFactor(
    material.behaviour,
    coefficients.relaxation,
    duct.diameter_mm,
    coefficients.compression,
  );
  const replaced = friction(material.roughness_mm);
  const turns = (duct.bends ?? []).map((turn) => ({
    now: bend(turn.angle_deg, turn.radiusRatio, material.roughness_mm),
    was: bend(turn.angle_deg, turn.radiusRatio, wallOf(duct, stock.materials[duct.material]!)),
  }));
  context.assume('swap-relaxed', duct.id);
  noteCompression(material, coefficients.relaxation, duct, context);
  return {
    cause: 'swap',
    loss: (flow) => {
      let difference = (replaced(flow) * factor - original(flow)) * duct.path_m;
      for (const turn of turns) difference += coefficients.bend * (turn.now(flow) - turn.was(flow));
      return share * difference;
    },
  };
}

function wallOf(duct: Duct, material: Material): number {
  return duct.roughness_mm ?? material.roughness_mm;
}

function noteCompression(material: Material, compression: number, duct: Duct, context: Context): void {
  if (material.behaviour === 'semi-rigid') context.assume('semi-rigid-compression', duct.id);
  if (material.behaviour !== 'flexible') return;
  if (duct.diameter_mm < MEASURED_BORE_MM) context.assume('compression-small-bore', duct.id);
  if (compression > MEASURED_COMPRESSION) context.warn('compression-beyond-data', duct.id);
}
