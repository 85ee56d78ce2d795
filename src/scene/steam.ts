/** The steam of the shower, rising slowly over the same strokes that stand in the drawing. */
import { clamp } from './layout/numbers.ts';
import type { Drawing } from './types.ts';

/** Seconds a wisp takes to form, rise and go. */
const RISES_OVER_S = 7;
/** How far it rises, in letter heights. */
const RISES = 1.5;

export function steam(
  context: CanvasRenderingContext2D,
  drawing: Drawing,
  wisps: readonly Path2D[],
  clock: number,
): void {
  const thick = drawing.stroke.heavy * clamp(0.9 + wisps.length * 0.06, 1, 1.7);
  context.lineWidth = thick;
  wisps.forEach((wisp, index) => {
    const turn = (clock / RISES_OVER_S + index * 0.618) % 1;
    const rise = drawing.lettering * RISES * (turn - 0.5);
    context.globalAlpha = 0.5 * Math.sin(turn * Math.PI);
    context.translate(0, -rise);
    context.stroke(wisp);
    context.translate(0, rise);
  });
  context.globalAlpha = 1;
}
