/** Where the present fault's words may stand, best first: over the run, under it, on the sky, beside the house, and on paper large enough in the room. */
import type { Frame, Point, Sample } from '../types.ts';
import { clamp } from './numbers.ts';
import { rafterUnder, type Sizes } from './sizes.ts';

interface Setting {
  readonly frame: Frame;
  readonly size: Sizes;
  readonly points: readonly Sample[];
  readonly fault: Point;
  /** x of every strap. */
  readonly straps: readonly number[];
  /** Of the words, in pixels. */
  readonly width: number;
  readonly lines: 1 | 2;
}

const STEPS = [0, 1, -1, 2, -2, 3, -3, 4, -4, 5, -5, 6, -6, 8, -8, 10, -10];

/** Highest and lowest the duct reaches between two places. */
export function band(points: readonly Sample[], from: number, to: number) {
  let top = Infinity;
  let bottom = -Infinity;
  for (const point of points) {
    if (point.x < from || point.x > to) continue;
    top = Math.min(top, point.y - point.half * 1.35);
    bottom = Math.max(bottom, point.y + point.half * 1.35);
  }
  return { top, bottom };
}

export function faultSpots(setting: Setting): Point[] {
  const { frame, size, points, fault, straps, width, lines } = setting;
  const letter = size.lettering;
  const tall = letter * (lines === 2 ? 2.36 : 1.3);
  // A projector's letters leave little paper between roof and run: there words stand close over it.
  const gap = letter * (frame.lettering === undefined ? 1.1 : 0.35);
  const half = width / 2;
  /** Places across, kept between two edges, the nearest first; none where there is too little room. */
  const across = (from: number, to: number) => {
    const [least, most] = [from + half + 4, to - half - 4];
    if (least > most) return [];
    const all = STEPS.map((step) => clamp(fault.x + step * width * 0.2, least, most));
    return [...new Set(all)].sort((a, b) => Math.abs(a - fault.x) - Math.abs(b - fault.x));
  };
  const crossed = (x: number) => straps.filter((strap) => Math.abs(strap - x) < half + 6).length;
  const far = (x: number) => Number(Math.abs(x - fault.x) > width * 0.81);
  // Near at hand a label that no strap runs through reads best; after that, the nearest.
  const inside = across(size.wallLeft + size.wallThick, size.wallRight).sort(
    (a, b) => far(a) - far(b) || (far(a) ? 0 : crossed(a) - crossed(b)),
  );
  const over = inside.flatMap((x): Point[] => {
    const roof = Math.max(rafterUnder(size, x - half), rafterUnder(size, x + half));
    const { top } = band(points, x - half, x + half);
    const floor = Math.min(top, fault.y) - gap;
    return floor - tall > roof + 2 ? [{ x, y: floor - tall + letter * 0.9 }] : [];
  });
  const under = inside.flatMap((x): Point[] => {
    const { bottom } = band(points, x - half, x + half);
    const head = Math.max(bottom, fault.y) + letter * 0.6;
    return head + tall < size.joistTop - 2 ? [{ x, y: head + letter }] : [];
  });
  const sky = across(0, frame.width).flatMap((x): Point[] => {
    // The ridge stands higher than either end where the words reach over it.
    const peak = x - half < size.ridge.x && x + half > size.ridge.x ? [size.ridge.y] : [];
    const ends = [x - half, x + half].map((end) => rafterUnder(size, end) - size.rafter);
    const foot = Math.min(...ends, ...peak) - letter * 0.5;
    return foot - tall > 2 ? [{ x, y: foot - tall + letter * 0.9 }] : [];
  });
  const beside = across(size.wallRight + size.wallThick, frame.width).flatMap((x): Point[] =>
    [3.4, 2.4].map((lift) => ({ x, y: frame.height - letter * lift - tall + letter })),
  );
  // In a small drawing words in the room would hide ceiling, grille and walls.
  const below = fault.y > size.ceiling;
  const room = !size.small
    ? across(below ? fault.x + letter * 0.6 : 0, below ? size.wallRight : frame.width).flatMap(
        (x): Point[] => [
          { x, y: size.ceiling + size.board + letter * 1.5 },
          { x, y: size.bottom - tall + letter * 0.5 },
        ],
      )
    : [];
  const elsewhere = [...over, ...under, ...sky, ...beside];
  return below ? [...room, ...elsewhere] : [...elsewhere, ...room];
}
