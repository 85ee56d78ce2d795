/** How large the run is drawn: lengths to one scale that fills the frame, bores and sag to a larger one. */
import type { Piece, PieceShape, Solution } from '#physics';
import type { Belly } from '../types.ts';
import { walk } from './legs.ts';
import { clamp } from './numbers.ts';
import type { Plan } from './plan.ts';
import type { Sizes } from './sizes.ts';

export interface Scale {
  readonly pixelsPerMetre: number;
  readonly enlargement: number;
}

const NONE: ReadonlyMap<string, PieceShape> = new Map();

/** A riser may shrink the whole run to stand up in full, but to no less than this of what fills the frame. */
const SHRUNK_LEAST = 0.62;

/** What hangs in any of these states of a run, so that all of them can be drawn to one scale. */
export const belliesIn = (solutions: readonly Solution[]): Belly[] =>
  solutions.flatMap(({ pieces }) =>
    pieces.flatMap(({ id, shape: { sag_m, span_m } }) =>
      sag_m && span_m ? [{ piece: id, sag_m, span_m }] : [],
    ),
  );

/** `bellies`: what else the drawing must have room for, whatever hangs now. */
export function fit(
  run: readonly Piece[],
  plan: Plan,
  shapes: ReadonlyMap<string, PieceShape>,
  size: Sizes,
  bellies: readonly Belly[] = [],
): Scale {
  const bore_m = plan.widest_m;
  // Blown up further than this, a belly's inside would fold over itself: at its roundest a hung span has a
  // radius of span^2 / 16 sag, against 0.66 of the bore from axis to outer wall.
  let tightest = Infinity;
  // The deepest belly, wall and all, must stay above the ceiling board.
  let lowest_m = 0;
  run.forEach((piece, index) => {
    const now = shapes.get(piece.id);
    const others = bellies.filter((belly) => belly.piece === piece.id);
    for (const { sag_m = 0, span_m = 1 } of [now ?? {}, ...others]) {
      lowest_m = Math.max(lowest_m, plan.deepest_m[index]! + sag_m + plan.bore_m[index]! * 0.66);
      if (sag_m) tightest = Math.min(tightest, span_m / Math.sqrt(10.6 * sag_m * plan.bore_m[index]!));
    }
  });
  const drop = size.ceiling - size.axis - 4;
  const scaleAt = (pixelsPerMetre: number): Scale => ({
    pixelsPerMetre,
    enlargement: Math.min(
      size.enlargementMost,
      tightest,
      size.bore / (bore_m * pixelsPerMetre),
      drop / (pixelsPerMetre * lowest_m),
    ),
  });
  const widthAt = (pixelsPerMetre: number) => walk(run, plan, scaleAt(pixelsPerMetre), size, NONE).width;
  const available = size.endX - size.grilleLeft;
  // Width grows all but straight with scale, so false position (Illinois) closes in a few steps.
  let low = 4;
  let high = clamp(size.bore / (bore_m * size.enlargementLeast), 20, 400);
  const filled = () => {
    let over = widthAt(high) - available;
    if (over <= 0) return high;
    let under = widthAt(low) - available;
    if (under >= 0) return low;
    let last = 0;
    for (let step = 0; step < 20; step += 1) {
      // Where the width leaps there is nothing to close in on: halve instead, and stop when it is found.
      const guess = (low * over - high * under) / (over - under);
      const middle = guess > low && guess < high ? guess : (low + high) / 2;
      if (high - low < 1e-3) break;
      const miss = widthAt(middle) - available;
      if (Math.abs(miss) < 0.05) return middle;
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
    return low;
  };
  const widest = filled();
  // Ducts that only stand are shown in full where that leaves the run wide enough and its bore drawn as wide.
  const lastUp = Math.max(...plan.entry.map((turn) => turn.index));
  const standing_m = run.reduce(
    (sum, piece, index) => sum + (index < lastUp && piece.kind === 'duct' ? piece.path_m : 0),
    0,
  );
  if (standing_m === 0) return scaleAt(widest);
  const height = size.joistTop - size.axis - size.bore * 1.3;
  const least = Math.max(widest * SHRUNK_LEAST, size.bore / (bore_m * size.enlargementMost));
  return scaleAt(Math.min(widest, Math.max(height / standing_m, least)));
}
