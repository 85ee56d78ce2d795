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

/** The foot of the door, from the far side; only where words have room there. */
export function doorSpots(site: Site, { roomRight }: Fixed): Trouble['spots'] {
  const fault = site.rig.faults?.find(({ kind, amount }) => kind === 'no-make-up-air' && amount > 0);
  const { size } = site;
  if (!fault || !size.wide || size.wallRight - roomRight < size.lettering * 14) return [];
  const tall = size.bottom - size.ceiling - size.board;
  return [
    { piece: fault.at, kind: fault.kind, at: { x: roomRight + tall * 0.12, y: size.bottom - tall * 0.3 } },
  ];
}

export function door(site: Site, fixed: Fixed): TroubleMark[] {
  const faults = (site.rig.faults ?? []).filter((fault) => fault.kind === 'no-make-up-air');
  const sealed = Math.max(0, ...faults.map((fault) => fault.amount));
  const at = faults[0]?.at;
  if (!at || sealed <= 0) return [];
  const { size } = site;
  const tall = size.bottom - size.ceiling - size.board;
  const whole = tall * 0.17;
  const left = leftOpen(sealed, site.rig.room?.makeUpFreeArea_mm2);
  // A hair's breadth stays to be seen, however little is left.
  const open = 1 + (whole - 1) * left;
  const x = fixed.roomRight;
  const thick = tall * 0.06;
  const foot = size.bottom;
  const head = size.ceiling + size.board + tall * 0.14;
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
