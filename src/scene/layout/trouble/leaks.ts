/** Air on its wrong way: strokes and streams out of a leak or in at it, ticks along a leaky wall, wet beneath. */
import type { Leak } from '#physics';
import type { Point, Sample, Stream, TroubleMark } from '../../types.ts';
import { placeAt } from '../centreline.ts';
import { at, clamp, n } from '../numbers.ts';
import type { Site } from './drawer.ts';
import { fanSide, outer, type Joint } from './joints.ts';
import { from, mark, stretchOf, stroke, upward } from './marks.ts';

/** Below this share of what the fan moves a leak is not drawn: a hair's breadth of air. */
const SEEN = 0.0005;
/** From this relative humidity on air is taken to carry steam enough to wet what it meets (drawing only). */
const CARRIES_STEAM = 0.5;

/** The most that passes anywhere in the run, L/s. */
export const most = ({ solution }: Site) =>
  Math.max(1e-9, ...solution.pieces.map(({ flow_L_s }) => Math.abs(flow_L_s)));

/** Strokes on one side of the duct, out of a gap or into it; longer and more of them the more passes. */
function spray(place: Sample, foot: number, side: number, share: number, inward: boolean): string {
  const count = 2 + Math.round(5 * Math.sqrt(share));
  const reach = place.full * (0.5 + 2.4 * Math.sqrt(share));
  const head = Math.max(2.6, place.full * 0.16);
  let path = '';
  for (let k = 0; k < count; k += 1) {
    const u = (k / (count - 1)) * 2 - 1;
    const near = from(place, u * place.full * 0.2, side * (foot + 3));
    const far = from(place, u * reach * 0.7, side * (foot + 3 + reach * (1 - 0.3 * Math.abs(u))));
    path += inward ? stroke(far, near, u * side * 2, head) : stroke(near, far, -u * side * 2, head);
  }
  return path;
}

/** The way specks take through a gap: from the stream's edge to well clear of the duct, or back. */
function way(place: Sample, foot: number, side: number, lean: number, inward: boolean): Point[] {
  const out = place.full * 3.2;
  const points = [0.3, 0.65, 1, 1.4, 1.9, 2.4, 3].map((t) =>
    from(place, lean * place.full * 0.45 * t * t, side * (t <= 1 ? foot * t : foot + ((t - 1) / 2) * out)),
  );
  return inward ? points.reverse() : points;
}

/** Quiet wavy lines on the insulation under a leak, wider the more it lets go. */
function wet(site: Site, x: number, share: number): string {
  const { ceiling, joistTop } = site.size;
  const tall = ceiling - joistTop;
  const half = tall * (0.5 + 2 * Math.sqrt(share));
  const rows = 2 + Math.round(2 * Math.sqrt(share));
  let path = '';
  for (let row = 0; row < rows; row += 1) {
    const y = joistTop + tall * (0.18 + (0.72 * row) / rows);
    const reach = half * (1 - 0.22 * row);
    const beat = Math.max(3, tall * 0.16);
    path += `M${at(x - reach, y)}q${n(beat / 2)} ${n(-beat * 0.55)} ${n(beat)} 0`;
    for (let k = 1; k < (2 * reach) / beat; k += 1) path += `t${n(beat)} 0`;
  }
  return path;
}

const humid = ({ rig }: Site) => (rig.air?.relativeHumidity ?? 0.6) >= CARRIES_STEAM;

function atJoint(site: Site, points: readonly Sample[], leak: Leak, joint: Joint | undefined) {
  const stretch = stretchOf(points, leak.at)!;
  const behind = leak.side === 'discharge';
  const place = placeAt(points, joint?.along ?? (behind ? stretch.from : stretch.to));
  const share = clamp(Math.abs(leak.flow_L_s) / most(site), 0, 1);
  const inward = leak.flow_L_s < 0;
  const foot = outer(site, leak.at, place);
  const down = -upward(place);
  // Tape let go on one side lets air pass on that side; a gap all round on both.
  const sides = joint?.manner === 'open' ? [down] : [down, -down];
  const wetted = !inward && humid(site) && share > 0.01;
  return {
    mark: mark('leak', leak.at, share, {
      air: sides.map((side) => spray(place, foot, side, share / sides.length, inward)).join(''),
      quiet: wetted ? wet(site, place.x, share) : '',
    }),
    streams: sides.map((side): Stream => ({
      key: `${leak.id}/${side}`,
      points: way(place, foot, side, behind === inward ? -0.4 : 0.5, inward),
      share: share / sides.length,
    })),
  };
}

