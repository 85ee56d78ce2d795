/** The only thing in colour: the ribbon, the gap where air is missing, and the rays at both ends. */
import type { AirDrawing, Point, Sample } from '../types.ts';
import { beside } from './centreline.ts';
import { at, clamp, line, n } from './numbers.ts';

/** Half-width of the ribbon: the share of the healthy flow that is left, of the open bore. */
export const ribbonHalf = (place: Sample) => place.hub + (place.half - place.hub) * place.share;

export function air(
  points: readonly Sample[],
  outlet: Point,
  mouth: Point,
  share: number,
  right: number,
  wide: boolean,
): AirDrawing {
  const left: Point[] = [];
  const other: Point[] = [];
  const boreLeft: Point[] = [];
  const boreRight: Point[] = [];
  for (const place of points) {
    const ribbon = ribbonHalf(place);
    left.push(beside(place, -ribbon));
    other.push(beside(place, ribbon));
    boreLeft.push(beside(place, -place.half));
    boreRight.push(beside(place, place.half));
  }
  const gap = share < 0.999;
  return {
    ribbon: line([...left, ...other.slice().reverse()], true),
    edge: line(left) + line(other),
    outline: gap ? line(boreLeft) + line(boreRight) : '',
    lost: gap
      ? line([...boreLeft, ...left.slice().reverse()], true) +
        line([...boreRight, ...other.slice().reverse()], true)
      : '',
    ...rays(points, outlet, mouth, share, right, wide),
  };
}

/** Number and length of the rays follow the flow. */
function rays(
  points: readonly Sample[],
  outlet: Point,
  mouth: Point,
  share: number,
  right: number,
  wide: boolean,
) {
  const entry = points[0]!;
  const count = 3 + 2 * Math.round(clamp(share, 0, 1) * (wide ? 3 : 2));
  let entering = '';
  let leaving = '';
  for (let k = 0; k < count; k += 1) {
    const u = (k / (count - 1)) * 2 - 1;
    const reach = entry.full * (0.7 + 0.8 * share) * (1 - 0.2 * Math.abs(u));
    const x = mouth.x + u * entry.full * 0.85;
    const out = u * entry.full * (0.7 + 0.4 * share);
    entering += `M${at(mouth.x + u * entry.full * 0.85 + out, mouth.y + reach * (1 - 0.45 * Math.abs(u)))}Q${at(x + out * 0.25, mouth.y + reach * 0.5)} ${at(x, mouth.y + 2)}`;
    const exit = points[points.length - 1]!;
    const long = Math.min(exit.full * (1.2 + 3 * share), right - outlet.x - 4) * (1 - 0.18 * Math.abs(u));
    const y = outlet.y + u * exit.full * 0.8;
    leaving += `M${at(outlet.x + exit.full * 0.2, y)}q${n(long * 0.5)} ${n(u * long * 0.06)} ${n(long)} ${n(u * long * 0.42)}`;
  }
  return { entering, leaving };
}
