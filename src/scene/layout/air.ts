/** The only thing in colour: the ribbon, the gap where air is missing, and the rays at both ends. */
import type { AirDrawing, Point, Sample } from '../types.ts';
import { at, n } from './numbers.ts';
import type { Exit } from './plan.ts';

/** Half-width of the ribbon: the share of the healthy flow that is left, of the open bore. */
export const ribbonHalf = (place: Sample) => place.hub + (place.half - place.hub) * place.share;

/** Where the air comes out, which way, and how far its rays may reach. */
export interface Way {
  readonly outlet: Point;
  readonly exit: Exit;
  readonly most: number;
}

export function air(points: readonly Sample[], way: Way, mouth: Point, wide: boolean): AirDrawing {
  // With a leak there may be less in one stretch and all of it in another.
  const gap = points.some((place) => place.share < 0.999);
  // Each edge is spelled once and used for ribbon, edge and gap.
  const left: string[] = [];
  const right: string[] = [];
  const wallLeft: string[] = [];
  const wallRight: string[] = [];
  for (const place of points) {
    const ribbon = ribbonHalf(place);
    left.push(off(place, -ribbon));
    right.push(off(place, ribbon));
    if (!gap) continue;
    wallLeft.push(off(place, -place.half));
    wallRight.push(off(place, place.half));
  }
  const onLeft = `M${left.join('L')}`;
  const onRight = `M${right.join('L')}`;
  const backRight = `L${right.reverse().join('L')}Z`;
  const outLeft = gap ? `M${wallLeft.join('L')}` : '';
  const outRight = gap ? `M${wallRight.join('L')}` : '';
  return {
    ribbon: onLeft + backRight,
    edge: onLeft + onRight,
    outline: outLeft + outRight,
    lost: gap ? `${outLeft}L${left.reverse().join('L')}Z${outRight}${backRight}` : '',
    ...rays(points, way, mouth, wide),
  };
}

const off = (place: Sample, distance: number) =>
  `${n(place.x - place.ty * distance)} ${n(place.y + place.tx * distance)}`;

/** Number and length of the rays at each end follow what passes there; where nothing does there are none. */
function rays(points: readonly Sample[], { outlet, exit, most }: Way, mouth: Point, wide: boolean) {
  const entry = points[0]!;
  const last = points[points.length - 1]!;
  const { full } = last;
  const count = ({ share }: Sample) => (share < 0.005 ? 0 : 3 + 2 * Math.round(share * (wide ? 3 : 2)));
  let entering = '';
  let leaving = '';
  for (let k = 0; k < count(entry); k += 1) {
    const u = (k / (count(entry) - 1)) * 2 - 1;
    const reach = entry.full * (0.7 + 0.8 * entry.share) * (1 - 0.2 * Math.abs(u));
    const x = mouth.x + u * entry.full * 0.85;
    const out = u * entry.full * (0.7 + 0.4 * entry.share);
    entering += `M${at(mouth.x + u * entry.full * 0.85 + out, mouth.y + reach * (1 - 0.45 * Math.abs(u)))}Q${at(x + out * 0.25, mouth.y + reach * 0.5)} ${at(x, mouth.y + 2)}`;
  }
  for (let k = 0; k < count(last); k += 1) {
    const u = (k / (count(last) - 1)) * 2 - 1;
    const long = Math.min(full * (1.2 + 3 * last.share), most) * (1 - 0.18 * Math.abs(u));
    if (exit === 'roof') {
      // Turned aside under the cap, half to each side, and up again.
      const side = k % 2 === 0 ? 1 : -1;
      const rise = Math.floor(k / 2) / Math.max(1, (count(last) - 1) / 2);
      const short = Math.min(long, full * 2.6) * (1 - 0.25 * rise);
      leaving += `M${at(outlet.x + side * full * 1.25, outlet.y + full * 0.16)}q${n(side * short * 0.5)} ${n(full * 0.1)} ${n(side * short)} ${n(full * 0.35 - rise * short * 0.85)}`;
    } else if (exit === 'soffit')
      leaving += `M${at(outlet.x - u * full * 0.8, outlet.y + full * 0.2)}q${n(-u * long * 0.06)} ${n(long * 0.5)} ${n(-u * long * 0.42)} ${n(long)}`;
    else
      leaving += `M${at(outlet.x + full * 0.2, outlet.y + u * full * 0.8)}q${n(long * 0.5)} ${n(u * long * 0.06)} ${n(long)} ${n(u * long * 0.42)}`;
  }
  return { entering, leaving };
}