/** A bare end: everything the fan moves comes or goes here, straight on into the roof space. */
function atBareEnd(site: Site, points: readonly Sample[], joint: Joint) {
  const end = fanSide(points, joint);
  const opening = site.solution.pieces.find(
    ({ id }) => id === (joint.way > 0 ? 'bare outlet' : 'bare inlet'),
  );
  const flow = opening?.flow_L_s ?? 0;
  const share = clamp(Math.abs(flow) / most(site), 0, 1);
  const inward = flow * joint.way < 0;
  const reach = end.full * (1.2 + 2.8 * share);
  let air = '';
  const streams: Stream[] = [];
  const count = 3 + Math.round(4 * share);
  for (let k = 0; k < count && share > SEEN; k += 1) {
    const u = (k / (count - 1)) * 2 - 1;
    const near = from(end, joint.way * end.full * 0.35, u * end.full * 0.82);
    const far = from(
      end,
      joint.way * (end.full * 0.35 + reach * (1 - 0.2 * Math.abs(u))),
      u * (end.full * 0.82 + reach * 0.42),
    );
    const head = Math.max(3, end.full * 0.18);
    air += inward ? stroke(far, near, 0, head) : stroke(near, far, 0, head);
    if (k % 2) continue;
    const route = [0, 0.4, 0.8, 1.2, 1.6].map((t) =>
      from(end, joint.way * reach * t, u * (end.full * 0.8 + reach * 0.42 * t)),
    );
    streams.push({
      key: `${joint.piece}/bare/${k}`,
      points: inward ? route.reverse() : route,
      share: share / Math.ceil(count / 2),
    });
  }
  const wetted = !inward && humid(site) && share > 0.01;
  return {
    mark: mark('leak', joint.piece, share, {
      air,
      quiet: wetted ? wet(site, from(end, joint.way * reach * 0.6, 0).x, share) : '',
    }),
    streams,
  };
}

/** Spread leakage: a small tick each side of the duct at every place it was reckoned at. */
function alongWall(site: Site, points: readonly Sample[], piece: string, own: readonly Leak[]): TroubleMark {
  const stretch = stretchOf(points, piece)!;
  let air = '';
  let sum = 0;
  own.forEach((leak, index) => {
    const share = clamp(Math.abs(leak.flow_L_s) / most(site), 0, 1);
    if (share < SEEN / own.length) return;
    sum += share;
    const place = placeAt(points, stretch.from + ((stretch.to - stretch.from) * (index + 0.5)) / own.length);
    const foot = outer(site, piece, place) + 2;
    const long = place.full * (0.16 + 2.2 * Math.sqrt(share));
    for (const side of [-1, 1]) {
      const near = from(place, 0, side * foot);
      const far = from(place, long * 0.35, side * (foot + long));
      const head = Math.max(2, place.full * 0.12);
      air += leak.flow_L_s < 0 ? stroke(far, near, 0, head) : stroke(near, far, 0, head);
    }
  });
  return mark('seams', piece, sum, { air });
}

export function leaks(site: Site, points: readonly Sample[], joints: readonly Joint[]) {
  const marks: TroubleMark[] = [];
  const streams: Stream[] = [];
  const walls = new Map<string, Leak[]>();
  for (const joint of joints) {
    if (joint.manner !== 'off') continue;
    const found = atBareEnd(site, points, joint);
    marks.push(found.mark);
    streams.push(...found.streams);
  }
  for (const leak of site.solution.leaks) {
    if (!stretchOf(points, leak.at)) continue;
    if (!leak.id.endsWith('/joint')) {
      walls.set(leak.at, [...(walls.get(leak.at) ?? []), leak]);
      continue;
    }
    if (Math.abs(leak.flow_L_s) < SEEN * most(site)) continue;
    const found = atJoint(
      site,
      points,
      leak,
      joints.find(({ piece }) => piece === leak.at),
    );
    marks.push(found.mark);
    streams.push(...found.streams);
  }
  for (const [piece, own] of walls) {
    const found = alongWall(site, points, piece, own);
    if (found.air) marks.push(found);
  }
  return { marks, streams };
}
