/** Half the open bore at every sample: each piece's own, narrowed by crimp and ties, swollen in the fan. */
import type { Piece, Solution } from '#physics';
import type { Sample } from '../types.ts';
import type { Raw } from './centreline.ts';
import { bump, clamp, ease, lerp } from './numbers.ts';

export interface Narrowing {
  readonly piece: string;
  readonly along: number;
  readonly reach: number;
  /** Half the length over which it is all there, before it eases out over `reach`; a point when absent. */
  readonly flat?: number;
  /** Open height over bore. */
  readonly ratio: number;
  /** Open area over full area, which sets the speed. */
  readonly area: number;
}

export interface Extent {
  readonly from: number;
  readonly to: number;
}

/** First and last distance along of every piece. */
export function extents(points: readonly Raw[]): Map<string, Extent> {
  const found = new Map<string, Extent>();
  for (const point of points) {
    const own = found.get(point.piece);
    found.set(point.piece, { from: own?.from ?? point.along, to: point.along });
  }
  return found;
}

/** How the mixed-flow fan's casing swells, and its hub, over its length 0 to 1. */
export const casing = (t: number) => 1 + 0.5 * ease((t - 0.1) / 0.3) * (1 - ease((t - 0.62) / 0.3));
export const hub = (t: number) => {
  if (t <= 0.2 || t >= 0.9) return 0;
  if (t < 0.52) return 0.78 * Math.sqrt(1 - ((0.52 - t) / 0.32) ** 2);
  return 0.78 * (1 - ease((t - 0.7) / 0.22));
};

export function samples(
  run: readonly Piece[],
  points: readonly Raw[],
  bores: ReadonlyMap<string, number>,
  /** Bore at the far end of every piece that changes it. */
  boresTo: ReadonlyMap<string, number>,
  reach: ReadonlyMap<string, Extent>,
  narrowings: readonly Narrowing[],
  solution: Solution,
  healthy: Solution,
): Sample[] {
  const results = new Map(solution.pieces.map((piece) => [piece.id, piece]));
  const before = new Map(healthy.pieces.map((piece) => [piece.id, piece]));
  const fanId = run.find((piece) => piece.kind === 'fan')?.id;
  const sudden = new Set(
    run.flatMap((piece) => (piece.kind === 'reducer' && piece.form === 'sudden' ? [piece.id] : [])),
  );
  return points.map((point) => {
    const extent = reach.get(point.piece)!;
    const t = (point.along - extent.from) / (extent.to - extent.from || 1);
    const inFan = point.piece === fanId;
    const own = (bores.get(point.piece) ?? 0) / 2;
    const end = boresTo.get(point.piece);
    let full = own;
    // A step is made within a seventh of its length, so that its two faces keep their samples.
    if (end !== undefined)
      full = lerp(own, end / 2, sudden.has(point.piece) ? clamp((t - 0.43) / 0.14, 0, 1) : t);
    let half = full * (inFan ? casing(t) : 1);
    const middle = inFan ? full * hub(t) : 0;
    let area = inFan ? (half ** 2 - middle ** 2) / full ** 2 : 1;
    for (const narrow of narrowings) {
      const far = (Math.abs(point.along - narrow.along) - (narrow.flat ?? 0)) / narrow.reach;
      if (far >= 1) continue;
      const near = bump(Math.max(0, far));
      half *= 1 - (1 - narrow.ratio) * near;
      area *= 1 - (1 - narrow.area) * near;
    }
    const result = results.get(point.piece);
    const flow = result?.flow_L_s ?? solution.flow_L_s.fan;
    const usual = before.get(point.piece)?.flow_L_s ?? healthy.flow_L_s.fan;
    // Spelled out: spreading hundreds of points each frame costs more than all the sums above.
    return {
      x: point.x,
      y: point.y,
      tx: point.tx,
      ty: point.ty,
      s_m: point.s_m,
      along: point.along,
      piece: point.piece,
      half,
      full,
      hub: middle,
      share: usual > 0 ? clamp(Math.abs(flow) / usual, 0, 1) : 0,
      velocity_m_s: (result?.velocity_m_s ?? 0) / Math.max(area, 0.05),
    };
  });
}
