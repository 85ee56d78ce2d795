/**
 * Duct walls as they are made: plain double line with seam (rigid), fine regular corrugation (semi-rigid),
 * wire helix (flexible). Pitch is set out along the centreline, so wires open on the outside of a bend and
 * close on the inside of themselves; bunched duct keeps its wire and so folds between closer turns.
 */
import type { Piece, PieceShape } from '#physics';
import type { Sample, WallPart, WallStyle } from '../types.ts';
import { placeAt, reader, type Spotted } from './centreline.ts';
import type { Extent } from './bore.ts';
import type { Leg } from './features.ts';
import { damper, elbow, reducer, SHEET } from './fittings.ts';
import { n } from './numbers.ts';
import type { Exit } from './plan.ts';

/** Wall thickness over bore: flexible is drawn with its jacket. */
export const WALL: Record<WallStyle, number> = { rigid: SHEET, 'semi-rigid': 0.1, flexible: 0.13 };

/** Rig files name materials freely; the drawing goes by the word in the name. */
export function styleOf(piece: Piece): WallStyle {
  if (piece.kind === 'elbow' && piece.form === 'flexible') return 'flexible';
  if (piece.kind !== 'duct') return 'rigid';
  if (/semi/i.test(piece.material)) return 'semi-rigid';
  return /flex/i.test(piece.material) ? 'flexible' : 'rigid';
}

interface Stretch {
  readonly key: string;
  readonly piece: string;
  readonly style: WallStyle;
  readonly from: number;
  readonly to: number;
  readonly compression: number;
}

/** A piece is one stretch, or two where part of it was swapped for flexible. */
function stretches(piece: Piece, extent: Extent, shape: PieceShape): Stretch[] {
  const style = styleOf(piece);
  const { from, to } = extent;
  const compression = shape.compression ?? 0;
  const swapped = shape.swappedShare ?? 0;
  const split = to - (to - from) * swapped;
  const whole = { piece: piece.id, compression };
  if (swapped <= 0) return [{ ...whole, key: piece.id, style, from, to }];
  // Relaxed out of the box: 10 % is only how its folds are drawn.
  const swap: Stretch = {
    piece: piece.id,
    key: `${piece.id}/swapped`,
    style: 'flexible',
    from: split,
    to,
    compression: Math.max(compression, 0.1),
  };
  return swapped >= 1 ? [swap] : [{ ...whole, key: piece.id, style, from, to: split }, swap];
}

function pitchOf(style: WallStyle, bore: number): number {
  return style === 'flexible' ? Math.max(5.5, bore * 0.23) : Math.max(3.4, bore * 0.1);
}

function draw(stretch: Stretch, points: readonly Sample[]): WallPart {
  const { style, from, to } = stretch;
  const bore = placeAt(points, (from + to) / 2).full * 2;
  const thick = bore * WALL[style];
  const relaxed = pitchOf(style, bore);
  const pitch = relaxed * (style === 'flexible' ? 1 - Math.min(0.55, stretch.compression) : 1);
  const turns = Math.max(1, Math.round((to - from) / pitch));
  // The wall between two wires stays as long as it was, so closer wires push it out of line.
  const fold = style === 'flexible' ? Math.sqrt(Math.max(0, relaxed ** 2 - pitch ** 2)) / 2 : 0;
  const ripple =
    style === 'semi-rigid' ? Math.max(0.6, bore * 0.022) : style === 'flexible' ? Math.max(0.35, fold) : 0;
  // Four corners a turn keep bends round; on the ripple they sit low, middle, high, middle.
  const corners =
    style === 'rigid' ? Math.max(2, Math.ceil((to - from) / 8)) : turns * (style === 'flexible' ? 4 : 2);
  const wave = style === 'flexible' ? [-1, 0, 1, 0] : [-1, 1];
  const lead = style === 'flexible' ? 1 : 0.2;
  const dip = style === 'flexible' ? 0.4 : thick * 0.25;
  const read = reader(points);
  const place: Spotted = { x: 0, y: 0, tx: 1, ty: 0, half: 0 };
  const lean: Spotted = { ...place };
  let left = '';
  const right: string[] = [];
  let ticks = '';
  // Sheet has thickness: a second line just off the bore.
  let innerLeft = '';
  let innerRight = '';
  const side = (spot: Spotted, distance: number) =>
    `${n(spot.x - spot.ty * distance)} ${n(spot.y + spot.tx * distance)}`;
  for (let k = 0; k <= corners; k += 1) {
    read(from + ((to - from) * k) / corners, place);
    const out = place.half + thick + ripple * wave[k % wave.length]!;
    const onLeft = side(place, -out);
    const onRight = side(place, out);
    left += k > 0 ? `L${onLeft}` : onLeft;
    right.push(onRight);
    if (style === 'rigid') {
      innerLeft += `${k > 0 ? 'L' : 'M'}${side(place, 0.2 - place.half)}`;
      innerRight += `${k > 0 ? 'L' : 'M'}${side(place, place.half - 0.2)}`;
    } else if (k % wave.length === 0) {
      read(Math.min(to, from + ((to - from) * (k + lead)) / corners), lean);
      const deep = lean.half + dip;
      ticks += `M${onLeft}L${side(lean, -deep)}M${onRight}L${side(lean, deep)}`;
    }
  }
  const onRight = right.join('L');
  return {
    key: stretch.key,
    piece: stretch.piece,
    style,
    body: `M${left}L${right.reverse().join('L')}Z`,
    left: `M${left}`,
    right: `M${onRight}`,
    ticks: ticks + innerLeft + innerRight,
  };
}

export function walls(
  run: readonly Piece[],
  legs: readonly Leg[],
  exit: Exit,
  points: readonly Sample[],
  reach: ReadonlyMap<string, Extent>,
  shapes: ReadonlyMap<string, PieceShape>,
): WallPart[] {
  return run.flatMap((piece) => {
    const extent = reach.get(piece.id);
    // On a wall the terminal draws itself; on a roof or under eaves it has a pipe of its own.
    if (!extent || piece.kind === 'fan' || (piece.kind === 'terminal' && exit === 'wall')) return [];
    if (piece.kind === 'elbow' && piece.form !== 'flexible') return [elbow(piece, legs, points, extent)];
    if (piece.kind === 'reducer') return [reducer(piece, points, extent)];
    if (piece.kind === 'damper') return [damper(piece.id, points, extent)];
    return stretches(piece, extent, shapes.get(piece.id) ?? {}).map((stretch) => draw(stretch, points));
  });
}
