/** The joint of a piece at its end nearer the fan: what leaks there, and how it shows. */
import { leakageOf, type Leakage } from '../leakage.ts';
import type { Context } from '../network.ts';
import type { Duct, Elbow, JointCondition, PieceShape } from '../types.ts';

interface Joint {
  readonly leakage?: Leakage;
  readonly shape: PieceShape;
}

export function jointOf(piece: Duct | Elbow, context: Context): Joint {
  const joint: JointCondition = piece.condition?.joint ?? {};
  if (joint.off) {
    context.assume('duct-off', piece.id);
    return { shape: { jointOff: true } };
  }
  const leakage = leakageOf(piece, joint, context.air.density, context.coefficients);
  if (!leakage) return { shape: {} };
  context.assume('leak-approach', piece.id);
  if (joint.weep_mm) context.assume('weeping-joint', piece.id);
  const gap = Math.max(joint.gap_mm ?? 0, joint.weep_mm ?? 0);
  return { leakage, shape: gap > 0 ? { jointGap_mm: gap } : {} };
}
