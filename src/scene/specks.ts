/**
 * Specks carried by the air. Places are dealt out in time, not in distance, so that specks crowd where air
 * is slow and part where it is fast, as they must when none is lost. They come in from the room and go on
 * outdoors; where air runs back so do they, and where it stands they stand.
 */
import { placeAt, beside } from './layout/centreline.ts';
import { clamp, scatter } from './layout/numbers.ts';
import { ribbonHalf } from './layout/air.ts';
import type { Drawing, Point, Sample } from './types.ts';

/** Slowed for the eye: 1 m/s is drawn as this many times the drawing's metre a second. */
const SLOWED = 0.13;
/** Slower than this air stands, m/s. */
const STANDS = 0.02;
/** The most specks one drawing carries. */
const MOST = 260;

/** A way that specks go, all of it in one direction. */
export interface Course {
  readonly places: readonly Sample[];
  /** 1 along the places, -1 against them, 0 where air stands. */
  readonly way: 1 | 0 | -1;
  /** Seconds of animation from the first place to each. */
  readonly time: readonly number[];
  readonly seconds: number;
  readonly count: number;
  /** Flow in each piece over the most anywhere; all of it when absent. */
  readonly carried: Readonly<Record<string, number>> | undefined;
  /** Distances along between which specks are whole; outside they dwindle. */
  readonly whole: readonly [number, number];
}

const wayOf = (place: Sample) =>
  Math.abs(place.velocity_m_s) < STANDS ? 0 : place.velocity_m_s > 0 ? 1 : -1;

function timed(drawing: Drawing, places: readonly Sample[]): number[] {
  let seconds = 0;
  return places.map((place, index) => {
    const before = places[index - 1];
    if (before) {
      const speed =
        Math.max(0.05, Math.abs(before.velocity_m_s + place.velocity_m_s) / 2) *
        drawing.pixelsPerMetre *
        SLOWED;
      seconds += (place.along - before.along) / speed;
    }
    return seconds;
  });
}

/** Beyond an end air spreads and slows; `sign` is -1 before the first place, 1 behind the last. */
function beyond(end: Sample, start: Point, sign: 1 | -1, reach: number): Sample[] {
  const steps = 10;
  return Array.from({ length: steps }, (_, k) => {
    const far = (reach * (k + 1)) / steps;
    const wide = far / end.full;
    return {
      ...end,
      x: start.x + sign * end.tx * far,
      y: start.y + sign * end.ty * far,
      along: end.along + sign * (Math.hypot(start.x - end.x, start.y - end.y) + far),
      half: end.full * (1 + 0.42 * wide),
      hub: 0,
      velocity_m_s: end.velocity_m_s / (1 + 0.55 * wide),
    };
  });
}

/** The run from room to outdoors, parted wherever air turns round or stands still. */
export function courses(drawing: Drawing): Course[] {
  const run = drawing.centreline;
  const first = run[0];
  const last = run[run.length - 1];
  if (!first || !last) return [];
  const bore = first.full;
  const share = Math.max(0.15, last.share);
  const inward = beyond(first, first, -1, bore * 2.6).reverse();
  const outward = beyond(last, drawing.outlet, 1, bore * (1.4 + 3.4 * share));
  const places = [...(wayOf(first) ? inward : []), ...run, ...(wayOf(last) ? outward : [])];
  const parts: Sample[][] = [];
  for (const place of places) {
    const part = parts[parts.length - 1];
    if (part && wayOf(part[0]!) === wayOf(place)) part.push(place);
    else parts.push([place]);
  }
  const dense = Math.min(
    (drawing.frame.kind === 'wide' ? 2.6 : 2) / bore,
    MOST / (places[places.length - 1]!.along - places[0]!.along || 1),
  );
  const main = parts
    .filter((part) => part.length > 1)
    .map((part): Course => {
      const time = timed(drawing, part);
      return {
        places: part,
        way: wayOf(part[0]!),
        time,
        seconds: time[time.length - 1]!,
        count: Math.round((part[part.length - 1]!.along - part[0]!.along) * dense),
        carried: drawing.trouble?.carried,
        whole: [first.along, last.along],
      };
    });
  return [...main, ...wandering(drawing, main)];
}

