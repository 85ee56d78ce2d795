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
  // Blown up further than this, a belly's inside would fold over itself: at its roundest a hung span has a
  // radius of span^2 / 16 sag, against 0.66 of the bore from axis to outer wall.
  const tightest = Math.min(
    ...solution.pieces.map(({ shape }) =>
      shape.sag_m ? (shape.span_m ?? 1) / Math.sqrt(10.6 * shape.sag_m * bore_m) : Infinity,
    ),
  );
  // The deepest belly, wall and all, must stay above the ceiling board.
  const drop = size.ceiling - size.axis - 4;
  const scaleAt = (pixelsPerMetre: number): Scale => ({
    pixelsPerMetre,
    enlargement: Math.min(
      size.enlargementMost,
      tightest,
      size.bore / (bore_m * pixelsPerMetre),
      drop / (pixelsPerMetre * (sag_m + bore_m * 0.66)),
    ),
  });
  const available = size.wallRight - size.grilleLeft;
  // Width grows all but straight with scale, so false position (Illinois) closes in a few steps.
  let low = 4;
  let high = clamp(size.bore / (bore_m * size.enlargementLeast), 20, 400);
  let over = widthOf(run, scaleAt(high), size) - available;
  if (over <= 0) return scaleAt(high);
  let under = widthOf(run, scaleAt(low), size) - available;
  if (under >= 0) return scaleAt(low);
  let last = 0;
  for (let step = 0; step < 20; step += 1) {
    const middle = (low * over - high * under) / (over - under);
    const miss = widthOf(run, scaleAt(middle), size) - available;
    if (Math.abs(miss) < 0.05) return scaleAt(middle);
    if (miss > 0) {
      high = middle;
      over = miss;
      if (last > 0) under /= 2;
    } else {
      low = middle;
      under = miss;
      if (last < 0) over /= 2;
    }
    last = miss;
  }
  return scaleAt(low);
}
