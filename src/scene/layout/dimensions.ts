/** Dimensions drawn as dimensions: sag from the line between supports, a crimp's open height, a tie's bore. */
import type { Piece, PieceShape } from '#physics';
import { show, type UnitChoice } from '#units';
import type { Box, Crimp, Dimension, Point, Sample } from '../types.ts';
import { alongAt, placeAt, type Level } from './centreline.ts';
import type { Narrowing } from './bore.ts';
import { widthOf } from './labels.ts';
import { at, segment } from './numbers.ts';
import { styleOf, WALL } from './walls.ts';

export interface Measured extends Dimension {
  /** The value in metres, for the figure beside it. */
  readonly value_m: number;
  readonly figure: Point;
  /** Where the measured line starts. */
  readonly from: Point;
  readonly side: 'right' | 'above' | 'below';
  readonly kind: 'sag' | 'crimp' | 'tie';
  /** Paper its line and arrows take. */
  readonly taken: Box;
}

const round = (x: number, top: number, bottom: number, half: number): Box => ({
  x: x - half,
  y: top,
  width: half * 2,
  height: bottom - top,
});

const arrow = (x: number, y: number, way: number, size: number) =>
  `M${at(x - size * 0.42, y - way * size)}L${at(x, y)}L${at(x + size * 0.42, y - way * size)}`;

/** Depth of a belly below the line between its supports, measured along the upper wall, clear of the air. */
export function sagDimension(
  piece: Piece,
  shape: PieceShape,
  level: Level,
  points: readonly Sample[],
  letter: number,
  choice: UnitChoice,
): Measured | null {
  const spans = shape.spans ?? 1;
  const sag_m = shape.sag_m ?? 0;
  if (sag_m < 0.004) return null;
  const span = (level.to - level.from) / spans;
  const placed = (x: number) => placeAt(points, alongAt(points, piece.id, x, level.y));
  // The span nearest the middle of the piece whose two supports are level; a jog in the duct tilts others.
  const ends = Array.from({ length: spans }, (_, k) => {
    const left = placed(level.from + span * k + 0.01).y;
    const right = placed(level.from + span * (k + 1) - 0.01).y;
    return { k, left, right, tilt: Math.round(Math.abs(left - right)), off: Math.abs(k - (spans - 1) / 2) };
  }).sort((a, b) => a.tilt - b.tilt || a.off - b.off || a.k - b.k);
  const { k: index, left, right } = ends[0]!;
  const from = level.from + span * index;
  const middle = placed(from + span / 2);
  const thick = middle.full * 2 * WALL[styleOf(piece)];
  const top = (left + right) / 2 - middle.half - thick;
  const bottom = middle.y - middle.half - thick;
  const head = Math.min(letter * 0.45, (bottom - top) * 0.4);
  const x = middle.x;
  // Beside the arrow the figure needs room down to the wall that rises on its right.
  const baseline = Math.min((top + bottom) / 2 + letter * 0.32, top + letter * 1.35);
  const reach = placed(x + letter * 0.45 + widthOf(show('depth', sag_m, choice).text, 'ink', letter));
  const beside = reach.y - reach.half - thick * 1.5 > baseline + letter * 0.1;
  return {
    key: `${piece.id}/sag`,
    piece: piece.id,
    kind: 'sag',
    value_m: sag_m,
    from: { x, y: top },
    measure: bottom - top,
    chord: segment(from, left - middle.half - thick, from + span, right - middle.half - thick),
    line: segment(x, top, x, bottom),
    taken: round(x, top, bottom, letter * 0.45),
    arrows: arrow(x, top, -1, head) + arrow(x, bottom, 1, head),
    figure: beside ? { x: x + letter * 0.45, y: baseline } : { x, y: top - letter * 0.45 },
    side: beside ? 'right' : 'above',
  };
}

/** Two arrows pressing on a neck from outside, as a narrow gap is dimensioned. */
function pinched(
  key: string,
  piece: string,
  kind: 'crimp' | 'tie',
  here: Sample,
  value_m: number,
  letter: number,
): Measured {
  const long = letter * 0.95;
  const up = here.y - here.half;
  const down = here.y + here.half;
  const x = here.x;
  const below = down + long + here.full * 0.5;
  return {
    key,
    piece,
    kind,
    value_m,
    from: { x, y: up },
    measure: here.half * 2,
    chord: '',
    taken: round(x, up - long - here.full * 0.4, below, letter * 0.45),
    line: segment(x, up - long - here.full * 0.4, x, up) + segment(x, down, x, below),
    arrows: arrow(x, up, 1, letter * 0.42) + arrow(x, down, -1, letter * 0.42),
    figure: { x, y: below + letter * 0.95 },
    side: 'below',
  };
}

export function crimpDimension(
  piece: string,
  crimp: Crimp,
  here: Sample,
  bore_m: number,
  ratio: number,
  letter: number,
): Measured {
  return {
    ...pinched(`${piece}/crimp`, piece, 'crimp', here, bore_m * ratio, letter),
    measure: crimp.height,
  };
}

export function tieDimension(
  tie: Narrowing,
  points: readonly Sample[],
  bore_m: number,
  letter: number,
): Measured {
  return pinched(
    `${tie.piece}/tie`,
    tie.piece,
    'tie',
    placeAt(points, tie.along),
    bore_m * tie.ratio,
    letter,
  );
}
