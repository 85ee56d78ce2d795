/** The room below with what stands in it, and steam, more of it the less air is moved. */
import type { RoomDrawing } from '../types.ts';
import { furnishings, steams, type RoomUse } from './furnishings.ts';
import { at, clamp, n, remember, scatter, segment } from './numbers.ts';
import type { Sizes } from './sizes.ts';

/** 0 when the room is cleared with plenty to spare, 1 when less than half of what is asked for moves. */
export const steaminess = (flow_L_s: number, required_L_s: number) =>
  clamp((1.7 - flow_L_s / required_L_s) / 1.25, 0, 1);

/** The same room comes back until a stroke of steam or of mist comes or goes. */
export function room(size: Sizes, use: RoomUse, grilleX: number, half: number, steam: number): RoomDrawing {
  const strokes = !steams(use) ? 0 : Math.round(size.wide ? 3 + 10 * steam : 2 + 6 * steam);
  const rows = steams(use) ? Math.round(steam * 6) : 0;
  const clear = !steams(use) || steam < 0.5;
  const key = `room ${use} ${size.key} ${n(grilleX)} ${n(half)} ${strokes} ${rows} ${clear}`;
  return remember(key, () => furnish(size, use, grilleX, half, strokes, rows, clear));
}

function furnish(
  size: Sizes,
  use: RoomUse,
  grilleX: number,
  half: number,
  count: number,
  rows: number,
  clear: boolean,
): RoomDrawing {
  const top = size.ceiling + size.board;
  const h = size.bottom - top;
  const outer = size.wallLeft + size.wallThick;
  const wide = size.wide ? h * 2.3 : h * 1.35;
  const left = grilleX - wide > outer + h ? grilleX - wide : outer;
  const inner = left > outer ? left + h * 0.06 : left;
  const right = Math.min(size.wallRight - h * 0.2, grilleX + half * 2 + h * (size.wide ? 2.1 : 1.15));
  const side = (x: number) =>
    segment(x, top, x, size.bottom) + segment(x + h * 0.06, top, x + h * 0.06, size.bottom);

  const space = { inner, beside: grilleX + half * 2, top, bottom: size.bottom, wide: size.wide };
  const { fittings, fine, water, mirror } = furnishings(use, space, clear);
  const lines: string[] = [];
  const span = grilleX + half * 1.9 - (inner + h * 0.12);
  for (let k = 0; k < count; k += 1) {
    // A spread that keeps earlier strokes where they are as more come.
    const x = inner + h * 0.12 + span * ((k * 0.618 + 0.31) % 1);
    const base = size.bottom - h * (0.02 + 0.1 * scatter(k + 3));
    // Strokes lean to the grille as they rise, swinging less and less.
    const rise = h * (0.46 + 0.26 * scatter(k + 40));
    const sway = h * (0.07 + 0.05 * scatter(k + 9)) * (scatter(k + 21) > 0.5 ? 1 : -1);
    const lean = clamp((grilleX - x) / span, -1, 1) * h * 0.3;
    lines.push(
      `M${at(x, base)}C${at(x + sway * 2.2, base - rise * 0.34)} ${at(x + lean * 0.2 - sway * 1.7, base - rise * 0.44)} ${at(x + lean * 0.5, base - rise * 0.72)}` +
        `S${at(x + lean - sway * 0.2, base - rise * 0.94)} ${at(x + lean, base - rise)}`,
    );
  }
  let mist = '';
  for (let k = 0; mirror && k < rows; k += 1) {
    const y = mirror.y + mirror.height * (1 - (k + 0.6) / 7);
    const inset = mirror.width * (0.1 + 0.12 * scatter(k + 70));
    const wave = `${n(mirror.width * 0.25)} 0`;
    mist += `M${at(mirror.x + inset, y)}q${n(mirror.width * 0.12)} ${n(-h * 0.03)} ${wave}t${wave}t${n(mirror.width * 0.16)} 0`;
  }
  return {
    fittings,
    fine,
    water,
    steam: lines,
    mist,
    left,
    right,
    partition: (left > outer ? side(left) : '') + side(right),
  };
}
