/** Joints that let go: tape peels, the gap opens as far as was reckoned, and off altogether the end hangs. */
import type { FaultKind } from '#physics';
import type { Point, Sample, Trouble, TroubleMark } from '../../types.ts';
import { beside, placeAt } from '../centreline.ts';
import { ribbonHalf } from '../air.ts';
import { clamp, line } from '../numbers.ts';
import { styleOf, WALL } from '../walls.ts';
import type { Site } from './drawer.ts';
import { across, from, mark, stretchOf, upward } from './marks.ts';

export interface Joint {
  readonly piece: string;
  readonly along: number;
  /** From the joint into its piece: 1 with the flow, -1 against it. */
  readonly way: 1 | -1;
  readonly gap_mm: number;
  readonly manner: 'weep' | 'open' | 'apart' | 'off';
}

/** Tape peels the whole way by the time a joint weeps this much, mm. */
const PEELED_MM = 0.5;

/** Every joint that is not sound, at the end of its piece nearer the fan. */
export function joints(site: Site, points: readonly Sample[]): Joint[] {
  const { run, faults = [] } = site.rig;
  const fan = run.findIndex(({ kind }) => kind === 'fan');
  return run.flatMap((piece, index): Joint[] => {
    const shape = site.shapes.get(piece.id) ?? {};
    const stretch = stretchOf(points, piece.id);
    if (!stretch || (!shape.jointGap_mm && !shape.jointOff)) return [];
    const has = (kind: FaultKind) =>
      faults.some((fault) => fault.at === piece.id && fault.kind === kind && fault.amount > 0);
    const gap_mm = shape.jointGap_mm ?? 0;
    const manner = shape.jointOff
      ? 'off'
      : has('joint-off')
        ? 'apart'
        : has('joint-open') || gap_mm > PEELED_MM
          ? 'open'
          : 'weep';
    const behind = index > fan;
    return [
      { piece: piece.id, along: behind ? stretch.from : stretch.to, way: behind ? 1 : -1, gap_mm, manner },
    ];
  });
}

/** The fan's side of a joint: the run as it stands there, walls and all. */
export function fanSide(points: readonly Sample[], joint: Joint): Sample {
  const index = points.findIndex(({ piece }) => piece === joint.piece);
  const last = points.findLastIndex(({ piece }) => piece === joint.piece);
  return points[joint.way > 0 ? Math.max(0, index - 1) : Math.min(points.length - 1, last + 1)]!;
}

export const outer = (site: Site, piece: string, place: Sample) =>
  place.half + place.full * 2 * WALL[styleOf(site.rig.run.find(({ id }) => id === piece)!)];

/** A strip of tape let go: it stands off the duct and curls over, more of it the further it has peeled. */
function curl(root: Point, out: Point, back: Point, long: number, turn: number, wide: number): string {
  const inner: Point[] = [];
  const edge: Point[] = [];
  let { x, y } = root;
  const steps = 12;
  for (let k = 0; k <= steps; k += 1) {
    const t = k / steps;
    const angle = turn * t ** 1.4;
    const dx = out.x * Math.cos(angle) + back.x * Math.sin(angle);
    const dy = out.y * Math.cos(angle) + back.y * Math.sin(angle);
    inner.push({ x, y });
    const thick = wide * (1 - 0.45 * t);
    edge.push({ x: x - dy * thick, y: y + dx * thick });
    x += (dx * long) / steps;
    y += (dy * long) / steps;
  }
  return line([...inner, ...edge.reverse()], true);
}

function tape(place: Sample, out: number, joint: Joint, side: number, peeled: number) {
  const band = Math.max(3.5, place.full * 0.3);
  const unit = (point: Point) => ({ x: point.x - place.x, y: point.y - place.y });
  const down = unit(from(place, 0, side));
  const back = unit(from(place, -joint.way, 0));
  const root = from(place, -joint.way * band * 0.4, side * out);
  const held = out * (1 - 0.55 * peeled);
  return {
    // What still holds lies round the duct from the other side.
    band: line(
      [
        from(place, -band, -side * (out + 1.2)),
        from(place, band, -side * (out + 1.2)),
        from(place, band, -side * (out - held * 2 + 1)),
        from(place, -band, -side * (out - held * 2 + 1)),
      ],
      true,
    ),
    strip: curl(
      root,
      down,
      back,
      place.full * (0.25 + 1.35 * peeled),
      0.5 + 3.6 * peeled,
      Math.max(1.8, place.full * 0.11) * -joint.way * side,
    ),
  };
}

