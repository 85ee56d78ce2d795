/** What joins ducts, each by its own shape: elbows by how they are made, tapers, flaps in their housing, collars. */
import type { Elbow, Piece, PieceShape, Solution } from '#physics';
import type { Fixture, Sample, WallPart } from '../types.ts';
import type { Extent } from './bore.ts';
import { beside, placeAt } from './centreline.ts';
import type { Leg } from './features.ts';
import { at, line, n, segment } from './numbers.ts';
import { radians } from './plan.ts';

/** Sheet metal over its bore. */
export const SHEET = 0.05;

/** Seams over the whole turn: a gored elbow of n gores has a half gore at each end; an adjustable one four rings. */
function seamsOf(piece: Elbow): number {
  if (piece.form === 'gored') return (piece.gores ?? 3) - 1;
  if (piece.form === 'adjustable') return 3;
  return piece.form === 'mitred' ? 1 : 0;
}

/**
 * Walls of an elbow. Between seams the sheet is straight, so its corners stand out of the round the air
 * takes: at 1/cos of half the angle between two seams, measured from the centre of the bend.
 */
export function elbow(
  piece: Elbow,
  legs: readonly Leg[],
  points: readonly Sample[],
  extent: Extent,
): WallPart {
  const own = legs.filter((leg) => leg.piece === piece.id);
  const drawn = own.reduce((sum, leg) => sum + leg.length, 0) || 1;
  const turned = own.reduce((sum, leg) => sum + Math.abs(leg.turn), 0) || 1;
  const scale = (extent.to - extent.from) / drawn;
  const all = seamsOf(piece);
  const first = placeAt(points, extent.from);
  const thick = first.full * 2 * SHEET;
  const out = first.full + thick;
  const left = [beside(first, -out)];
  const right = [beside(first, out)];
  let ticks = '';
  let along = extent.from;
  for (const leg of own) {
    const long = leg.length * scale;
    const seams = leg.turn === 0 ? 0 : Math.round((all * Math.abs(leg.turn)) / turned);
    const count = all > 0 ? Math.max(1, seams) : Math.max(2, Math.ceil(long / 7));
    const centre = leg.turn === 0 ? 0 : leg.length / leg.turn;
    const grow = all > 0 ? 1 / Math.cos(leg.turn / count / 2) : 1;
    const corner = (d: number) => (leg.turn === 0 ? d : centre - (centre - d) * grow);
    for (let k = 0; k < count; k += 1) {
      const place = placeAt(points, along + (long * (k + (all > 0 ? 0.5 : 1))) / count);
      const a = beside(place, corner(-out));
      const b = beside(place, corner(out));
      left.push(a);
      right.push(b);
      if (all === 0) continue;
      ticks += segment(a.x, a.y, b.x, b.y);
      if (piece.form !== 'adjustable') continue;
      // Rings that slide in one another: the outer ring's rim stands proud of the inner.
      const rim = thick * 1.3;
      const shift = Math.max(2.2, first.full * 0.13);
      const c = beside(place, corner(-out - rim));
      const d = beside(place, corner(out + rim));
      ticks +=
        segment(c.x, c.y, a.x, a.y) +
        segment(b.x, b.y, d.x, d.y) +
        segment(
          c.x + place.tx * shift,
          c.y + place.ty * shift,
          d.x + place.tx * shift,
          d.y + place.ty * shift,
        );
    }
    along += long;
  }
  const last = placeAt(points, extent.to);
  left.push(beside(last, -out));
  right.push(beside(last, out));
  return {
    key: piece.id,
    piece: piece.id,
    style: 'rigid',
    body: line([...left, ...right.slice().reverse()], true),
    left: line(left),
    right: line(right),
    ticks,
  };
}

