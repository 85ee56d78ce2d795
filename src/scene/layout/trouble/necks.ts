/** Where a crush, dents or a size too small take from the bore, each by the area the engine reckoned. */
import type { Narrowing } from '../bore.ts';
import { extents } from '../bore.ts';
import type { Raw } from '../centreline.ts';
import type { Site } from './drawer.ts';

/** Height over bore that is left of a flat oval of the same perimeter with this share of the area. */
export const heightLeft = (open: number) => 1 - Math.sqrt(Math.max(0, 1 - open));

/** Where a load lies: on the flattest spot of the middle half of the piece, so that a box can stand there. */
export function loadAt(points: readonly Raw[], piece: string, half: number): number {
  const own = points.filter((point) => point.piece === piece);
  const from = own[0]!.along;
  const long = own[own.length - 1]!.along - from;
  const least = Math.min(0.5, (half + 2) / (long || 1));
  let best = from + long / 2;
  let steepest = Infinity;
  for (const point of own) {
    const t = (point.along - from) / (long || 1);
    if (t < least || t > 1 - least) continue;
    const steep = Math.abs(point.ty) + Math.abs(t - 0.5) * 0.2;
    if (steep < steepest) {
      steepest = steep;
      best = point.along;
    }
  }
  return best;
}

/** Half the drawn length of a crush, as much of the piece as it is of its path. */
export function crushHalf(site: Site, piece: string, long: number): number {
  const found = site.rig.run.find(({ id }) => id === piece);
  const path = found?.kind === 'duct' ? found.path_m : 1;
  const share = Math.min(1, (site.shapes.get(piece)?.crushedLength_m ?? 1) / path);
  return (long * share) / 2;
}

export function narrow(site: Site, points: readonly Raw[]): Narrowing[] {
  const reach = extents(points);
  return site.rig.run.flatMap((piece): Narrowing[] => {
    const shape = site.shapes.get(piece.id) ?? {};
    const extent = reach.get(piece.id);
    if (!extent) return [];
    const bore = site.bores.get(piece.id)!;
    const long = extent.to - extent.from;
    const found: Narrowing[] = [];
    if (shape.crushedOpenArea !== undefined) {
      const half = crushHalf(site, piece.id, long);
      const ease = Math.min(bore * 0.8, half);
      found.push({
        piece: piece.id,
        along: loadAt(points, piece.id, half),
        flat: half - ease,
        reach: ease,
        ratio: heightLeft(shape.crushedOpenArea),
        area: shape.crushedOpenArea,
      });
    }
    if (shape.dents && shape.dentOpenArea !== undefined)
      for (let k = 0; k < shape.dents; k += 1)
        found.push({
          piece: piece.id,
          along: extent.from + (long * (k + 0.5)) / shape.dents,
          reach: Math.min(bore * 0.85, long / shape.dents / 2),
          ratio: heightLeft(shape.dentOpenArea),
          area: shape.dentOpenArea,
        });
    if (shape.boreRatio !== undefined && shape.boreRatio < 1) {
      const step = Math.min(bore * 0.14, long / 4);
      found.push({
        piece: piece.id,
        along: extent.from + long / 2,
        flat: long / 2 - step,
        reach: step,
        ratio: shape.boreRatio,
        area: shape.boreRatio ** 2,
      });
    }
    return found;
  });
}
