/** Words on the drawing, each in a box nothing else may enter. Earlier labels win; one with no room is left out. */
import type { Box, Label, Point, Tone } from '../types.ts';
import { segment } from './numbers.ts';

/** Mean advance of the condensed lettering over its size, measured on Barlow Condensed 500 with room to spare. */
const ADVANCE: Record<Tone, number> = { ink: 0.46, quiet: 0.44, place: 0.62, title: 0.6 };

export interface Wanted {
  readonly key: string;
  readonly text: string;
  readonly tone: Tone;
  readonly size: number;
  readonly anchor: 'start' | 'middle' | 'end';
  /** Places to try, best first; baseline of the words. */
  readonly spots: readonly Point[];
  /** Second line set under the first, in ink. */
  readonly under?: string;
  /** What these words alone may not lie on. */
  readonly avoid?: readonly Box[];
  /** What the words point at. */
  readonly target?: Point;
  /** What is written instead where none of the places has room. */
  readonly less?: Wanted;
}

export const widthOf = (text: string, tone: Tone, size: number) => [...text].length * ADVANCE[tone] * size;

function boxOf(spot: Point, width: number, size: number, anchor: Label['anchor'], lines: number): Box {
  const x = anchor === 'start' ? spot.x : anchor === 'end' ? spot.x - width : spot.x - width / 2;
  return { x: x - 2, y: spot.y - size, width: width + 4, height: size * (1.28 + (lines - 1) * 1.22) };
}

const meet = (a: Box, b: Box) =>
  a.x < b.x + b.width && b.x < a.x + a.width && a.y < b.y + b.height && b.y < a.y + a.height;

export function settle(
  wanted: readonly Wanted[],
  frame: { width: number; height: number },
  taken: readonly Box[],
): Label[] {
  const boxes: Box[] = [...taken];
  const labels: Label[] = [];
  const inside = (box: Box) =>
    box.x >= 0 && box.y >= 0 && box.x + box.width <= frame.width && box.y + box.height <= frame.height;
  const put = (want: Wanted): boolean => {
    const lines = want.under ? 2 : 1;
    const width = Math.max(
      widthOf(want.text, want.tone, want.size),
      want.under ? widthOf(want.under, 'ink', want.size * 1.06) : 0,
    );
    for (const spot of want.spots) {
      const box = boxOf(spot, width, want.size, want.anchor, lines);
      if (!inside(box) || boxes.some((other) => meet(other, box))) continue;
      if (want.avoid?.some((other) => meet(other, box))) continue;
      boxes.push(box);
      const first: Label = {
        key: want.key,
        text: want.text,
        tone: want.tone,
        size: want.size,
        anchor: want.anchor,
        x: spot.x,
        y: spot.y,
        box: lines === 1 ? box : { ...box, height: want.size * 1.2 },
        ...(want.target ? { leader: leader(box, want.target) } : {}),
      };
      labels.push(first);
      if (want.under) {
        const y = spot.y + want.size * 1.22;
        labels.push({
          key: `${want.key}/text`,
          text: want.under,
          tone: 'ink',
          size: want.size * 1.06,
          anchor: want.anchor,
          x: spot.x,
          y,
          box: { ...box, y: box.y + want.size * 1.2, height: box.height - want.size * 1.2 },
        });
      }
      return true;
    }
    return want.less !== undefined && put(want.less);
  };
  wanted.forEach(put);
  return labels;
}

/** From the nearest edge of the words to the thing, stopping short of both. */
function leader(box: Box, target: Point): string {
  // The box is wider than the words by what their estimate spares; the line starts where they do.
  const inset = 4 + box.width * 0.1;
  const x = Math.min(box.x + box.width - inset, Math.max(box.x + inset, target.x));
  const y = target.y > box.y + box.height / 2 ? box.y + box.height + 1 : box.y - 1;
  const long = Math.hypot(target.x - x, target.y - y);
  if (long < 8) return '';
  const t = 1 - 3 / long;
  return segment(x, y, x + (target.x - x) * t, y + (target.y - y) * t);
}
