/**
 * Specks carried by the air. Places are dealt out in time, not in distance, so that specks crowd where air
 * is slow and part where it is fast, as they must when none is lost.
 */
import { placeAt, beside } from './layout/centreline.ts';
import { scatter } from './layout/numbers.ts';
import { ribbonHalf } from './layout/air.ts';
import type { Drawing } from './types.ts';

/** Slowed for the eye: 1 m/s is drawn as this many times the drawing's metre a second. */
const SLOWED = 0.13;

export interface Passage {
  readonly along: readonly number[];
  /** Seconds of animation from the grille to each sample. */
  readonly time: readonly number[];
  readonly seconds: number;
}

export function passage(drawing: Drawing): Passage {
  const along: number[] = [];
  const time: number[] = [];
  let seconds = 0;
  drawing.centreline.forEach((place, index) => {
    const before = drawing.centreline[index - 1];
    if (before) {
      const speed =
        Math.max(0.05, (before.velocity_m_s + place.velocity_m_s) / 2) * drawing.pixelsPerMetre * SLOWED;
      seconds += (place.along - before.along) / speed;
    }
    along.push(place.along);
    time.push(seconds);
  });
  return { along, time, seconds };
}

function alongAtTime({ along, time }: Passage, wanted: number): number {
  let low = 0;
  let high = time.length - 1;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (time[middle]! <= wanted) low = middle;
    else high = middle;
  }
  const gap = time[high]! - time[low]!;
  return along[low]! + (gap > 0 ? (along[high]! - along[low]!) * ((wanted - time[low]!) / gap) : 0);
}

export interface Speck {
  readonly x1: number;
  readonly y1: number;
  readonly x2: number;
  readonly y2: number;
}

/** Specks at a moment; `phase` is passages made since the start. */
export function specks(drawing: Drawing, way: Passage, phase: number): Speck[] {
  const total = way.along[way.along.length - 1] ?? 0;
  const bore = drawing.centreline[0]?.full ?? 10;
  const count = Math.round(Math.min(260, (total / bore) * (drawing.frame.kind === 'wide' ? 2.6 : 2)));
  return Array.from({ length: count }, (_, k) => {
    const turn = (phase + k / count + scatter(k) * 0.02) % 1;
    const place = placeAt(drawing.centreline, alongAtTime(way, turn * way.seconds));
    const lane = scatter(k + 500) * 2 - 1;
    const room = Math.max(0, ribbonHalf(place) - place.hub - 1.6);
    const off = Math.sign(lane) * place.hub + lane * room;
    const half = Math.min(
      bore * 0.5,
      Math.max(1.4, place.velocity_m_s * drawing.pixelsPerMetre * SLOWED * 0.045),
    );
    const middle = beside(place, off);
    return {
      x1: middle.x - place.tx * half,
      y1: middle.y - place.ty * half,
      x2: middle.x + place.tx * half,
      y2: middle.y + place.ty * half,
    };
  });
}

export function paint(
  context: CanvasRenderingContext2D,
  drawing: Drawing,
  list: readonly Speck[],
  ratio: number,
  colour: string,
): void {
  context.setTransform(ratio, 0, 0, ratio, 0, 0);
  context.clearRect(0, 0, drawing.frame.width, drawing.frame.height);
  context.strokeStyle = colour;
  context.lineWidth = drawing.stroke.heavy * (drawing.frame.kind === 'wide' ? 0.95 : 0.75);
  context.lineCap = 'round';
  context.beginPath();
  for (const speck of list) {
    context.moveTo(speck.x1, speck.y1);
    context.lineTo(speck.x2, speck.y2);
  }
  context.stroke();
}
