/** Building marks, and the frame of reference most of them are drawn in: along the duct and across it. */
import type { Point, Sample, TroubleMark } from '../../types.ts';
import { beside, placeAt } from '../centreline.ts';
import { at, line } from '../numbers.ts';
import type { Site } from './drawer.ts';

type Drawn = Partial<Omit<TroubleMark, 'key' | 'piece' | 'kind' | 'measure'>>;

export const mark = (kind: string, piece: string, measure: number, drawn: Drawn): TroubleMark => ({
  key: `${piece}/${kind}`,
  piece,
  kind,
  measure,
  cover: '',
  ribbon: '',
  body: '',
  heavy: '',
  fine: '',
  quiet: '',
  air: '',
  ...drawn,
});

/** Pixels of a length across the duct: bores, gaps and sag are enlarged alike. */
export const across = ({ scale }: Site, metres: number) => metres * scale.pixelsPerMetre * scale.enlargement;

export interface Stretch {
  readonly from: number;
  readonly to: number;
}

/** Where a piece begins and ends, in pixels along. */
export function stretchOf(points: readonly Sample[], piece: string): Stretch | null {
  let found: { from: number; to: number } | null = null;
  for (const point of points) {
    if (point.piece !== piece) continue;
    if (found) found.to = point.along;
    else found = { from: point.along, to: point.along };
  }
  return found;
}

/** From a place: so far along the duct, so far across it (positive is right of the flow, below a level duct). */
export const from = (place: Pick<Sample, 'x' | 'y' | 'tx' | 'ty'>, along: number, aside: number): Point => ({
  x: place.x + place.tx * along - place.ty * aside,
  y: place.y + place.ty * along + place.tx * aside,
});

/** Which side of the duct here is up, or nearest to it: -1 left of the flow, 1 right. */
export const upward = (place: Pick<Sample, 'tx'>) => (place.tx >= -0.01 ? -1 : 1);

/** A line across the duct at a place along. */
export function slice(points: readonly Sample[], along: number, reach: number): string {
  const place = placeAt(points, along);
  return line([beside(place, -reach), beside(place, reach)]);
}

/** A stroke of air that bends a little, with a small head at its end. */
export function stroke(start: Point, end: Point, bow: number, head: number): string {
  const dx = end.x - start.x;
  const dy = end.y - start.y;
  const long = Math.hypot(dx, dy) || 1;
  const middle = { x: start.x + dx / 2 - (dy / long) * bow, y: start.y + dy / 2 + (dx / long) * bow };
  const way = Math.atan2(end.y - middle.y, end.x - middle.x);
  const barb = (turn: number) => at(end.x - head * Math.cos(way + turn), end.y - head * Math.sin(way + turn));
  return `M${at(start.x, start.y)}Q${at(middle.x, middle.y)} ${at(end.x, end.y)}M${barb(0.55)}L${at(end.x, end.y)}L${barb(-0.55)}`;
}

export const radians = (degrees: number) => (degrees * Math.PI) / 180;
