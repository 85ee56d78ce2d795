/** What lies on the duct, what was knocked into it, and the steps of a size too small. */
import type { Box, Sample, TroubleMark } from '../../types.ts';
import { beside, placeAt } from '../centreline.ts';
import { line } from '../numbers.ts';
import { styleOf, WALL } from '../walls.ts';
import type { Site } from './drawer.ts';
import { from, mark, slice, stretchOf, upward } from './marks.ts';
import { crushHalf, heightLeft, loadAt } from './necks.ts';

interface Damage {
  readonly marks: TroubleMark[];
  readonly taken: Box[];
}

const thickness = (site: Site, piece: string, full: number) =>
  full * 2 * WALL[styleOf(site.rig.run.find(({ id }) => id === piece)!)];

/** A box stored on the duct, its flaps taped, standing in the hollow it has made. */
function crushed(site: Site, points: readonly Sample[], piece: string, open: number): Damage {
  const stretch = stretchOf(points, piece)!;
  const half = crushHalf(site, piece, stretch.to - stretch.from);
  const place = placeAt(points, loadAt(points, piece, half));
  const up = upward(place);
  const foot = place.half + thickness(site, piece, place.full) + 1;
  // Leaning back on a duct that stands, a box is only as tall as the room beside it.
  const wide = Math.max(place.full * 1.6, half * 0.92);
  const tall = Math.min(place.full * 2.1, wide * 0.9);
  const corner = (along: number, aside: number) => from(place, along, up * aside);
  const box = (left: number, right: number, low: number, high: number) =>
    line([corner(left, low), corner(right, low), corner(right, high), corner(left, high)], true);
  const second = { left: -wide * 0.56, right: wide * 0.36, high: foot + tall * 1.72 };
  const corners = [corner(-wide, foot), corner(wide, second.high)];
  const x = Math.min(...corners.map((point) => point.x));
  const y = Math.min(...corners.map((point) => point.y));
  const flap = (left: number, right: number, low: number, high: number) =>
    line([corner((left + right) / 2, high), corner((left + right) / 2, low + (high - low) * 0.72)]) +
    line([corner(left, low + (high - low) * 0.72), corner(right, low + (high - low) * 0.72)]);
  return {
    marks: [
      mark('crushed', piece, place.full * 2 * (1 - heightLeft(open)), {
        body: box(-wide, wide, foot, foot + tall) + box(second.left, second.right, foot + tall, second.high),
        fine:
          flap(-wide, wide, foot, foot + tall) + flap(second.left, second.right, foot + tall, second.high),
      }),
    ],
    taken: [
      {
        x,
        y,
        width: Math.max(...corners.map((point) => point.x)) - x,
        height: Math.max(...corners.map((point) => point.y)) - y,
      },
    ],
  };
}

/** Creases running out of every dent. */
function dented(points: readonly Sample[], piece: string, count: number, open: number): TroubleMark {
  const { from: start, to } = stretchOf(points, piece)!;
  let fine = '';
  for (let k = 0; k < count; k += 1) {
    const along = start + ((to - start) * (k + 0.5)) / count;
    const here = placeAt(points, along);
    const deep = here.full - here.half;
    // On the side that was hit, which is where the middle of the duct gave way from.
    for (const side of [-1, 1])
      for (const way of [-0.5, 0.5])
        fine += line([
          from(here, way * here.full * 0.25, side * here.half * 0.95),
          from(here, way * here.full * 0.9, side * (here.half * 0.95 - deep * 0.5)),
        ]);
  }
  const bore = placeAt(points, start).full * 2;
  return mark('dented', piece, bore * (1 - heightLeft(open)), { fine });
}

/** The bore meant, dashed, and a shoulder at each step. */
function undersized(site: Site, points: readonly Sample[], piece: string, ratio: number): TroubleMark {
  const { from: start, to } = stretchOf(points, piece)!;
  const full = placeAt(points, (start + to) / 2).full;
  const out = full + thickness(site, piece, full);
  let quiet = '';
  for (const side of [-1, 1])
    for (let along = start + 4; along < to - 8; along += 12)
      quiet += line([
        beside(placeAt(points, along), side * out),
        beside(placeAt(points, along + 7), side * out),
      ]);
  const collar = out + full * 0.16;
  const step = Math.min(full * 0.28, (to - start) / 4);
  return mark('undersized', piece, full * 2 * (1 - ratio), {
    quiet,
    heavy: slice(points, start + 0.5, collar) + slice(points, to - 0.5, collar),
    fine:
      slice(points, start + step, out - full * (1 - ratio)) +
      slice(points, to - step, out - full * (1 - ratio)),
  });
}

export function damage(site: Site, points: readonly Sample[]): Damage {
  const marks: TroubleMark[] = [];
  const taken: Box[] = [];
  for (const { id } of site.rig.run) {
    const shape = site.shapes.get(id) ?? {};
    if (!stretchOf(points, id)) continue;
    if (shape.crushedOpenArea !== undefined) {
      const found = crushed(site, points, id, shape.crushedOpenArea);
      marks.push(...found.marks);
      taken.push(...found.taken);
    }
    if (shape.dents && shape.dentOpenArea !== undefined)
      marks.push(dented(points, id, shape.dents, shape.dentOpenArea));
    if (shape.boreRatio !== undefined && shape.boreRatio < 1)
      marks.push(undersized(site, points, id, shape.boreRatio));
  }
  return { marks, taken };
}