/** Specks that leave through a leak or come in at one, as many a second as its share of the flow. */
function wandering(drawing: Drawing, main: readonly Course[]): Course[] {
  const busiest = main.reduce<Course | null>(
    (best, one) => (one.way && one.count > (best?.count ?? 0) ? one : best),
    null,
  );
  if (!busiest) return [];
  const fastest = Math.max(...busiest.places.map((place) => Math.abs(place.velocity_m_s) * place.half));
  return (drawing.trouble?.streams ?? []).map(({ points, share }): Course => {
    let along = 0;
    const model = busiest.places[0]!;
    const places = points.map((point, index): Sample => {
      const before = points[index - 1];
      const a = before ?? point;
      const b = points[index + 1] ?? point;
      if (before) along += Math.hypot(point.x - before.x, point.y - before.y);
      const long = Math.hypot(b.x - a.x, b.y - a.y) || 1;
      return {
        ...model,
        ...point,
        tx: (b.x - a.x) / long,
        ty: (b.y - a.y) / long,
        along,
        piece: '',
        half: model.full * 0.34,
        hub: 0,
        share: 1,
        velocity_m_s: (fastest / model.full) * (0.35 + 0.4 * share),
      };
    });
    const time = timed(drawing, places);
    const seconds = time[time.length - 1] ?? 0;
    const rate = busiest.count / Math.max(0.1, busiest.seconds);
    return {
      places,
      way: 1,
      time,
      seconds,
      count: Math.max(share > 0.004 ? 2 : 0, Math.round(share * rate * seconds)),
      carried: undefined,
      whole: [along * 0.08, along * 0.55],
    };
  });
}

function alongAtTime({ places, time }: Course, wanted: number): number {
  let low = 0;
  let high = time.length - 1;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (time[middle]! <= wanted) low = middle;
    else high = middle;
  }
  const gap = time[high]! - time[low]!;
  const start = places[low]!.along;
  return start + (gap > 0 ? (places[high]!.along - start) * ((wanted - time[low]!) / gap) : 0);
}

export interface Speck {
  readonly x1: number;
  readonly y1: number;
  readonly x2: number;
  readonly y2: number;
}

/** How much of a speck is left: all of it in the run, none where its course ends. */
function left({ places, whole: [from, to] }: Course, along: number): number {
  const start = places[0]!.along;
  const end = places[places.length - 1]!.along;
  if (along < from) return clamp((along - start) / (from - start || 1), 0, 1);
  return along > to ? clamp((end - along) / (end - to || 1), 0, 1) : 1;
}

/** Specks of one course at a moment; `phase` is passages made since the start. */
export function specks(drawing: Drawing, course: Course, phase: number): Speck[] {
  const { count, way } = course;
  const bore = drawing.centreline[0]?.full ?? 10;
  const list: Speck[] = [];
  for (let k = 0; k < count; k += 1) {
    const turn = ((phase % 1) + k / count + scatter(k) * 0.02) % 1;
    const place = placeAt(course.places, alongAtTime(course, (way < 0 ? 1 - turn : turn) * course.seconds));
    // What leaked away before this piece, or has not come in yet, is not carried through it.
    if (course.carried && scatter(k + 900) > (course.carried[place.piece] ?? 1) && way) continue;
    const lane = scatter(k + 500) * 2 - 1;
    const room = Math.max(0, (way ? ribbonHalf(place) : place.half * 0.9) - place.hub - 1.6);
    const off = Math.sign(lane) * place.hub + lane * room;
    const speed = Math.abs(place.velocity_m_s) * drawing.pixelsPerMetre * SLOWED;
    const shown = left(course, place.along);
    if (shown <= 0.02) continue;
    const half = way ? Math.min(bore * 0.5, Math.max(1.4, speed * 0.045)) * shown : 0.5;
    const middle = beside(place, off);
    list.push({
      x1: middle.x - place.tx * half,
      y1: middle.y - place.ty * half,
      x2: middle.x + place.tx * half,
      y2: middle.y + place.ty * half,
    });
  }
  return list;
}

export function paint(
  context: CanvasRenderingContext2D,
  drawing: Drawing,
  list: readonly Speck[],
  ratio: number,
  colour: string,
): void {
  context.setTransform(ratio, 0, 0, ratio, 0, 0);
  context.clearRect(0, 0, drawing.frame.width, drawing.frame.height);
  context.strokeStyle = colour;
  context.lineWidth = drawing.stroke.heavy * (drawing.frame.kind === 'wide' ? 0.95 : 0.75);
  context.lineCap = 'round';
  context.beginPath();
  for (const speck of list) {
    context.moveTo(speck.x1, speck.y1);
    context.lineTo(speck.x2, speck.y2);
  }
  context.stroke();
}
