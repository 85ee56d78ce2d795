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
}

export interface Place {
  /** Where the text is anchored; `y` is the middle of its height. */
  readonly x: number;
  readonly y: number;
  readonly anchor: 'start' | 'middle' | 'end';
}

export interface LabelRequest {
  readonly id: string;
  /** Longest wording first; a shorter one is tried when the longer has no place. */
  readonly texts: readonly { readonly text: string; readonly width: number }[];
  readonly height: number;
  /** Best place first. */
  readonly places: readonly Place[];
  /** Left out when none of its own places is free. */
  readonly optional?: boolean;
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

/** Liang and Barsky's clipping test: does any part of the segment lie in the box? */
export function crosses(box: Box, { x1, y1, x2, y2 }: Segment): boolean {
  const right = box.x + box.width;
  const bottom = box.y + box.height;
  if (Math.max(x1, x2) < box.x || Math.min(x1, x2) > right) return false;
  if (Math.max(y1, y2) < box.y || Math.min(y1, y2) > bottom) return false;
  let enter = 0;
  let leave = 1;
  const edges: [number, number][] = [
    [x1 - x2, x1 - box.x],
    [x2 - x1, right - x1],
    [y1 - y2, y1 - box.y],
    [y2 - y1, bottom - y1],
  ];
  for (const [slope, reach] of edges) {
    if (slope === 0) {
      if (reach < 0) return false;
      continue;
    }
    const at = reach / slope;
    if (slope < 0) enter = Math.max(enter, at);
    else leave = Math.min(leave, at);
    if (enter > leave) return false;
  }
  return true;
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
  const placed: PlacedLabel[] = [];
  const free = (box: Box): boolean =>
    inside(box, bounds) &&
    !taken.some((other) => boxesOverlap(box, other)) &&
    !segments.some((segment) => crosses(box, segment));
  const clear = (box: Box): boolean => free(box) && !faint.some((segment) => crosses(box, segment));

  for (const { id, texts, height, places, optional } of requests) {
    const wanted = places[0];
    if (!wanted) continue;
    const settle = (text: string, box: Box, away: boolean): true => {
      taken.push(box);
      placed.push({ id, text, box, away });
      return true;
    };
    const near = (test: (box: Box) => boolean): boolean =>
      texts.some(({ text, width }) => {
        const box = places.map((place) => boxAt(place, width, height)).find(test);
        return box ? settle(text, box, false) : false;
      });
    if (near(clear) || optional) continue;
    if (faint.length > 0 && near(free)) continue;
    texts.some(({ text, width }) => {
      const box = sweep(boxAt(wanted, width, height), bounds, free);
      return box ? settle(text, box, true) : false;
    });
  }
  return placed;
}
