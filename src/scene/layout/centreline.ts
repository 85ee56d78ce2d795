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
  piece: string;
  s_m: number;
  /** Heading of the walk here, before hanging. */
  heading: number;
}

function trace(walk: Walk, startX: number, startY: number, step: number): Spot[] {
  const spots: Spot[] = [];
  let heading = -Math.PI / 2;
  let x = startX;
  let y = startY;
  let s = 0;
  for (const leg of walk.legs) {
    const count = Math.max(1, Math.ceil(leg.length / step));
    const radius = leg.turn === 0 ? 0 : leg.length / leg.turn;
    for (let k = 0; k <= count; k += 1) {
      const t = k / count;
      const angle = heading + leg.turn * t;
      const px =
        leg.turn === 0
          ? x + leg.length * t * Math.cos(heading)
          : x + radius * (Math.sin(angle) - Math.sin(heading));
      const py =
        leg.turn === 0
          ? y + leg.length * t * Math.sin(heading)
          : y - radius * (Math.cos(angle) - Math.cos(heading));
      const last = spots[spots.length - 1];
      // Legs share their joints; where the piece changes both sides are kept so that each piece has its ends.
      if (last && k === 0 && last.piece === leg.piece) continue;
      spots.push({ x: px, y: py, piece: leg.piece, s_m: s + leg.metres * t, heading: angle });
    }
    const end = spots[spots.length - 1]!;
    x = end.x;
    y = end.y;
    heading += leg.turn;
    s += leg.metres;
  }
  return spots;
}

/** Level stretch of each piece: from its first point after which the walk never stands up again. */
function levels(spots: readonly Spot[], run: readonly Piece[]): Map<string, Level> {
  const found = new Map<string, Level>();
  for (const piece of run) {
    const own = spots.filter((spot) => spot.piece === piece.id);
    const rising = own.findLastIndex((spot) => spot.heading < -1.2 && Math.abs(spot.x - own[0]!.x) < 1e-6);
    const begin = own.slice(rising < 0 ? 0 : rising).find((spot) => Math.abs(spot.heading) < 0.02);
    const end = own[own.length - 1];
    if (begin && end && end.x - begin.x > 1) found.set(piece.id, { from: begin.x, to: end.x, y: begin.y });
  }
  return found;
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
  const spots = trace(walk, startX, size.ceiling + size.board, size.step);
  const level = levels(spots, run);
  const up = scale.pixelsPerMetre * scale.enlargement;
  for (const piece of run) {
    const shape = shapes.get(piece.id) ?? {};
    const stretch = level.get(piece.id);
    if (piece.kind !== 'duct' || !stretch) continue;
    const bore = bores.get(piece.id) ?? size.bore;
    const spans = shape.spans ?? 1;
    const span = (stretch.to - stretch.from) / spans;
    // Wide enough a crown over each support that the underside does not fold into itself.
    const slope = (4 * (shape.sag_m ?? 0) * up) / span;
    const saddle = Math.max(
      ((piece.supports?.width_mm ?? 75) / 2000) * scale.pixelsPerMetre,
      bore * 0.3,
      slope * bore * 0.74,
    );
    const swapped = shape.swappedShare ?? 0;
    for (const spot of spots) {
      if (spot.piece !== piece.id || spot.x <= stretch.from || spot.x >= stretch.to) continue;
      const place = spot.x - stretch.from;
      if (shape.sag_m) spot.y += sagAt(place % span, span, shape.sag_m * up, saddle);
      if (swapped > 0) {
        // Duct as it relaxes out of the box does not lie straight: a slack wave, flat at both ends.
        const whole = stretch.to - stretch.from;
        const inside = ease((place - whole * (1 - swapped)) / bore) * ease((whole - place) / bore);
        spot.y += inside * bore * 0.16 * Math.sin((place / (bore * 1.9)) * Math.PI);
      }
    }
  }
  return { points: finish(spots), levels: level };
}

function finish(spots: readonly Spot[]): Raw[] {
  let along = 0;
  return spots.map((spot, index) => {
    const before = spots[index - 1];
    if (before) along += Math.hypot(spot.x - before.x, spot.y - before.y);
    // Joints hold two points in one place, so look past them for the tangent.
    let back = index;
    let ahead = index;
    while (back > 0 && Math.hypot(spots[back]!.x - spot.x, spots[back]!.y - spot.y) < 0.2) back -= 1;
    while (ahead < spots.length - 1 && Math.hypot(spots[ahead]!.x - spot.x, spots[ahead]!.y - spot.y) < 0.2)
      ahead += 1;
    const dx = spots[ahead]!.x - spots[back]!.x;
    const dy = spots[ahead]!.y - spots[back]!.y;
    const length = Math.hypot(dx, dy) || 1;
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
