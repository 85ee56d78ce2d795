/** How large the run is drawn: lengths to one scale that fills the frame, bores and sag to a larger one. */
import type { Piece, Solution } from '#physics';
import { bore_mm, widthOf } from './legs.ts';
import { clamp } from './numbers.ts';
import type { Sizes } from './sizes.ts';

export interface Scale {
  readonly pixelsPerMetre: number;
  readonly enlargement: number;
}

export function fit(run: readonly Piece[], solution: Solution, size: Sizes): Scale {
  const bore_m = Math.max(...run.map((_, index) => bore_mm(run, index))) / 1000;
  const sag_m = Math.max(0, ...solution.pieces.map((piece) => piece.shape.sag_m ?? 0));
  // The deepest belly, wall and all, must stay above the ceiling board.
  const drop = size.ceiling - size.axis - 4;
  const scaleAt = (pixelsPerMetre: number): Scale => ({
    pixelsPerMetre,
    enlargement: Math.min(
      size.enlargementMost,
      size.bore / (bore_m * pixelsPerMetre),
      drop / (pixelsPerMetre * (sag_m + bore_m * 0.66)),
    ),
  });
  const available = size.wallRight - size.grilleLeft;
  let low = 4;
  let high = clamp(size.bore / (bore_m * size.enlargementLeast), 20, 400);
  if (widthOf(run, scaleAt(high), size) <= available) return scaleAt(high);
  for (let step = 0; step < 26; step += 1) {
    const middle = (low + high) / 2;
    if (widthOf(run, scaleAt(middle), size) <= available) low = middle;
    else high = middle;
  }
  return scaleAt(low);
}
