/**
 * What can be said of a run before it has a scale: bores, which bends stand it up out of the ceiling and
 * lay it down to the way out, and which way every other bend steps. From the rig alone, so that nothing
 * here jumps while a fault grows.
 */
import type { Bend, Piece } from '#physics';
import { clamp } from './numbers.ts';

export type Exit = 'wall' | 'soffit' | 'roof';

/** A bend drawn where the run changes between standing and level. */
export interface Turn {
  readonly index: number;
  /** Radians. */
  readonly angle: number;
  /** Radius over bore. */
  readonly ratio: number;
  /** Which of a duct's bends; below 0 for an elbow or a turn no piece speaks of. */
  readonly bend: number;
}

/** A bend that lies in plan; in section it steps down or up, turning as much in all. */
export interface Step {
  /** Radians of each of its two arcs. */
  readonly half: number;
  readonly ratio: number;
  readonly down: boolean;
}

export interface Plan {
  /** Bore at both ends of every piece. */
  readonly bore_m: readonly number[];
  readonly boreTo_m: readonly number[];
  readonly widest_m: number;
  readonly fan: number;
  readonly exit: Exit;
  readonly entry: readonly Turn[];
  readonly leaving: readonly Turn[];
  readonly steps: readonly (readonly Step[])[];
  /** How far under the first level axis each piece comes, and the last ends; before enlargement. */
  readonly deepest_m: readonly number[];
  readonly end_m: number;
}

export const radians = (degrees: number) => (degrees * Math.PI) / 180;
const FULL = radians(75);
const RIGHT = Math.PI / 2;
/** A made-up turn is drawn as gently as a hand would lay it. */
const SOFT = 1.6;
/** More of the run than this does not stand up under a roof: duct that can bend then turns itself. */
const STANDING_MOST = 0.34;

/** Bore of any piece; a fan that does not say takes its neighbour's. */
export function bore_mm(run: readonly Piece[], index: number): number {
  const own = run[index]?.diameter_mm;
  if (own) return own;
  for (let step = 1; step < run.length; step += 1) {
    const before = run[index - step];
    const near =
      (before?.kind === 'reducer' ? before.toDiameter_mm : before?.diameter_mm) ??
      run[index + step]?.diameter_mm;
    if (near) return near;
  }
  return 100;
}

/** Rain caps stand on roofs; an elbow right before a plain mouth turns it down through the eaves; else the wall. */
export function exitOf(run: readonly Piece[]): Exit {
  const end = run[run.length - 1];
  if (end?.kind !== 'terminal') return 'wall';
  if (end.form === 'rain-cap' || end.form === 'high-rain-cap') return 'roof';
  const before = run[run.length - 2];
  const turnsDown = before?.kind === 'elbow' && before.angle_deg >= 60;
  return turnsDown && end.form !== 'wall-cowl' ? 'soffit' : 'wall';
}

export const bends = (piece: Piece): readonly Bend[] => {
  if (piece.kind === 'duct') return piece.bends ?? [];
  if (piece.kind !== 'elbow') return [];
  // A mitred elbow has no radius: the air's inner edge turns on the corner itself.
  const radiusRatio = piece.form === 'mitred' ? 0.5 : clamp(piece.radiusRatio ?? 1, 0.7, 2);
  return [{ angle_deg: piece.angle_deg, radiusRatio }];
};

const bendable = (piece: Piece) => piece.kind === 'duct' && /flex|semi/i.test(piece.material);

/** The bends that turn a corner, met from the standing end; `order` runs from that end towards the fan. */
function corner(run: readonly Piece[], order: readonly number[], total_m: number): Turn[] {
  const found = order.flatMap((index) =>
    bends(run[index]!).map((bend, k): Turn => ({
      index,
      angle: radians(bend.angle_deg),
      ratio: run[index]!.kind === 'duct' ? clamp(bend.radiusRatio, 0.7, 2) : bend.radiusRatio,
      bend: run[index]!.kind === 'duct' ? k : -1,
    })),
  );
  const firstDuct = order.find((index) => run[index]!.kind === 'duct');
  const turns = together(found, firstDuct ?? order[0]!, order);
  const last = turns[turns.length - 1]!.index;
  let standing_m = 0;
  for (const index of order.slice(0, order.indexOf(last))) {
    const piece = run[index]!;
    if (piece.kind === 'duct') standing_m += piece.path_m;
  }
  if (standing_m <= STANDING_MOST * total_m || firstDuct === undefined) return turns;
  // Too much of the run would stand: duct that can bend turns by itself, and rigid duct lies from the start.
  const index = bendable(run[firstDuct]!) ? firstDuct : order[0]!;
  const own = found.find((turn) => turn.index === index);
  return [{ index, angle: RIGHT, ratio: own?.ratio ?? SOFT, bend: own?.bend ?? -2 }];
}

