/** Leads the centreline where a fault leads it: into a tight bend, round a fan that faces the wrong way, down to hang. */
import type { Point } from '../../types.ts';
import { finish, type Raw } from '../centreline.ts';
import { extents } from '../bore.ts';
import { bump, clamp } from '../numbers.ts';
import type { Site } from './drawer.ts';
import { radians, upward } from './marks.ts';
import { narrow } from './necks.ts';

/** A place and the way the duct runs there. */
interface Pose extends Point {
  readonly tx: number;
  readonly ty: number;
}

const turned = ({ x, y, tx, ty }: Pose, angle: number): Pose => ({
  x,
  y,
  tx: tx * Math.cos(angle) - ty * Math.sin(angle),
  ty: tx * Math.sin(angle) + ty * Math.cos(angle),
});

/** Points of a smooth curve from one pose to another. */
function curve(a: Pose, b: Pose, tight: number): Point[] {
  const reach = Math.hypot(b.x - a.x, b.y - a.y) * tight;
  return Array.from({ length: 41 }, (_, k) => {
    const t = k / 40;
    const u = 1 - t;
    const blend = (p: number, dp: number, q: number, dq: number) =>
      u ** 3 * p + 3 * u * u * t * (p + dp * reach) + 3 * u * t * t * (q - dq * reach) + t ** 3 * q;
    return { x: blend(a.x, a.tx, b.x, b.tx), y: blend(a.y, a.ty, b.y, b.ty) };
  });
}

/** Points of an arc that ends at a pose, having turned by `angle` (radians, clockwise on the page). */
function arcTo(end: Pose, angle: number, radius: number): { points: Point[]; start: Pose } {
  const centre = { x: end.x - end.ty * radius, y: end.y + end.tx * radius };
  const points = Array.from({ length: 13 }, (_, k) => {
    const back = angle * (1 - k / 12);
    const { tx, ty } = turned(end, -back);
    return { x: centre.x + ty * radius, y: centre.y - tx * radius };
  });
  return { points, start: { ...turned(end, -angle), ...points[0]! } };
}

/** Spreads the points from `first` to `last` evenly along a new path. */
function lay(points: Raw[], first: number, last: number, path: readonly Point[]): void {
  const far = [0];
  for (let k = 1; k < path.length; k += 1)
    far.push(far[k - 1]! + Math.hypot(path[k]!.x - path[k - 1]!.x, path[k]!.y - path[k - 1]!.y));
  const whole = far[far.length - 1]!;
  const start = points[first]!.along;
  const long = points[last]!.along - start || 1;
  let k = 1;
  for (let index = first; index <= last; index += 1) {
    const wanted = ((points[index]!.along - start) / long) * whole;
    while (k < far.length - 1 && far[k]! < wanted) k += 1;
    const gap = far[k]! - far[k - 1]! || 1;
    const t = clamp((wanted - far[k - 1]!) / gap, 0, 1);
    const a = path[k - 1]!;
    const b = path[k]!;
    points[index] = { ...points[index]!, x: a.x + (b.x - a.x) * t, y: a.y + (b.y - a.y) * t };
  }
}

/** Bores of duct over which a new bend is led back to the old line, and the radius of a tight one. */
const LEAD = 4.2;
const TIGHT = 0.72;

/** First point of the stretch of duct before the fan that a bend may move, or the last behind it. */
function lead(points: readonly Raw[], edge: number, way: 1 | -1, reach: number): number {
  const end = points[edge]!.along;
  let index = edge;
  while (points[index + way] && Math.abs(points[index + way]!.along - end) <= reach) index += way;
  return index;
}

/** A fan across the run: it turns about its middle, and duct is led to both its ends. */
function atFan(site: Site, points: Raw[], id: string): void {
  const shape = site.shapes.get(id) ?? {};
  const across = radians(shape.doubledBack_deg ?? 0);
  const bent = radians(shape.inletBend_deg ?? 0);
  if (across <= 0 && bent <= 0) return;
  const first = points.findIndex(({ piece }) => piece === id);
  const last = points.findLastIndex(({ piece }) => piece === id);
  const bore = site.bores.get(id)!;
  const before = points.slice();
  const middle = before[Math.round((first + last) / 2)]!;
  for (let index = first; index <= last; index += 1) {
    const p = before[index]!;
    const moved = turned({ x: 0, y: 0, tx: p.x - middle.x, ty: p.y - middle.y }, -across);
    points[index] = { ...p, x: middle.x + moved.tx, y: middle.y + moved.ty };
  }
  const pose = (index: number): Pose => ({
    ...turned({ x: 0, y: 0, tx: middle.tx, ty: middle.ty }, -across),
    x: points[index]!.x,
    y: points[index]!.y,
  });
  const room = (edge: number) => Math.abs(before[edge]!.along - before[first]!.along) * 0.85;
  if (first > 1) {
    const reach = Math.min(bore * LEAD, room(0));
    const begin = lead(before, first - 1, -1, reach);
    const straight = clamp(straightBefore(site, id) * site.scale.pixelsPerMetre, 0, reach * 0.4);
    const inlet = pose(first);
    const flange: Pose = {
      ...inlet,
      x: inlet.x - inlet.tx * straight,
      y: inlet.y - inlet.ty * straight,
    };
    const arc = arcTo(flange, bent, bore * TIGHT);
    const path = [...curve(before[begin]!, arc.start, 0.42), ...arc.points.slice(1), inlet];
    lay(points, begin, first - 1, path);
  }
  if (across > 0 && last < points.length - 2) {
    const wall = before.findIndex(({ piece }) =>
      site.rig.run.some((p) => p.id === piece && p.kind === 'terminal'),
    );
    const end = wall > last ? wall - 1 : points.length - 1;
    const reach = Math.min(bore * LEAD, (before[end]!.along - before[last]!.along) * 0.85);
    const finishAt = lead(before, last + 1, 1, reach);
    lay(points, last + 1, finishAt, curve(pose(last), before[finishAt]!, 0.5));
  }
}

