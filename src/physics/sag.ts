/**
 * Sagging duct as parabolas between supports: exact arc length, turn and least radius. The losses that
 * follow from the turning are a model assumption; no direct measurement was found (factor of two).
 */
export interface SagShape {
  /** Arc length over span. */
  readonly lengthRatio: number;
  /** Turn within one span, degrees; the same over each support. */
  readonly turn_deg: number;
  /** Least radius, at mid-span, over span. */
  readonly radiusOverSpan: number;
}

/** `ratio` is sag depth over span. */
export function sagShape(ratio: number): SagShape {
  if (ratio <= 0) return { lengthRatio: 1, turn_deg: 0, radiusOverSpan: Infinity };
  const x = 4 * ratio;
  return {
    lengthRatio: 0.5 * Math.sqrt(1 + x * x) + Math.asinh(x) / (2 * x),
    turn_deg: (2 * Math.atan(x) * 180) / Math.PI,
    radiusOverSpan: 1 / (8 * ratio),
  };
}

/**
 * Bend radius over bore where duct passes a support: the turn is spread over a length of
 * 0.5 D + strap width, at most 2 D (model assumption: a bare joist edge counts 0.5 D).
 */
export function supportRadiusRatio(turn_deg: number, width_mm: number, diameter_mm: number): number {
  const spread = Math.min(2, 0.5 + width_mm / diameter_mm);
  return spread / ((turn_deg * Math.PI) / 180);
}
