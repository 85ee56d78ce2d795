/** The fan in section: swelling casing, conical hub with motor inside, swept blades, straightening vanes, feet. */
import type { Crimp, FanDrawing, Sample } from '../types.ts';
import { beside, placeAt } from './centreline.ts';
import { hub as hubAt, type Extent, type Narrowing } from './bore.ts';
import { at, line, rectangle, segment } from './numbers.ts';
import type { Sizes } from './sizes.ts';

/** A thin blade from hub to casing, leaning with the flow. */
function blade(
  points: readonly Sample[],
  extent: Extent,
  start: number,
  sweep: number,
  side: number,
  thick: number,
): string {
  const place = (t: number) => placeAt(points, extent.from + (extent.to - extent.from) * t);
  const foot = place(start);
  const tip = place(start + sweep);
  const a = beside(foot, side * foot.hub);
  const b = beside(tip, side * (tip.half - 1));
  const bend = { x: a.x + (b.x - a.x) * 0.15, y: a.y + (b.y - a.y) * 0.65 };
  return `M${at(a.x, a.y)}Q${at(bend.x, bend.y)} ${at(b.x, b.y)}L${at(b.x + thick, b.y)}Q${at(bend.x + thick * 1.8, bend.y)} ${at(a.x + thick * 1.3, a.y)}Z`;
}

/** A fan that stands askew is drawn level and turned about its middle; `turn` is an SVG transform, empty when level. */
export function fan(piece: string, points: readonly Sample[], extent: Extent, size: Sizes): FanDrawing {
  const own = points.filter((point) => point.piece === piece);
  const tilt = Math.atan2(own[own.length - 1]!.y - own[0]!.y, own[own.length - 1]!.x - own[0]!.x);
  if (Math.abs(tilt) < 0.01) return { ...level(piece, points, extent, size), turn: '' };
  const middle = placeAt(points, (extent.from + extent.to) / 2);
  const untilted = points.map((point) => {
    if (point.piece !== piece) return point;
    const ahead = point.along - middle.along;
    return { ...point, x: middle.x + ahead, y: middle.y, tx: 1, ty: 0 };
  });
  return {
    ...level(piece, untilted, extent, size),
    // What bears it stands square to the house, so it bears nothing here.
    feet: '',
    bearer: '',
    turn: `rotate(${((tilt * 180) / Math.PI).toFixed(1)} ${at(middle.x, middle.y)})`,
  };
}

function level(
  piece: string,
  points: readonly Sample[],
  extent: Extent,
  size: Sizes,
): Omit<FanDrawing, 'turn'> {
  const long = extent.to - extent.from;
  const place = (t: number) => placeAt(points, extent.from + long * t);
  const own = points.filter((point) => point.piece === piece);
  const full = own[0]!.full;
  const thick = full * 0.16;
  const middle = place(0.5);
  const x0 = own[0]!.x;
  const y = middle.y;
  const shell = own.map((point) => Math.max(point.half, point.full) + thick);
  const casing = line(
    [...own.map((p, k) => beside(p, -shell[k]!)), ...own.map((p, k) => beside(p, shell[k]!)).reverse()],
    true,
  );
  const collar = (t: number) => {
    const p = place(t);
    const out = full + thick + full * 0.22;
    return rectangle(p.x - full * 0.09, p.y - out, full * 0.18, out * 2);
  };
  const nose = Array.from({ length: 41 }, (_, k) => 0.2 + (0.7 * k) / 40).map((t) => ({
    ...place(t),
    hub: hubAt(t) * full,
  }));
  const hub = line(
    [...nose.map((p) => beside(p, -p.hub)), ...nose.map((p) => beside(p, p.hub)).reverse()],
    true,
  );
  let blades = '';
  let vanes = '';
  for (const side of [-1, 1]) {
    for (const start of [0.27, 0.35, 0.43]) blades += blade(points, extent, start, 0.085, side, full * 0.09);
    for (const t of [0.6, 0.68]) {
      const a = place(t);
      const b = place(t + 0.05);
      const foot = beside(a, side * a.hub);
      const tip = beside(b, side * b.half);
      vanes += `M${at(foot.x, foot.y)}Q${at(tip.x, foot.y + (tip.y - foot.y) * 0.4)} ${at(tip.x, tip.y)}`;
    }
  }
  const core = full * 0.42;
  const motorX = x0 + long * 0.5;
  const motorLong = long * 0.22;
  const winding = core * 0.62;
  const bearerTop = size.joistTop - size.board * 1.1;
  const bottom = (t: number) => y + place(t).half + thick;
  const feet =
    bearerTop - bottom(0.5) > 3 && x0 + long * 0.9 < size.wallRight
      ? [0.3, 0.64]
          .map((t) => {
            const x = x0 + long * t;
            const w = full * 0.12;
            return (
              segment(x - w, bottom(t), x - w, bearerTop) +
              segment(x + w, bottom(t), x + w, bearerTop) +
              segment(x - w * 2.4, bearerTop - 1, x + w * 2.4, bearerTop - 1)
            );
          })
          .join('')
      : '';
  return {
    piece,
    casing,
    hub,
    blades,
    vanes,
    feet,
    collars: collar(0.02) + collar(0.98),
    motor: rectangle(motorX, y - core, motorLong, core * 2),
    windings:
      rectangle(motorX + motorLong * 0.14, y - core, motorLong * 0.72, winding) +
      rectangle(motorX + motorLong * 0.14, y + core - winding, motorLong * 0.72, winding),
    axis: segment(x0 - full * 0.4, y, x0 + long + full * 0.4, y),
    bearer: feet ? rectangle(x0 + long * 0.12, bearerTop, long * 0.76, size.board * 1.1) : '',
  };
}

/** The pinch before the fan: its open height, and folds running out of it. */
export function crimp(narrow: Narrowing, points: readonly Sample[]): Crimp {
  const here = placeAt(points, narrow.along);
  let folds = '';
  for (const side of [-1, 1]) {
    for (const [reach, rise] of [
      [0.5, 0.86],
      [0.95, 0.62],
      [0.8, 0.3],
    ] as const) {
      for (const way of [-1, 1]) {
        const root = beside(here, side * here.half * 0.98);
        const far = placeAt(points, narrow.along + way * narrow.reach * reach);
        const end = beside(far, side * (here.half + (far.half - here.half) * rise));
        folds += `M${at(root.x + way, root.y)}Q${at((root.x + end.x) / 2, root.y)} ${at(end.x, end.y)}`;
      }
    }
  }
  return { x: here.x, y: here.y, height: here.half * 2, folds };
}
