/** Curves as the charts need them: cut at the frame, read between their points, made into paths. */
import { curveLinear, curveMonotoneX, line } from 'd3';
import type { CurvePoint } from '#physics';
import type { Segment } from './placeLabels.ts';

export interface Spot {
  readonly x: number;
  readonly y: number;
}

/** Points that can be drawn: finite, from left to right, one a place. */
export function tidy(points: readonly CurvePoint[]): CurvePoint[] {
  const sorted = points
    .filter((point) => Number.isFinite(point.flow_L_s) && Number.isFinite(point.pressure_Pa))
    .sort((a, b) => a.flow_L_s - b.flow_L_s);
  return sorted.filter((point, index) => index === 0 || point.flow_L_s > sorted[index - 1]!.flow_L_s);
}

/** Pressure of the curve at a flow, straight between points; null outside them. Points as from `tidy`. */
export function pressureAt(points: readonly CurvePoint[], flow_L_s: number): number | null {
  const next = points.findIndex((point) => point.flow_L_s >= flow_L_s);
  const right = points[next];
  if (!right) return null;
  if (right.flow_L_s === flow_L_s) return right.pressure_Pa;
  const left = points[next - 1];
  if (!left) return null;
  const share = (flow_L_s - left.flow_L_s) / (right.flow_L_s - left.flow_L_s);
  return left.pressure_Pa + share * (right.pressure_Pa - left.pressure_Pa);
}

/** The first stretch of the line that lies inside the frame, cut where it crosses the frame's edge. */
export function clip(spots: readonly Spot[], width: number, height: number): Spot[] {
  const kept: Spot[] = [];
  for (let index = 1; index < spots.length; index += 1) {
    const from = spots[index - 1]!;
    const to = spots[index]!;
    const part = within(from, to, width, height);
    if (!part) {
      if (kept.length > 0) break;
      continue;
    }
    if (kept.length === 0) kept.push(part[0]);
    kept.push(part[1]);
    if (part[1] !== to) break;
  }
  return kept;
}

function within(from: Spot, to: Spot, width: number, height: number): [Spot, Spot] | undefined {
  let enter = 0;
  let leave = 1;
  const dx = to.x - from.x;
  const dy = to.y - from.y;
  for (const [slope, reach] of [
    [-dx, from.x],
    [dx, width - from.x],
    [-dy, from.y],
    [dy, height - from.y],
  ] as const) {
    if (slope === 0) {
      if (reach < 0) return undefined;
      continue;
    }
    if (slope < 0) enter = Math.max(enter, reach / slope);
    else leave = Math.min(leave, reach / slope);
  }
  if (enter > leave) return undefined;
  const at = (share: number): Spot => ({ x: from.x + share * dx, y: from.y + share * dy });
  return [enter === 0 ? from : at(enter), leave === 1 ? to : at(leave)];
}

const smooth = line<Spot>(
  (spot) => spot.x,
  (spot) => spot.y,
)
  .curve(curveMonotoneX)
  .digits(1);
const straight = line<Spot>(
  (spot) => spot.x,
  (spot) => spot.y,
)
  .curve(curveLinear)
  .digits(1);

export function smoothPath(spots: readonly Spot[]): string {
  return spots.length > 1 ? (smooth(spots) ?? '') : '';
}

export function straightPath(spots: readonly Spot[]): string {
  return spots.length > 1 ? (straight(spots) ?? '') : '';
}

/** The line as obstacles for labels, thinned so that a reveal stays cheap. */
export function segmentsOf(spots: readonly Spot[], owner?: string, most = 28): Segment[] {
  const stride = Math.max(1, Math.ceil((spots.length - 1) / most));
  const thin = spots.filter((_, index) => index % stride === 0 || index === spots.length - 1);
  return thin
    .slice(1)
    .map((to, index) => ({ x1: thin[index]!.x, y1: thin[index]!.y, x2: to.x, y2: to.y, owner }));
}

/** The spot a share of the way along the line by x. */
export function spotAt(spots: readonly Spot[], x: number): Spot | undefined {
  const next = spots.findIndex((spot) => spot.x >= x);
  const right = spots[next];
  if (!right) return spots[spots.length - 1];
  const left = spots[next - 1];
  if (!left) return right;
  const share = right.x === left.x ? 0 : (x - left.x) / (right.x - left.x);
  return { x, y: left.y + share * (right.y - left.y) };
}