/** One bend that is square enough does it alone; else as many as it takes, and a made-up one for what is missing. */
function together(found: readonly Turn[], spare: number, order: readonly number[]): Turn[] {
  const alone =
    found.find((turn) => turn.angle >= FULL && turn.bend < 0) ?? found.find((turn) => turn.angle >= FULL);
  if (alone) return [{ ...alone, angle: RIGHT }];
  const taken: Turn[] = [];
  let sum = 0;
  for (const turn of found) {
    if (sum >= FULL) break;
    taken.push(turn);
    sum += turn.angle;
  }
  if (sum >= FULL) return taken.map((turn) => ({ ...turn, angle: (turn.angle * RIGHT) / sum }));
  // What the bends leave is taken up by the first duct there is, or at the very end.
  const made: Turn = { index: spare, angle: RIGHT - sum, ratio: SOFT, bend: -2 };
  const place = taken.findIndex((turn) => order.indexOf(turn.index) >= order.indexOf(spare));
  taken.splice(place < 0 ? taken.length : place, 0, made);
  return taken;
}

export function planOf(run: readonly Piece[]): Plan {
  const bore_m = run.map((_, index) => bore_mm(run, index) / 1000);
  const boreTo_m = run.map((piece, index) =>
    piece.kind === 'reducer' ? piece.toDiameter_mm / 1000 : bore_m[index]!,
  );
  const widest_m = Math.max(...bore_m, ...boreTo_m);
  const exit = exitOf(run);
  const found = run.findIndex((piece) => piece.kind === 'fan');
  const fan = found < 0 ? run.length : found;
  const total_m = run.reduce((sum, piece) => sum + (piece.kind === 'duct' ? piece.path_m : 0), 0);
  const indices = run.map((_, index) => index);
  const entry = corner(run, indices.slice(0, Math.max(1, fan)), total_m);
  const leaving =
    exit === 'wall' ? [] : corner(run, indices.slice(Math.min(fan + 1, run.length - 1)).reverse(), total_m);
  // In the drawing a bore is about a tenth of the height; the roof is near above, so no step leads over the axis.
  const lowest = widest_m * (exit === 'soffit' ? 0.45 : 0.9);
  const lastUp = Math.max(...entry.map((turn) => turn.index));
  const firstOut = Math.min(run.length, ...leaving.map((turn) => turn.index));
  let drift = 0;
  const deepest_m: number[] = [];
  const steps = run.map((piece, index): Step[] => {
    let deepest = drift;
    const own = bends(piece).flatMap((bend, k): Step[] => {
      const isTurn = [...entry, ...leaving].some(
        (turn) => turn.index === index && turn.bend === (piece.kind === 'duct' ? k : -1),
      );
      if (isTurn) return [];
      let half = radians(clamp(bend.angle_deg, 5, 150)) / 2;
      let ratio = clamp(bend.radiusRatio, 0.5, 2);
      if (index < lastUp || index > firstOut) {
        // A standing duct steps along the run, never back.
        return [{ half, ratio: Math.min(ratio, 0.7), down: true }];
      }
      const bore = bore_m[index]!;
      const drop = () => 2 * ratio * bore * (1 - Math.cos(half));
      const down = lowest - drift >= Math.min(drop(), drift);
      const room = down ? lowest - drift : drift;
      if (drop() > room) ratio = Math.max(Math.min(0.6, ratio), (ratio * room) / drop());
      if (drop() > room) half = Math.acos(clamp(1 - room / (2 * ratio * bore), 0.3, 1));
      drift += down ? drop() : -drop();
      deepest = Math.max(deepest, drift);
      return half > 0.01 ? [{ half, ratio, down }] : [];
    });
    deepest_m.push(deepest);
    return own;
  });
  return { bore_m, boreTo_m, widest_m, fan: found, exit, entry, leaving, steps, deepest_m, end_m: drift };
}
