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
  /** Where the room ends. */
  readonly roomRight: number;
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
  const { frame, size, points, fault, straps, roomRight, width, lines } = setting;
  const letter = size.lettering;
  const tall = letter * (lines === 2 ? 2.36 : 1.3);
  // A projector's letters leave little paper between roof and run: there words stand close over it.
  const gap = letter * (frame.lettering === undefined ? 1.1 : 0.35);
  const half = width / 2;
  // The grille, and the door below it, are no part of the run: words over the run would seem to point at the duct.
  const isLow = fault.y > size.joistTop;
  const inRoom = fault.y > size.ceiling + size.board * 2;
  /** Places across, kept between two edges, the nearest first; none where there is too little room. */
  const across = (from: number, to: number) => {
    const [least, most] = [from + half + 4, to - half - 4];
    if (least > most) return [];
    const all = STEPS.map((step) => clamp(fault.x + step * width * 0.2, least, most));
    return [...new Set(all)].sort((a, b) => Math.abs(a - fault.x) - Math.abs(b - fault.x));
  };
  // Under the run it is the fan's stand that words would hide.
  const posts = isLow ? points.filter(({ hub }) => hub > 0).map(({ x }) => x) : straps;
  const crossed = (x: number) => posts.filter((post) => Math.abs(post - x) < half + 6).length;
  const far = (x: number) => Number(!isLow && Math.abs(x - fault.x) > width * 0.81);
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
    const head = (isLow ? bottom : Math.max(bottom, fault.y)) + letter * 0.6;
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
  // Words in the room would hide what stands there, in a small drawing ceiling and walls too; past its door they
  // hide nothing.
  const past = isLow ? across(roomRight + letter, size.wallRight) : [];
  const room = [...past, ...(size.small || inRoom ? [] : across(0, frame.width))].flatMap((x): Point[] => [
    { x, y: size.ceiling + size.board + letter * (isLow && !inRoom ? 2.2 : 1.5) },
    { x, y: size.bottom - tall + letter * 0.5 },
  ]);
  if (!isLow) return [...over, ...under, ...sky, ...beside, ...room];
  const near = inRoom ? [...room, ...under] : [...under, ...room];
  // A small drawing then rather marks the place and has the words under it.
  return size.small ? near : [...near, ...beside, ...sky, ...over];
}
