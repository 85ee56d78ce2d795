/** A fan that faces the wrong way tells by an arrow on its casing; one too weak has a small wheel. */
import type { Sample, TroubleMark } from '../../types.ts';
import { beside, placeAt } from '../centreline.ts';
import { line, n } from '../numbers.ts';
import type { Site } from './drawer.ts';
import { from, mark, radians, stretchOf } from './marks.ts';

/** Which way the casing's arrow points, against the way the run wants to go, with the angle between. */
function arrow(points: readonly Sample[], piece: string, degrees: number): TroubleMark {
  const stretch = stretchOf(points, piece)!;
  const place = placeAt(points, (stretch.from + stretch.to) / 2);
  const size = place.full;
  const off = -(place.half + size * 0.75);
  const tip = from(place, size * 1.1, off);
  const tail = from(place, -size * 1.1, off);
  const head = (k: number) => from(place, size * 0.62, off + k * size * 0.34);
  // The run's own way: the fan's, turned back.
  const angle = radians(degrees);
  const run = {
    tx: place.tx * Math.cos(angle) - place.ty * Math.sin(angle),
    ty: place.tx * Math.sin(angle) + place.ty * Math.cos(angle),
  };
  const ends = [tail, { x: tail.x + run.tx * size * 2.2, y: tail.y + run.ty * size * 2.2 }] as const;
  let quiet = '';
  for (let t = 0; t < 1; t += 0.2) {
    const spot = (u: number) => ({
      x: ends[0].x + (ends[1].x - ends[0].x) * u,
      y: ends[0].y + (ends[1].y - ends[0].y) * u,
    });
    quiet += line([spot(t), spot(t + 0.12)]);
  }
  const swept = Array.from({ length: 13 }, (_, k) => {
    const turn = (angle * k) / 12;
    return {
      x: tail.x + (place.tx * Math.cos(turn) - place.ty * Math.sin(turn)) * size * 1.5,
      y: tail.y + (place.tx * Math.sin(turn) + place.ty * Math.cos(turn)) * size * 1.5,
    };
  });
  return mark('fan-reversed', piece, degrees, {
    heavy: line([tail, tip]) + line([head(-1), tip, head(1)]),
    quiet: quiet + line(swept),
  });
}

/** Dashed, the wheel it should have: from hub to casing. */
function ghost(points: readonly Sample[], piece: string, strength: number): TroubleMark {
  const stretch = stretchOf(points, piece)!;
  const spot = (t: number) => placeAt(points, stretch.from + (stretch.to - stretch.from) * t);
  let quiet = '';
  for (const side of [-1, 1])
    for (let t = 0.24; t < 0.56; t += 0.06) {
      const a = spot(t);
      const b = spot(t + 0.035);
      quiet += line([beside(a, side * (a.half - 2)), beside(b, side * (b.half - 2))]);
    }
  const middle = spot(0.4);
  return mark('weak-fan', piece, middle.half * 2 * (1 - strength), { quiet });
}

/** How the wheel is drawn smaller, as an SVG transform about its middle; empty when it is not. */
export function wheelOf(points: readonly Sample[], piece: string, strength: number): string {
  const stretch = stretchOf(points, piece)!;
  const { x, y } = placeAt(points, stretch.from + (stretch.to - stretch.from) * 0.5);
  return `translate(${n(x)} ${n(y)}) scale(${strength.toFixed(3)}) translate(${n(-x)} ${n(-y)})`;
}

export function fanMarks(site: Site, points: readonly Sample[]): { marks: TroubleMark[]; wheel: string } {
  const marks: TroubleMark[] = [];
  let wheel = '';
  for (const { id, kind } of site.rig.run) {
    const shape = site.shapes.get(id) ?? {};
    if (kind !== 'fan' || !stretchOf(points, id)) continue;
    if (shape.doubledBack_deg) marks.push(arrow(points, id, shape.doubledBack_deg));
    if (shape.inletBend_deg) marks.push(mark('bend-at-fan', id, shape.inletBend_deg, {}));
    if (shape.fanStrength !== undefined && shape.fanStrength < 1) {
      marks.push(ghost(points, id, shape.fanStrength));
      wheel = wheelOf(points, id, shape.fanStrength);
    }
  }
  return { marks, wheel };
}
