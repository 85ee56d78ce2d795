/** The walk turned into points: sampled, hung between supports, waved where slack, placed in the frame. */
import type { Piece, PieceShape } from '#physics';
import type { Point, Sample } from '../types.ts';
import type { Walk } from './legs.ts';
import { clamp, ease, lerp } from './numbers.ts';
import { sagAt } from './hang.ts';
import type { Scale } from './scale.ts';
import type { Sizes } from './sizes.ts';

export interface Raw extends Point {
  readonly piece: string;
  readonly s_m: number;
  readonly tx: number;
  readonly ty: number;
  readonly along: number;
}

/** Where a piece runs level, in pixels across the page. */
export interface Level {
  readonly from: number;
  readonly to: number;
  readonly y: number;
}

interface Spot {
  x: number;
  y: number;
  readonly piece: string;
  readonly s_m: number;
}

interface Traced {
  readonly spots: Spot[];
  readonly levels: Map<string, Level>;
  /** Where each piece's spots start and end in the list. */
  readonly ranges: Map<string, { readonly from: number; to: number }>;
}

/** What a shape holds that is drawn along the duct, so that its line must be sampled finely. */
const isFine = (shape: PieceShape | undefined) =>
  !!shape &&
  (!!shape.sag_m ||
    !!shape.ties ||
    !!shape.swappedShare ||
    !!shape.dents ||
    shape.crushedOpenArea !== undefined ||
    shape.crimpHeightRatio !== undefined);

function trace(
  walk: Walk,
  startX: number,
  startY: number,
  step: number,
  fine: (piece: string) => boolean,
): Traced {
  const spots: Spot[] = [];
  const levels = new Map<string, Level>();
  const ranges: Traced['ranges'] = new Map();
  let heading = -Math.PI / 2;
  let x = startX;
  let y = startY;
  let s = 0;
  let apart = step;
  let piece: string | null = null;
  for (const leg of walk.legs) {
    const starts = leg.piece !== piece;
    if (starts) {
      piece = leg.piece;
      ranges.set(piece, { from: spots.length, to: spots.length });
      apart = fine(piece) ? step : step * 3;
    }
    const radius = leg.turn === 0 ? 0 : leg.length / leg.turn;
    const between = leg.turn === 0 ? apart : Math.min(apart, Math.max(step, Math.abs(radius) * 0.16));
    const count = Math.max(1, Math.ceil(leg.length / between));
    const cosine = Math.cos(heading);
    const sine = Math.sin(heading);
    const fromX = x;
    const fromY = y;
    // Legs share their joints; where the piece changes both sides are kept so that each piece has its ends.
    for (let k = starts ? 0 : 1; k <= count; k += 1) {
      const t = k / count;
      if (leg.turn === 0) {
        x = fromX + leg.length * t * cosine;
        y = fromY + leg.length * t * sine;
      } else {
        const angle = heading + leg.turn * t;
        x = fromX + radius * (Math.sin(angle) - sine);
        y = fromY - radius * (Math.cos(angle) - cosine);
      }
      spots.push({ x, y, piece: leg.piece, s_m: s + leg.metres * t });
    }
    if (leg.level) {
      const found = levels.get(leg.piece);
      levels.set(leg.piece, { from: found?.from ?? fromX, to: x, y: found?.y ?? fromY });
    }
    ranges.get(leg.piece)!.to = spots.length;
    heading += leg.turn;
    s += leg.metres;
  }
  for (const [id, found] of levels) if (found.to - found.from <= 1) levels.delete(id);
  return { spots, levels, ranges };
}

/** A duct that partly stands has less level stretch than its spans need: below 1, it hangs as much less deep. */
export function fullness(shape: PieceShape, level: Level, scale: Scale): number {
  const needed = (shape.span_m ?? 0) * (shape.spans ?? 1) * scale.pixelsPerMetre * 0.88;
  return needed > 0 ? clamp((level.to - level.from) / needed, 0, 1) : 1;
}

export function centreline(
  run: readonly Piece[],
  walk: Walk,
  scale: Scale,
  size: Sizes,
  startX: number,
  shapes: ReadonlyMap<string, PieceShape>,
  bores: ReadonlyMap<string, number>,
): { points: Raw[]; levels: Map<string, Level> } {
  // A crimp narrows the pieces on both sides of it.
  const pinched = run.findIndex((piece) => shapes.get(piece.id)?.crimpHeightRatio !== undefined);
  const fine = new Set(
    run.flatMap((piece, index) =>
      isFine(shapes.get(piece.id)) || (pinched >= 0 && Math.abs(index - pinched) <= 2) ? [piece.id] : [],
    ),
  );
  for (const piece of run) if (piece.kind === 'fan' || piece.kind === 'reducer') fine.add(piece.id);
  const { spots, levels, ranges } = trace(walk, startX, size.ceiling + size.board, size.step, (id) =>
    fine.has(id),
  );
  const up = scale.pixelsPerMetre * scale.enlargement;
  for (const piece of run) {
    const shape = shapes.get(piece.id) ?? {};
    const stretch = levels.get(piece.id);
    const range = ranges.get(piece.id);
    if (piece.kind !== 'duct' || !stretch || !range || (!shape.sag_m && !shape.swappedShare)) continue;
    const bore = bores.get(piece.id) ?? size.bore;
    const spans = shape.spans ?? 1;
    const span = (stretch.to - stretch.from) / spans;
    const sag = (shape.sag_m ?? 0) * up * fullness(shape, stretch, scale);
    // Wide enough a crown over each support that the underside does not fold into itself.
    const slope = (4 * sag) / span;
    const saddle = Math.max(
      ((piece.supports?.width_mm ?? 75) / 2000) * scale.pixelsPerMetre,
      bore * 0.3,
      slope * bore * 0.74,
    );
    const swapped = shape.swappedShare ?? 0;
    for (let k = range.from; k < range.to; k += 1) {
      const spot = spots[k]!;
      if (spot.x <= stretch.from || spot.x >= stretch.to) continue;
      const place = spot.x - stretch.from;
      if (sag) spot.y += sagAt(place % span, span, sag, saddle);
      if (swapped > 0) {
        // Duct as it relaxes out of the box does not lie straight: a slack wave, flat at both ends.
        const whole = stretch.to - stretch.from;
        const inside = ease((place - whole * (1 - swapped)) / bore) * ease((whole - place) / bore);
        spot.y += inside * bore * 0.16 * Math.sin((place / (bore * 1.9)) * Math.PI);
      }
    }
  }
  return { points: finish(spots), levels };
}