/** A gap as wide as reckoned: all on one side where tape let go on one side, else the same all round. */
function gapMark(site: Site, points: readonly Sample[], joint: Joint): TroubleMark {
  const place = placeAt(points, joint.along);
  const out = outer(site, joint.piece, place);
  const wide = across(site, joint.gap_mm / 1000);
  const side = -upward(place);
  const high = joint.manner === 'open' ? 0 : wide;
  const low = joint.manner === 'open' ? 2 * wide : wide;
  const inside = (aside: number) => {
    const t = (aside / out + 1) / 2;
    return placeAt(points, joint.along + joint.way * (high + (low - high) * t));
  };
  const near = (aside: number) => beside(place, side * aside);
  const far = (aside: number) => {
    const here = inside(aside);
    return beside(here, side * aside);
  };
  const reach = out + 1.5;
  const ribbon = ribbonHalf(place);
  const peeled = joint.manner === 'weep' ? clamp(joint.gap_mm / PEELED_MM, 0, 1) : 1;
  const strip = tape(place, out, joint, side, peeled);
  const quad = (aside: number) => line([near(-aside), far(-aside), far(aside), near(aside)], true);
  const kinds = { weep: 'joint-weep', open: 'joint-open', apart: 'joint-off', off: 'joint-off' } as const;
  return mark(kinds[joint.manner], joint.piece, wide, {
    cover: wide > 0.4 ? quad(reach) : '',
    ribbon: wide > 0.4 ? quad(ribbon) : '',
    heavy: line([near(-out), near(out)]) + line([far(-out), far(out)]),
    body: strip.strip + (joint.manner === 'weep' ? strip.band : ''),
  });
}

/** Off altogether: a bare collar at the fan's side, and the duct's own mouth hanging open. */
function offMark(site: Site, points: readonly Sample[], joint: Joint): TroubleMark {
  const end = fanSide(points, joint);
  const own = points.filter(({ piece }) => piece === joint.piece);
  const mouth = joint.way > 0 ? own[0]! : own[own.length - 1]!;
  const out = end.half + end.full * 0.2;
  const hanging = outer(site, joint.piece, mouth);
  const rim = (place: Sample, reach: number) => line([beside(place, -reach), beside(place, reach)]);
  const side = -upward(end);
  const wide = Math.hypot(mouth.x - end.x, mouth.y - end.y);
  const strip = tape(mouth, hanging, { ...joint, way: joint.way > 0 ? -1 : 1 }, -side, 1);
  return mark('joint-off', joint.piece, wide, {
    cover: line(
      [beside(end, -out - 2), beside(mouth, -hanging - 2), beside(mouth, hanging + 2), beside(end, out + 2)],
      true,
    ),
    heavy: rim(end, out) + rim(mouth, hanging),
    body: strip.strip,
  });
}

/** Where words about a joint may point: the upper side of the run at its end nearer the fan. */
export function jointSpots(site: Site, points: readonly Sample[], found: readonly Joint[]): Trouble['spots'] {
  return found.flatMap((joint) => {
    const end = joint.manner === 'off' ? fanSide(points, joint) : placeAt(points, joint.along);
    const at = from(end, 0, upward(end) * (outer(site, joint.piece, end) + 2));
    return (['joint-weep', 'joint-open', 'joint-off'] as const).map((kind) => ({
      piece: joint.piece,
      kind,
      at,
    }));
  });
}

export const jointMarks = (site: Site, points: readonly Sample[], found: readonly Joint[]): TroubleMark[] =>
  found.map((joint) =>
    joint.manner === 'off' ? offMark(site, points, joint) : gapMark(site, points, joint),
  );
