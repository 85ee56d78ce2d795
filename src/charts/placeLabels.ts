/**
 * Puts words on the things they name. Labels are taken in order of importance; each takes the first
 * of its own places that is free of lines, marks and earlier labels, then one that only faint lines
 * cross, then the nearest free place close by, and is left out rather than set over another.
 */

export interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

export interface Segment {
  readonly x1: number;
  readonly y1: number;
  readonly x2: number;
  readonly y2: number;
  /** Id of the label that names this line. */
  readonly owner?: string;
}

export interface Place {
  /** Where the text is anchored; `y` is the middle of its height. */
  readonly x: number;
  readonly y: number;
  readonly anchor: 'start' | 'middle' | 'end';
  /** The spot being named: no other line may run between it and the label. */
  readonly tie?: { readonly x: number; readonly y: number };
}

export interface LabelRequest {
  readonly id: string;
  /** Longest wording first; a shorter one is tried when the longer has no place. */
  readonly texts: readonly { readonly text: string; readonly width: number }[];
  readonly height: number;
  /** Best place first. */
  readonly places: readonly Place[];
  /** Only its own places will do, and faint lines are respected too: left out when none is free. */
  readonly optional?: boolean;
  /** May stand on any named line rather than away from its mark, when it must. */
  readonly over?: boolean;
  /** Only its own places will do: elsewhere it would name something else. */
  readonly tied?: boolean;
}

export interface PlacedLabel {
  readonly id: string;
  readonly text: string;
  readonly box: Box;
  /** True when none of its own places was free and it stands a little way off. */
  readonly away: boolean;
}

export interface Obstacles {
  readonly boxes: readonly Box[];
  readonly segments: readonly Segment[];
  /** Lines a label may be set over when there is no better place. */
  readonly faint?: readonly Segment[];
}

/** How far from its best place a label may be moved, in its own heights: farther and it would name something else. */
const farthest = 5;

function boxAt(place: Place, width: number, height: number): Box {
  const shift = place.anchor === 'start' ? 0 : place.anchor === 'middle' ? width / 2 : width;
  return { x: place.x - shift, y: place.y - height / 2, width, height };
}

export function boxesOverlap(a: Box, b: Box): boolean {
  return a.x < b.x + b.width && b.x < a.x + a.width && a.y < b.y + b.height && b.y < a.y + a.height;
}

/** Does any part of the segment lie in the box? Called some thousands of times a frame, so it makes nothing. */
export function crosses(box: Box, { x1, y1, x2, y2 }: Segment): boolean {
  const left = box.x;
  const right = left + box.width;
  const top = box.y;
  const bottom = top + box.height;
  if ((x1 < left && x2 < left) || (x1 > right && x2 > right)) return false;
  if ((y1 < top && y2 < top) || (y1 > bottom && y2 > bottom)) return false;
  // Both overlap as boxes: they meet unless all four corners lie on one side of the line.
  const dx = x2 - x1;
  const dy = y2 - y1;
  const a = dx * (top - y1) - dy * (left - x1);
  const b = dx * (top - y1) - dy * (right - x1);
  const c = dx * (bottom - y1) - dy * (left - x1);
  const d = dx * (bottom - y1) - dy * (right - x1);
  return !((a > 0 && b > 0 && c > 0 && d > 0) || (a < 0 && b < 0 && c < 0 && d < 0));
}

/** Do two segments meet? Touching ends count. */
function meet(a: Segment, b: Segment): boolean {
  const side = (s: Segment, x: number, y: number): number =>
    (s.x2 - s.x1) * (y - s.y1) - (s.y2 - s.y1) * (x - s.x1);
  return side(a, b.x1, b.y1) * side(a, b.x2, b.y2) <= 0 && side(b, a.x1, a.y1) * side(b, a.x2, a.y2) <= 0;
}

/** From the spot being named to the near edge of its label. */
function tieOf({ tie, anchor }: Place, box: Box): Segment | undefined {
  if (!tie) return undefined;
  const x = anchor === 'start' ? box.x : anchor === 'end' ? box.x + box.width : box.x + box.width / 2;
  const y = Math.min(Math.max(tie.y, box.y), box.y + box.height);
  return { x1: tie.x, y1: tie.y, x2: x, y2: y };
}

function inside(box: Box, bounds: Box): boolean {
  return (
    box.x >= bounds.x &&
    box.y >= bounds.y &&
    box.x + box.width <= bounds.x + bounds.width &&
    box.y + box.height <= bounds.y + bounds.height
  );
}

/** The free box nearest to the wanted place on a grid of half a line, or none close enough. */
function sweep(wanted: Box, bounds: Box, free: (box: Box) => boolean): Box | undefined {
  const stepX = Math.max(6, wanted.height);
  const stepY = Math.max(4, wanted.height / 2);
  let best: Box | undefined;
  let bestDistance = farthest * wanted.height;
  for (let y = bounds.y; y + wanted.height <= bounds.y + bounds.height; y += stepY) {
    for (let x = bounds.x; x + wanted.width <= bounds.x + bounds.width; x += stepX) {
      const distance = Math.hypot(x - wanted.x, y - wanted.y);
      if (distance >= bestDistance) continue;
      const box = { ...wanted, x, y };
      if (!free(box)) continue;
      best = box;
      bestDistance = distance;
    }
  }
  return best;
}

/** Labels that found room, in the order asked; no two overlap, and none lies on a mark or a firm line. */
export function placeLabels(
  requests: readonly LabelRequest[],
  { boxes, segments, faint = [] }: Obstacles,
  bounds: Box,
): PlacedLabel[] {
  const taken: Box[] = [...boxes];
  const lines = [...segments, ...faint];
  const placed: PlacedLabel[] = [];
  const free = (box: Box): boolean =>
    inside(box, bounds) &&
    !taken.some((other) => boxesOverlap(box, other)) &&
    !segments.some((segment) => crosses(box, segment));
  const unmarked = segments.filter((segment) => segment.owner == null);
  const onLines = (box: Box): boolean =>
    inside(box, bounds) &&
    !taken.some((other) => boxesOverlap(box, other)) &&
    !unmarked.some((segment) => crosses(box, segment));
  const clear = (box: Box): boolean => free(box) && !faint.some((segment) => crosses(box, segment));

  for (const { id, texts, height, places, optional, over, tied } of requests) {
    const wanted = places[0];
    if (!wanted) continue;
    const settle = (text: string, box: Box, away: boolean): true => {
      taken.push(box);
      placed.push({ id, text, box, away });
      return true;
    };
    const near = (test: (box: Box) => boolean): boolean =>
      texts.some(({ text, width }) => {
        const fit = places.find((place) => {
          const box = boxAt(place, width, height);
          if (!test(box)) return false;
          const tie = tieOf(place, box);
          return !tie || !lines.some((line) => line.owner !== id && meet(tie, line));
        });
        return fit ? settle(text, boxAt(fit, width, height), false) : false;
      });
    if (near(clear) || optional) continue;
    if ((faint.length > 0 && near(free)) || (over && near(onLines)) || tied) continue;
    texts.some(({ text, width }) => {
      const box = sweep(boxAt(wanted, width, height), bounds, free);
      return box ? settle(text, box, true) : false;
    });
  }
  return placed;
}