/** Straight-sided sheet through places given as shares of the length, each as far out as `proud` says. */
function sheet(
  piece: string,
  points: readonly Sample[],
  extent: Extent,
  shares: readonly (readonly [share: number, proud: number])[],
): WallPart {
  const left = [];
  const right = [];
  for (const [share, proud] of shares) {
    const place = placeAt(points, extent.from + (extent.to - extent.from) * share);
    const out = place.half + place.full * 2 * SHEET + place.full * proud;
    left.push(beside(place, -out));
    right.push(beside(place, out));
  }
  return {
    key: piece,
    piece,
    style: 'rigid',
    body: line([...left, ...right.slice().reverse()], true),
    left: line(left),
    right: line(right),
    ticks: '',
  };
}

export function reducer(
  piece: Piece & { kind: 'reducer' },
  points: readonly Sample[],
  extent: Extent,
): WallPart {
  const cuts = piece.form === 'sudden' ? [0, 0.43, 0.57, 1] : [0, 0.25, 0.5, 0.75, 1];
  return sheet(
    piece.id,
    points,
    extent,
    cuts.map((cut) => [cut, 0] as const),
  );
}

/** A housing a little wider than the duct. */
export const damper = (piece: string, points: readonly Sample[], extent: Extent): WallPart =>
  sheet(piece, points, extent, [
    [0, 0],
    [0.04, 0.2],
    [0.96, 0.2],
    [1, 0],
  ]);

/** A bar across the duct, as a flange or the end of a sleeve seen from the side. */
function bar(place: Sample, reach: number): string {
  const out = place.full * (1 + 2 * SHEET) + reach;
  const a = beside(place, -out);
  const b = beside(place, out);
  return segment(a.x, a.y, b.x, b.y);
}

/** Degrees the flap of a sound damper stands open while air goes out. */
const OPEN = 78;

/** The flap, hung from the upper wall: shut it stands across the stream, open it lies along it. */
function flap(
  points: readonly Sample[],
  extent: Extent,
  shape: PieceShape,
  direction: Solution['direction'],
): string {
  const place = placeAt(points, extent.from + (extent.to - extent.from) * 0.25);
  const open = radians(direction === 'forward' ? Math.min(OPEN, 90 - (shape.stuck_deg ?? 0)) : 0);
  // Left of the flow is up where the duct runs level, and away from the room where it stands.
  const hinge = beside(place, -place.half);
  const long = place.half * 1.9;
  const x = hinge.x + long * (place.tx * Math.sin(open) - place.ty * Math.cos(open));
  const y = hinge.y + long * (place.ty * Math.sin(open) + place.tx * Math.cos(open));
  const dot = Math.max(1.4, place.full * 0.09);
  return (
    segment(hinge.x, hinge.y, x, y) +
    `M${at(hinge.x - dot, hinge.y)}a${n(dot)} ${n(dot)} 0 1 0 ${n(dot * 2)} 0a${n(dot)} ${n(dot)} 0 1 0 ${n(-dot * 2)} 0`
  );
}

/** Flanges, collars and the flap: everything of a fitting that is drawn over the duct's walls. */
export function fixture(
  piece: Piece,
  points: readonly Sample[],
  extent: Extent,
  shape: PieceShape,
  direction: Solution['direction'],
): Fixture | null {
  const place = (share: number) => placeAt(points, extent.from + (extent.to - extent.from) * share);
  const rim = place(0).full * 0.16;
  const ends = bar(place(0), rim) + bar(place(1), rim);
  const made = (body: string): Fixture => ({ piece: piece.id, body, detail: '' });
  if (piece.kind === 'elbow') return made(bar(place(0), rim * 0.7) + bar(place(1), rim * 0.7));
  if (piece.kind === 'reducer') return made(ends);
  if (piece.kind === 'damper') return made(ends + flap(points, extent, shape, direction));
  // A flanged collar: two flanges face to face, a bolt through each rim.
  if (piece.kind === 'fitting') return made(ends + bar(place(0.42), rim * 2.4) + bar(place(0.58), rim * 2.4));
  return null;
}
