/** Openings that are not clear: lint on the grille, a nest or a mesh at the cowl, a flap that stuck. */
import type { Point, Sample, Trouble, TroubleMark } from '../../types.ts';
import { placeAt } from '../centreline.ts';
import { at, line, n, scatter } from '../numbers.ts';
import type { Fixed, Site } from './drawer.ts';
import { from, mark, radians, stretchOf, upward } from './marks.ts';

/** Open share of a grille that states none (as the engine takes it). */
const CLEAN = 0.7;

/** Lint over the slats from both edges inward, as wide as the share of the face that is closed. */
function grille(site: Site, points: readonly Sample[], fixed: Fixed): TroubleMark[] {
  const piece = site.rig.run[0];
  if (piece?.kind !== 'grille') return [];
  const open = site.shapes.get(piece.id)?.freeArea;
  if (open === undefined) return [];
  const closed = 1 - open / (piece.freeArea ?? CLEAN);
  const half = points[0]!.full * 1.25;
  const top = site.size.ceiling + site.size.board;
  const tall = Math.max(4, fixed.mouth.y - top);
  const wide = 2 * half * closed;
  let heavy = '';
  let fine = '';
  for (const side of [-1, 1]) {
    const edge = fixed.mouth.x + side * half;
    const count = Math.max(1, Math.round(wide / 2 / 3.2));
    const pace = wide / 2 / count;
    heavy += `M${at(edge, top + 1)}`;
    for (let k = 1; k <= count; k += 1) {
      const x = edge - side * pace * k;
      const fluff = tall * (0.75 + 0.75 * scatter(k + (side > 0 ? 60 : 0)));
      heavy += `Q${at(x + side * pace * 0.9, top + fluff * 1.25)} ${at(x, top + (k % 2 ? fluff : 1))}`;
      // Threads hang from it.
      if (k % 2)
        fine += `M${at(x, top + fluff * 0.6)}q${n(side * 3)} ${n(tall * 0.6)} ${n(-side)} ${n(tall * (0.7 + scatter(k + 7)))}`;
    }
  }
  return [mark('blocked-grille', piece.id, wide, { heavy, fine })];
}

/** The grille itself, at its edge under the ceiling: its piece has no length along the run to point at. */
export function grilleSpots(site: Site, points: readonly Sample[], { mouth }: Fixed): Trouble['spots'] {
  const piece = site.rig.run[0];
  if (piece?.kind !== 'grille' || site.shapes.get(piece.id)?.freeArea === undefined) return [];
  const y = (site.size.ceiling + site.size.board + mouth.y) / 2;
  return [{ piece: piece.id, kind: 'blocked-grille', at: { x: mouth.x + points[0]!.full * 1.3 + 2, y } }];
}

/** Twigs and straw from the lower lip upward, as high as the share of the opening they close. */
function nest(piece: string, last: Sample, outlet: Point, closed: number): TroubleMark {
  const deep = Math.max(last.full * 0.7, Math.hypot(outlet.x - last.x, outlet.y - last.y) + last.full * 0.2);
  const side = -upward(last);
  const low = last.full * 1.02;
  const high = low - 2 * last.full * closed;
  const count = 10 + Math.round(26 * closed);
  const spot = (along: number, level: number) => from(last, along, side * (low + (high - low) * level));
  let heavy = '';
  let fine = '';
  for (let k = 0; k < count; k += 1) {
    const level = Math.min(0.97, (k + 0.5 * scatter(k)) / count);
    const middle = deep * (0.15 + 0.7 * scatter(k + 30));
    const long = deep * (0.3 + 0.35 * scatter(k + 80));
    const tilt = (scatter(k + 120) - 0.5) * 0.5;
    const keep = (value: number) => Math.min(1, Math.max(0, value));
    const a = spot(middle - long / 2, keep(level - tilt * 0.4));
    const b = spot(middle + long / 2, keep(level + tilt * 0.4));
    const bow = spot(middle, keep(level + 0.12 * (scatter(k + 200) - 0.5)));
    const twig = `M${at(a.x, a.y)}Q${at(bow.x, bow.y)} ${at(b.x, b.y)}`;
    if (k % 4 === 0) heavy += twig;
    else fine += twig;
  }
  const crown = Array.from({ length: 13 }, (_, k) =>
    spot(deep * (0.02 + (0.96 * k) / 12), 0.93 + 0.07 * (k % 2)),
  );
  return mark('blocked-cowl', piece, 2 * last.full * closed, {
    cover: line([spot(0, 0), ...crown, spot(deep, 0)], true),
    heavy: heavy + line(crown),
    fine,
  });
}

