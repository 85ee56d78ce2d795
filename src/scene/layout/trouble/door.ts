/** No way in for replacement air: the gap under the door is as small as what is left of the opening. */
import type { Trouble, TroubleMark } from '../../types.ts';
import { n, rectangle, segment } from '../numbers.ts';
import type { Fixed, Site } from './drawer.ts';
import { mark, stroke } from './marks.ts';

/** What stays open when a room is sealed as far as it goes, and an ordinary gap where a rig states none (drawing only), mm2. */
const SEALED_MM2 = 2000;
const ORDINARY_MM2 = 14000;

/** Share of the opening that is left: both openings in series, areas adding as inverse squares. */
export function leftOpen(sealed: number, stated: number = ORDINARY_MM2): number {
  if (!(sealed > 0)) return 1;
  return 1 / Math.sqrt(1 + (stated / (SEALED_MM2 / sealed)) ** 2);
}

/** Room for the head of the stroke of air that squeezes under the door, and for its line. */
const UNDER = 4;

/** The door seen on edge, and how much of the gap under it is open. */
function leafOf({ rig, size }: Site, { roomRight }: Fixed) {
  const faults = (rig.faults ?? []).filter(({ kind, amount }) => kind === 'no-make-up-air' && amount > 0);
  const fault = faults.sort((a, b) => b.amount - a.amount)[0];
  if (!fault) return null;
  const tall = size.bottom - size.ceiling - size.board;
  const whole = tall * 0.17;
  return {
    at: fault.at,
    tall,
    whole,
    // A hair's breadth stays to be seen, however little is left.
    open: 1 + (whole - 1) * leftOpen(fault.amount, rig.room?.makeUpFreeArea_mm2),
    x: roomRight,
    thick: tall * 0.06,
    foot: size.bottom - UNDER,
    head: size.ceiling + size.board + tall * 0.14,
  };
}

/** The gap under the door, from the far side. */
export function doorSpots(site: Site, fixed: Fixed): Trouble['spots'] {
  const leaf = leafOf(site, fixed);
  if (!leaf) return [];
  const at = { x: leaf.x + leaf.thick + 2, y: leaf.foot - leaf.open - 1 };
  return [{ piece: leaf.at, kind: 'no-make-up-air', at }];
}

export function door(site: Site, fixed: Fixed): TroubleMark[] {
  const leaf = leafOf(site, fixed);
  if (!leaf) return [];
  const { at, tall, whole, open, x, thick, foot, head } = leaf;
  // Seen on edge: the leaf, its brush seal, the threshold, and the air that still squeezes under it.
  const brush = whole - open;
  let bristles = '';
  for (let k = 0; k <= 4; k += 1)
    bristles += segment(x + (thick * k) / 4, foot - whole, x + (thick * k) / 4, foot - open);
  let air = '';
  const flow = Math.abs(site.solution.flow_L_s.room) / (Math.abs(site.healthy.flow_L_s.room) || 1);
  const reach = tall * (0.25 + 0.3 * Math.min(1, flow));
  const strokes = open > 5 ? [0.3, 0.75] : [0.5];
  for (const level of strokes) {
    const y = foot - open * level;
    air += stroke({ x: x + thick + tall * 0.34, y }, { x: x - reach, y: y - tall * 0.05 * level }, -2, 3.4);
  }
  return [
    mark('no-make-up-air', at, brush, {
      body: rectangle(x, head, thick, foot - whole - head),
      heavy: brush > 0.5 ? `M${n(x)} ${n(foot - open)}h${n(thick)}` : '',
      fine: bristles + segment(x - tall * 0.1, foot, x + thick + tall * 0.1, foot),
      cover: rectangle(x - 1.5, head, thick + 3, foot - head),
      air,
    }),
  ];
}