/** Tangents and distances along, worked out afresh. */
export function finish(spots: readonly Omit<Spot, 'heading'>[]): Raw[] {
  let along = 0;
  const near = (a: Spot, b: Spot) => (a.x - b.x) ** 2 + (a.y - b.y) ** 2 < 0.04;
  return spots.map((spot, index) => {
    const before = spots[index - 1];
    if (before) along += Math.sqrt((spot.x - before.x) ** 2 + (spot.y - before.y) ** 2);
    // Joints hold two points in one place, so look past them for the tangent.
    let back = index;
    let ahead = index;
    while (back > 0 && near(spots[back]!, spot)) back -= 1;
    while (ahead < spots.length - 1 && near(spots[ahead]!, spot)) ahead += 1;
    const dx = spots[ahead]!.x - spots[back]!.x;
    const dy = spots[ahead]!.y - spots[back]!.y;
    const length = Math.sqrt(dx * dx + dy * dy) || 1;
    return {
      x: spot.x,
      y: spot.y,
      piece: spot.piece,
      s_m: spot.s_m,
      tx: dx / length,
      ty: dy / length,
      along,
    };
  });
}

/** The place at a distance along, between samples. */
export function placeAt(points: readonly Sample[], along: number): Sample {
  let low = 0;
  let high = points.length - 1;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (points[middle]!.along <= along) low = middle;
    else high = middle;
  }
  const a = points[low]!;
  const b = points[high]!;
  const gap = b.along - a.along;
  const t = gap > 1e-9 ? clamp((along - a.along) / gap, 0, 1) : 0;
  const tx = lerp(a.tx, b.tx, t);
  const ty = lerp(a.ty, b.ty, t);
  const length = Math.hypot(tx, ty) || 1;
  return {
    x: lerp(a.x, b.x, t),
    y: lerp(a.y, b.y, t),
    tx: tx / length,
    ty: ty / length,
    s_m: lerp(a.s_m, b.s_m, t),
    along: lerp(a.along, b.along, t),
    piece: a.piece,
    half: lerp(a.half, b.half, t),
    full: lerp(a.full, b.full, t),
    hub: lerp(a.hub, b.hub, t),
    share: lerp(a.share, b.share, t),
    velocity_m_s: lerp(a.velocity_m_s, b.velocity_m_s, t),
  };
}

/** What a wall needs of a place. */
export interface Spotted {
  x: number;
  y: number;
  tx: number;
  ty: number;
  half: number;
}

/**
 * Reads places one after another along the line, into one object: walls ask for hundreds each frame, and
 * throwing as many objects away costs more than the sums. `along` may step back only a little.
 */
export function reader(points: readonly Sample[]): (along: number, into: Spotted) => Spotted {
  let low = 0;
  return (along, into) => {
    while (low > 0 && points[low]!.along > along) low -= 1;
    while (low < points.length - 2 && points[low + 1]!.along <= along) low += 1;
    const a = points[low]!;
    const b = points[low + 1] ?? a;
    const gap = b.along - a.along;
    const t = gap > 1e-9 ? clamp((along - a.along) / gap, 0, 1) : 0;
    const tx = a.tx + (b.tx - a.tx) * t;
    const ty = a.ty + (b.ty - a.ty) * t;
    const length = Math.sqrt(tx * tx + ty * ty) || 1;
    into.x = a.x + (b.x - a.x) * t;
    into.y = a.y + (b.y - a.y) * t;
    into.tx = tx / length;
    into.ty = ty / length;
    into.half = a.half + (b.half - a.half) * t;
    return into;
  };
}

/** Distance along at which a level piece passes `x`; of several (a loop) the one nearest the level line. */
export function alongAt(points: readonly Raw[], piece: string, x: number, y: number): number {
  let best = points[0]!;
  let least = Infinity;
  for (const point of points) {
    if (point.piece !== piece) continue;
    const far = Math.abs(point.x - x) + Math.abs(point.y - y) * 0.01;
    if (far < least) {
      least = far;
      best = point;
    }
  }
  return best.along + (Math.abs(best.tx) > 0.3 ? (x - best.x) / best.tx : 0);
}

/** A line beside the centreline; positive is right of the flow. */
export const beside = (point: Pick<Raw, 'x' | 'y' | 'tx' | 'ty'>, distance: number): Point => ({
  x: point.x - point.ty * distance,
  y: point.y + point.tx * distance,
});
