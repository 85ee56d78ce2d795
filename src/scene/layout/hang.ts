/** How a level duct hangs: where its supports are, which are gone, and the curve it takes between them. */
import type { PieceShape } from '#physics';
import { clamp } from './numbers.ts';

export interface Hung {
  /** Positions along the piece, 0 to 1, of the supports that are left. */
  readonly held: readonly number[];
  /** Positions of straps that hold nothing any more. */
  readonly empty: readonly number[];
}

const inner = (spans: number) => Array.from({ length: Math.max(0, spans - 1) }, (_, k) => (k + 1) / spans);

/** Ends are held by what they join, so a piece of n spans has n - 1 supports of its own. */
export function hang(shape: PieceShape, healthy: PieceShape): Hung {
  const held = inner(shape.spans ?? 1);
  const missing = Math.max(0, (healthy.spans ?? 1) - (shape.spans ?? 1));
  const empty = inner(healthy.spans ?? 1)
    .map((place) => ({
      place,
      far: Math.min(place, 1 - place, ...held.map((other) => Math.abs(other - place))),
    }))
    .sort((a, b) => b.far - a.far || a.place - b.place)
    .slice(0, missing)
    .filter(({ far }) => far > 1e-6)
    .map(({ place }) => place)
    .sort((a, b) => a - b);
  return { held, empty };
}

/**
 * Depth below the line between supports at `x` in a span of `length`: a parabola of depth `sag`, rounded
 * over `saddle` at each support so that the line is level there; mid-span depth stays exactly `sag`.
 */
export function sagAt(x: number, length: number, sag: number, saddle: number): number {
  const from = Math.min(x, length - x);
  const width = clamp(saddle, 1e-6, length / 4);
  const slope = (4 * sag) / length;
  const parabola = (u: number) => slope * u * (1 - u / length);
  const lift = parabola(width) - (slope * (1 - (2 * width) / length) * width) / 2;
  const depth =
    from >= width ? parabola(from) : lift + (slope * (1 - (2 * width) / length) * from * from) / (2 * width);
  return sag > 0 ? ((depth - lift) * sag) / (sag - lift) : 0;
}
