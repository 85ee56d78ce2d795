/** Straps with their saddles, straps that lost their duct, and ties with their bands. */
import type { Piece, PieceShape } from '#physics';
import type { Sample, Support, Tie } from '../types.ts';
import { alongAt, beside, placeAt, type Level, type Raw } from './centreline.ts';
import type { Narrowing } from './bore.ts';
import { hang } from './hang.ts';
import { at, segment } from './numbers.ts';
import type { Scale } from './scale.ts';
import { rafterUnder, type Sizes } from './sizes.ts';
import { styleOf, WALL } from './walls.ts';

const strapWidth = (piece: Piece, scale: Scale) =>
  Math.max(
    4,
    (((piece.kind === 'duct' ? piece.supports?.width_mm : undefined) ?? 75) / 1000) * scale.pixelsPerMetre,
  );

export function supports(
  run: readonly Piece[],
  points: readonly Sample[],
  levels: ReadonlyMap<string, Level>,
  shapes: ReadonlyMap<string, PieceShape>,
  healthy: ReadonlyMap<string, PieceShape>,
  scale: Scale,
  size: Sizes,
): Support[] {
  return run.flatMap((piece) => {
    const level = levels.get(piece.id);
    if (piece.kind !== 'duct' || !level) return [];
    const { held, empty } = hang(shapes.get(piece.id) ?? {}, healthy.get(piece.id) ?? {});
    const width = strapWidth(piece, scale);
    const places = [
      ...held.map((place) => ({ place, gone: false })),
      ...empty.map((place) => ({ place, gone: true })),
    ];
    return places.map(({ place, gone }): Support => {
      const x = level.from + (level.to - level.from) * place;
      const along = alongAt(points, piece.id, x, level.y);
      const here = placeAt(points, along);
      const thick = here.full * 2 * WALL[styleOf(piece)];
      const top = rafterUnder(size, x);
      // Measured straight up and down, so longer across a duct that slopes.
      const upright = (here.half + thick) / Math.max(0.5, Math.abs(here.tx));
      const duct = here.y - upright;
      const key = `${piece.id}/${gone ? 'empty' : 'held'}/${Math.round(place * 1000)}`;
      if (gone)
        return {
          key,
          piece: piece.id,
          x,
          y: here.y,
          top,
          width,
          empty: true,
          wrap: nails(x, top, width),
          strap: loose(x, top, level.y - here.full - thick, width),
          saddle: '',
        };
      // A tray of true width under the lowest part of the duct here, its lips turned up.
      const tray = here.y + upright + 1.4;
      const lip = Math.max(3, thick * 0.8);
      const left = x - width / 2;
      return {
        key,
        piece: piece.id,
        x,
        y: here.y,
        top,
        width,
        empty: false,
        strap: `M${at(left, top)}L${at(left, duct)}L${at(left + width, duct)}L${at(left + width, top)}Z`,
        wrap:
          nails(x, top, width) +
          segment(left, duct, left, tray) +
          segment(left + width, duct, left + width, tray),
        // On a slope too steep to sit on, the strap alone goes round.
        saddle:
          Math.abs(here.tx) < 0.85
            ? ''
            : `M${at(left, tray - lip)}L${at(left, tray)}L${at(left + width, tray)}L${at(left + width, tray - lip)}`,
      };
    });
  });
}

/** Two nails into the rafter. */
const nails = (x: number, top: number, width: number) =>
  [-0.22, 0.22].map((k) => `M${at(x + k * width, top + width * 0.5)}h0.1`).join('');

/** A strap hanging free: it stops short and its end has curled. */
function loose(x: number, top: number, duct: number, width: number): string {
  const reach = Math.max(width * 2, (duct - top) * 0.72);
  const end = top + reach;
  const l = x - width / 2;
  const r = x + width / 2;
  const curl = width * 0.9;
  return `M${at(l, top)}L${at(l, end - curl)}Q${at(l, end)} ${at(l + curl, end + curl * 0.35)}L${at(r + curl, end - curl * 0.35)}Q${at(r, end - curl * 0.5)} ${at(r, end - curl * 1.5)}L${at(r, top)}Z`;
}

/** Where ties bite: at the supports when they are as many, else evenly. */
export function tiePlaces(
  piece: Piece,
  shape: PieceShape,
  level: Level | undefined,
  points: readonly Raw[],
  bore: number,
): Narrowing[] {
  const count = shape.ties ?? 0;
  const ratio = shape.tieRatio ?? 1;
  if (!count || !level || ratio >= 1) return [];
  return Array.from({ length: count }, (_, k) => {
    const x = level.from + ((level.to - level.from) * (k + 1)) / (count + 1);
    return {
      piece: piece.id,
      along: alongAt(points, piece.id, x, level.y),
      reach: bore * 0.7,
      ratio,
      area: ratio ** 2,
    };
  });
}

export function ties(places: readonly Narrowing[], points: readonly Sample[], run: readonly Piece[]): Tie[] {
  return places.map((place, index) => {
    const here = placeAt(points, place.along);
    const piece = run.find((other) => other.id === place.piece)!;
    const out = here.half + here.full * 2 * WALL[styleOf(piece)] + 1;
    const a = beside(here, -out);
    const b = beside(here, out);
    const tail = `M${at(a.x, a.y)}q${at(2, -here.full * 0.35)} ${at(here.full * 0.3, -here.full * 0.5)}`;
    return {
      key: `${place.piece}/tie/${index}`,
      piece: place.piece,
      path: segment(a.x, a.y, b.x, b.y),
      tail,
    };
  });
}
