/** The bathroom below: shower running, mirror, basin; and steam, more of it the less air is moved. */
import type { RoomDrawing } from '../types.ts';
import { at, clamp, n, rectangle, remember, scatter, segment } from './numbers.ts';
import type { Sizes } from './sizes.ts';

/** 0 when the room is cleared with plenty to spare, 1 when less than half of what is asked for moves. */
export const steaminess = (flow_L_s: number, required_L_s: number) =>
  clamp((1.7 - flow_L_s / required_L_s) / 1.25, 0, 1);

/** The same room comes back until a stroke of steam or of mist comes or goes. */
export function room(size: Sizes, grilleX: number, half: number, steam: number): RoomDrawing {
  const strokes = Math.round(size.wide ? 3 + 10 * steam : 2 + 6 * steam);
  const rows = Math.round(steam * 6);
  const clear = steam < 0.5;
  const key = `room ${size.key} ${n(grilleX)} ${n(half)} ${strokes} ${rows} ${clear}`;
  return remember(key, () => furnish(size, grilleX, half, strokes, rows, clear));
}

function furnish(
  size: Sizes,
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

  const roseX = inner + h * (size.wide ? 0.62 : 0.38);
  const roseY = top + h * 0.26;
  const rose = h * 0.17;
  const fittings =
    `M${at(inner, top + h * 0.5)}V${n(top + h * 0.24)}` +
    `M${at(inner, top + h * 0.2)}H${n(roseX - h * 0.1)}Q${at(roseX, top + h * 0.2)} ${at(roseX, roseY)}` +
    `M${at(roseX - rose, roseY + h * 0.07)}L${at(roseX - rose * 0.35, roseY)}H${n(roseX + rose * 0.35)}L${at(roseX + rose, roseY + h * 0.07)}Z`;
  let water = '';
  for (let k = 0; k < 9; k += 1) {
    const u = k / 4 - 1;
    const from = roseY + h * 0.11;
    for (let piece = 0; piece < 4; piece += 1) {
      const a = from + (piece + scatter(k * 7 + piece) * 0.55) * h * 0.15;
      const b = Math.min(size.bottom, a + h * 0.085);
      const x = (y: number) => roseX + u * (rose * 0.9 + (y - from) * 0.22);
      if (a < size.bottom - 1) water += segment(x(a), a, x(b), b);
    }
  }
  const mirrorW = h * 0.62;
  const mirrorX = grilleX + half * 2 + h * 0.3;
  const mirrorY = top + h * 0.16;
  const mirrorH = h * 0.54;
  const basinY = top + h * 0.86;
  const glint = (t: number, long: number) =>
    segment(
      mirrorX + mirrorW * t,
      mirrorY + mirrorH * (0.15 + long),
      mirrorX + mirrorW * (t + long),
      mirrorY + mirrorH * 0.15,
    );
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
  for (let k = 0; k < rows; k += 1) {
    const y = mirrorY + mirrorH * (1 - (k + 0.6) / 7);
    const inset = mirrorW * (0.1 + 0.12 * scatter(k + 70));
    mist += `M${at(mirrorX + inset, y)}q${n(mirrorW * 0.12)} ${n(-h * 0.03)} ${n(mirrorW * 0.25)} 0t${n(mirrorW * 0.25)} 0t${n(mirrorW * 0.16)} 0`;
  }
  return {
    fittings: fittings + rectangle(mirrorX, mirrorY, mirrorW, mirrorH),
    fine:
      (clear ? glint(0.2, 0.22) + glint(0.3, 0.32) : '') +
      `M${at(mirrorX - h * 0.1, basinY)}H${n(mirrorX + mirrorW + h * 0.1)}Q${at(mirrorX + mirrorW + h * 0.06, size.bottom)} ${at(mirrorX + mirrorW * 0.8, size.bottom)}M${at(mirrorX - h * 0.1, basinY)}Q${at(mirrorX - h * 0.06, size.bottom)} ${at(mirrorX + mirrorW * 0.2, size.bottom)}`,
    water,
    steam: lines,
    mist,
    right,
    partition: (left > outer ? side(left) : '') + side(right),
  };
}
