/** Every fixed size of the drawing, from its frame alone: where walls, roof, ceiling and letters go. */
import type { Frame, Point } from '../types.ts';

export interface Sizes {
  readonly wide: boolean;
  /** Room for the names of places and pieces and for a scale bar. */
  readonly named: boolean;
  readonly lettering: number;
  readonly heavy: number;
  readonly fine: number;
  readonly wallLeft: number;
  readonly wallRight: number;
  readonly wallThick: number;
  readonly ridge: Point;
  readonly eavesLeft: Point;
  readonly eavesRight: Point;
  readonly rafter: number;
  /** Height of the duct's axis when nothing forces another. */
  readonly axis: number;
  readonly joistTop: number;
  /** Top of the plasterboard. */
  readonly ceiling: number;
  readonly board: number;
  readonly bottom: number;
  /** The grille never stands further left. */
  readonly grilleLeft: number;
  /** Bore the drawing aims for. */
  readonly bore: number;
  readonly enlargementMost: number;
  /** Enlargement below which a short run is not blown up further. */
  readonly enlargementLeast: number;
  /** Distance between samples of the centreline. */
  readonly step: number;
}

export function sizes(frame: Frame): Sizes {
  const { width: w, height: h } = frame;
  if (frame.kind === 'phone') {
    return {
      wide: false,
      named: false,
      lettering: Math.max(13, w / 30),
      heavy: 1.8,
      fine: 1,
      wallLeft: w * 0.02,
      wallRight: w * 0.8,
      wallThick: w * 0.03,
      ridge: { x: w * 0.36, y: h * 0.045 },
      eavesLeft: { x: 2, y: h * 0.3 },
      eavesRight: { x: w * 0.865, y: h * 0.395 },
      rafter: h * 0.03,
      axis: h * 0.53,
      joistTop: h * 0.76,
      ceiling: h * 0.815,
      board: h * 0.018,
      bottom: h - 1,
      grilleLeft: w * 0.155,
      bore: h * 0.092,
      enlargementMost: 4,
      enlargementLeast: 3,
      step: 2.5,
    };
  }
  return {
    wide: true,
    named: w >= 1000,
    lettering: Math.max(13, (15 * w) / 1360),
    heavy: Math.max(1.6, (2 * h) / 430),
    fine: Math.max(0.9, h / 430),
    wallLeft: w * 0.03,
    wallRight: w * 0.852,
    wallThick: w * 0.019,
    ridge: { x: w * 0.31, y: h * 0.035 },
    eavesLeft: { x: w * 0.012, y: h * 0.33 },
    eavesRight: { x: w * 0.895, y: h * 0.365 },
    rafter: h * 0.034,
    axis: h * 0.492,
    joistTop: h * 0.705,
    ceiling: h * 0.775,
    board: h * 0.018,
    bottom: h - 2,
    grilleLeft: w * 0.145,
    bore: h * 0.1,
    enlargementMost: 3,
    enlargementLeast: 2,
    step: Math.min(4, h * 0.0095),
  };
}

/** Underside of the rafters above a place. */
export function rafterUnder(size: Sizes, x: number): number {
  const { ridge, eavesLeft, eavesRight, rafter } = size;
  const foot = x < ridge.x ? eavesLeft : eavesRight;
  const slope = (foot.y - ridge.y) / (foot.x - ridge.x);
  return ridge.y + slope * (x - ridge.x) + rafter;
}