function straightBefore({ rig }: Site, id: string): number {
  const bends = (rig.faults ?? []).filter(
    (fault) => fault.kind === 'bend-at-fan' && fault.at === id && fault.amount > 0,
  );
  return bends.length ? Math.min(...bends.map((fault) => fault.straight_m ?? 0)) : 0;
}

/** The loose end of a duct that is off: it has slid back and hangs from where it is next held. */
function hangLoose(site: Site, points: Raw[], id: string, behindFan: boolean): void {
  const first = points.findIndex(({ piece }) => piece === id);
  const last = points.findLastIndex(({ piece }) => piece === id);
  if (first < 0 || last - first < 3) return;
  const bore = site.bores.get(id)!;
  const long = points[last]!.along - points[first]!.along;
  const reach = Math.min(long * 0.8, bore * 3);
  const edge = behindFan ? first : last;
  const hinge = clamp(lead(points, edge, behindFan ? 1 : -1, reach), first, last);
  const held = points[hinge]!;
  const end = points[edge]!;
  const along = { x: (held.x - end.x) / reach, y: (held.y - end.y) / reach };
  // Down; a duct that stands leans aside instead.
  const down = Math.abs(along.y) > 0.75 ? { x: 0.8, y: 0.3 } : { x: 0, y: 1 };
  const drop = Math.min(reach * 0.8, Math.max(bore * 0.4, site.size.joistTop - bore * 0.75 - end.y));
  const mouth: Pose = {
    x: end.x + along.x * reach * 0.42 + down.x * drop,
    y: end.y + along.y * reach * 0.42 + down.y * drop,
    tx: along.x * 0.55 - down.x * 0.83,
    ty: along.y * 0.55 - down.y * 0.83,
  };
  const size = Math.hypot(mouth.tx, mouth.ty) || 1;
  // Both seen with the piece: from its mouth to where it is held.
  const sign = behindFan ? 1 : -1;
  const inner: Pose = { x: held.x, y: held.y, tx: held.tx * sign, ty: held.ty * sign };
  const path = curve({ ...mouth, tx: mouth.tx / size, ty: mouth.ty / size }, inner, 0.4);
  if (behindFan) lay(points, first, hinge, path);
  else lay(points, hinge, last, path.reverse());
}

/** A load presses duct down onto what bears it, and dents come from one side and the other: the middle gives way. */
function pressed(site: Site, points: Raw[]): void {
  const reach = extents(points);
  for (const neck of narrow(site, points)) {
    const shape = site.shapes.get(neck.piece) ?? {};
    const load = neck.flat !== undefined && shape.crushedOpenArea !== undefined && neck.area !== undefined;
    const dent = neck.flat === undefined;
    if (!load && !dent) continue;
    if (shape.boreRatio !== undefined && neck.ratio === shape.boreRatio) continue;
    const deep = (site.bores.get(neck.piece)! / 2) * (1 - neck.ratio);
    const start = reach.get(neck.piece)!.from;
    const side = dent && Math.round((neck.along - start) / (neck.reach * 1.9)) % 2 ? -1 : 1;
    for (let index = 0; index < points.length; index += 1) {
      const point = points[index]!;
      if (point.piece !== neck.piece) continue;
      const far = (Math.abs(point.along - neck.along) - (neck.flat ?? 0)) / neck.reach;
      if (far >= 1) continue;
      const give = deep * bump(Math.max(0, far)) * side * -upward(point);
      points[index] = { ...point, x: point.x - point.ty * give, y: point.y + point.tx * give };
    }
  }
}

/** Where a duct has come off the line jumps, and each side keeps its own direction. */
function parted(points: Raw[], bores: ReadonlyMap<string, number>): Raw[] {
  for (let index = 2; index < points.length - 2; index += 1) {
    const a = points[index - 1]!;
    const b = points[index]!;
    if (a.piece === b.piece || Math.hypot(b.x - a.x, b.y - a.y) < (bores.get(b.piece) ?? 10) * 0.2) continue;
    const before = points[index - 2]!;
    const behind = points[index + 1]!;
    points[index - 1] = { ...a, tx: before.tx, ty: before.ty };
    points[index] = { ...b, tx: behind.tx, ty: behind.ty };
  }
  return points;
}

export function bend(site: Site, sound: Raw[]): Raw[] {
  const { run } = site.rig;
  const fan = run.findIndex(({ kind }) => kind === 'fan');
  const reach = extents(sound);
  const off = run.filter(({ id }) => site.shapes.get(id)?.jointOff && reach.has(id));
  const fanShape = site.shapes.get(run[fan]?.id ?? '') ?? {};
  const harmed = run.some(({ id }) => {
    const shape = site.shapes.get(id) ?? {};
    return shape.crushedOpenArea !== undefined || shape.dentOpenArea !== undefined;
  });
  if (!off.length && !harmed && !fanShape.doubledBack_deg && !fanShape.inletBend_deg) return sound;
  const points = sound.slice();
  if (fan >= 0) atFan(site, points, run[fan]!.id);
  const led = finish(points);
  if (harmed) pressed(site, led);
  for (const piece of off) hangLoose(site, led, piece.id, run.indexOf(piece) > fan);
  return parted(finish(led), site.bores);
}
