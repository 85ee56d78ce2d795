/** Every fixed size of the drawing, from its frame alone: where walls, roof, ceiling and letters go. */
import type { Frame, Point } from '../types.ts';
import type { Exit } from './plan.ts';

export interface Sizes {
  readonly wide: boolean;
  /** Room for the names of places and pieces and for a scale bar. */
  readonly named: boolean;
  /** Too small for a fault's words wherever it sits; they may then stand under the drawing. */
  readonly small: boolean;
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
  readonly exit: Exit;
  /** Names this set of sizes. */
  readonly key: string;
  /** Where the run ends: the inner face of the wall, or the axis of what goes up or down. */
  readonly endX: number;
  /** Height of the mouth where the run goes out up or down, and of the roof or soffit it passes on the way. */
  readonly mouth: number;
  readonly shell: number;
}

export function sizes(frame: Frame, exit: Exit = 'wall'): Sizes {
  const { width: w, height: h } = frame;
  const size = { ...usual(frame), key: `${frame.kind} ${w} ${h} ${exit}` };
  if (exit === 'soffit') {
    // The roof runs on further and lower, over eaves deep enough to take a duct turned down.
    const wallRight = w * (size.wide ? 0.795 : 0.7);
    const endX = w * (size.wide ? 0.868 : 0.8);
    const eavesRight = size.wide ? { x: w * 0.932, y: h * 0.445 } : { x: w * 0.9, y: h * 0.45 };
    // A little lower than elsewhere, so that even a sharp corner keeps under the rafters' ends.
    const axis = size.axis + size.bore * 0.35;
    const shell = axis + size.bore * 1.32;
    return { ...size, exit, axis, wallRight, eavesRight, endX, shell, mouth: shell + size.bore * 0.34 };
  }
  if (exit === 'roof') {
    const endX = w * (size.wide ? 0.712 : 0.6);
    const shell = rafterUnder(size, endX);
    return { ...size, exit, endX, shell, mouth: shell - size.rafter - size.bore * 0.85 };
  }
  return { ...size, endX: size.wallRight };
}

/** The smallest letters of a drawing over its `lettering`: the names of places. */
const SMALLEST = 0.86;

function usual(frame: Frame): Sizes {
  const { width: w, height: h } = frame;
  const plain = { exit: 'wall', key: '', endX: 0, mouth: 0, shell: 0 } as const;
  if (frame.kind === 'phone') {
    return {
      ...plain,
      wide: false,
      named: false,
      small: true,
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
    ...plain,
    wide: true,
    named: w >= 1000 && frame.lettering === undefined,
    small: w < 1000 && frame.lettering === undefined,
    lettering: Math.max(13, (15 * w) / 1360, (frame.lettering ?? 0) / SMALLEST),
    heavy: Math.max(1.6, (2 * h) / 430),
    fine: Math.max(0.9, h / 430),
    wallLeft: w * 0.03,
    wallRight: w * 0.852,
    wallThick: w * 0.019,
    ridge: { x: w * 0.31, y: h * 0.035 },
    eavesLeft: { x: w * 0.012, y: h * 0.33 },
    eavesRight: { x: w * 0.884, y: h * 0.359 },
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
export function rafterUnder(
  size: Pick<Sizes, 'ridge' | 'eavesLeft' | 'eavesRight' | 'rafter'>,
  x: number,
): number {
  const { ridge, eavesLeft, eavesRight, rafter } = size;
  const foot = x < ridge.x ? eavesLeft : eavesRight;
  const slope = (foot.y - ridge.y) / (foot.x - ridge.x);
  return ridge.y + slope * (x - ridge.x) + rafter;
}