/** A mesh seen on edge: wires with what is open between them, lint where a mesh was put on afterwards. */
function mesh(piece: string, last: Sample, outlet: Point, open: number, lint: boolean): TroubleMark {
  const out = Math.hypot(outlet.x - last.x, outlet.y - last.y) - 1;
  const high = last.full * 1.02;
  const pitch = Math.max(4.5, last.full * 0.24);
  const count = Math.round((2 * high) / pitch);
  let heavy = '';
  let fine = line([from(last, out, -high), from(last, out, high)]);
  for (let k = 0; k < count; k += 1) {
    const middle = -high + ((k + 0.5) * 2 * high) / count;
    const half = ((1 - open) * high) / count;
    for (const step of [0, 2.2])
      heavy += line([from(last, out + step, middle - half), from(last, out + step, middle + half)]);
    if (!lint) continue;
    const root = from(last, out - 1, middle);
    const tip = from(last, out - last.full * (0.2 + 0.5 * (1 - open)), middle + pitch * (scatter(k) - 0.5));
    fine += `M${at(root.x, root.y)}Q${at(root.x, tip.y)} ${at(tip.x, tip.y)}`;
  }
  return mark('screened-cowl', piece, 2 * high * (1 - open), { heavy, fine });
}

/** A leaf stuck at its angle from fully open, hung at the top; dashed, where it should lie. */
function flap(points: readonly Sample[], piece: string, degrees: number): TroubleMark {
  const stretch = stretchOf(points, piece)!;
  const long = stretch.to - stretch.from;
  const place = placeAt(points, stretch.from + long * 0.25);
  const up = upward(place);
  const hinge = from(place, 0, up * place.half);
  const leaf = place.half * 1.9;
  const tip = (angle: number) => ({
    x: hinge.x + leaf * (place.tx * Math.cos(angle) + place.ty * up * Math.sin(angle)),
    y: hinge.y + leaf * (place.ty * Math.cos(angle) - place.tx * up * Math.sin(angle)),
  });
  const angle = radians(degrees);
  const swing = Array.from({ length: 9 }, (_, k) => tip((angle * k) / 8));
  const dash = [0.05, 0.3, 0.55, 0.8]
    .map((t) =>
      line([
        { x: hinge.x + (tip(0.04).x - hinge.x) * t, y: hinge.y + (tip(0.04).y - hinge.y) * t },
        {
          x: hinge.x + (tip(0.04).x - hinge.x) * (t + 0.14),
          y: hinge.y + (tip(0.04).y - hinge.y) * (t + 0.14),
        },
      ]),
    )
    .join('');
  const end = tip(angle);
  const nx = -(end.y - hinge.y) / leaf;
  const ny = (end.x - hinge.x) / leaf;
  const thick = Math.max(1.4, place.full * 0.07);
  const ring = Math.max(2.2, place.full * 0.13);
  return mark('stuck-damper', piece, degrees, {
    body:
      line(
        [
          { x: hinge.x + nx * thick, y: hinge.y + ny * thick },
          { x: end.x + nx * thick, y: end.y + ny * thick },
          { x: end.x - nx * thick, y: end.y - ny * thick },
          { x: hinge.x - nx * thick, y: hinge.y - ny * thick },
        ],
        true,
      ) +
      `M${at(hinge.x - ring, hinge.y)}a${n(ring)} ${n(ring)} 0 1 0 ${n(2 * ring)} 0a${n(ring)} ${n(ring)} 0 1 0 ${n(-2 * ring)} 0Z`,
    quiet: dash + line(swing),
  });
}

export function ends(site: Site, points: readonly Sample[], fixed: Fixed): TroubleMark[] {
  const marks = grille(site, points, fixed);
  for (const piece of site.rig.run) {
    const shape = site.shapes.get(piece.id) ?? {};
    if (piece.kind === 'damper' && shape.stuck_deg && stretchOf(points, piece.id))
      marks.push(flap(points, piece.id, shape.stuck_deg));
    if (piece.kind !== 'terminal') continue;
    const last = points[points.length - 1]!;
    if (shape.blockedShare)
      marks.push(nest(piece.id, mouthOf(last, fixed), fixed.outlet, shape.blockedShare));
    const open = shape.screenFreeArea ?? piece.screen?.freeArea;
    if (open !== undefined)
      marks.push(
        mesh(piece.id, mouthOf(last, fixed), fixed.outlet, open, shape.screenFreeArea !== undefined),
      );
  }
  return marks;
}

/** The last place of the run well inside the opening, however far the drawn line reaches. */
function mouthOf(last: Sample, { outlet }: Fixed): Sample {
  const reach = Math.hypot(outlet.x - last.x, outlet.y - last.y);
  if (reach >= last.full * 1.1) return last;
  const back = last.full * 1.1 - reach;
  return { ...last, x: last.x - last.tx * back, y: last.y - last.ty * back };
}
