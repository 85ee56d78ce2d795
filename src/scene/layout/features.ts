/** What a duct does on its way: bends shown as steps, spare length hanging in loops. */
import { clamp } from './numbers.ts';
import type { Step } from './plan.ts';

export { radians } from './plan.ts';

export interface Leg {
  readonly piece: string;
  /** Pixels along. */
  readonly length: number;
  /** Radians, clockwise on the page; 0 for a straight. */
  readonly turn: number;
  /** Metres of run this stands for. */
  readonly metres: number;
  /** Whether it belongs to the stretch that runs level, steps and loops in it included. */
  readonly level: boolean;
}

/** A bend that lies in plan: two arcs that turn as much in all and come back to the heading before. */
export function stepLegs(piece: string, step: Step, bore: number, level: boolean): Leg[] {
  const first = step.down ? step.half : -step.half;
  return [first, -first].map((turn) => ({
    piece,
    length: step.ratio * bore * step.half,
    turn,
    metres: 0,
    level,
  }));
}

/** Hanging loops: over, down, round and up again; shallow ones open out so that they grow smoothly. */
export function loops(
  piece: string,
  room: number,
  count: number,
  bore: number,
  extra: number,
  drop: number,
): Leg[][] {
  const whole = Math.max(1, Math.ceil(count - 1e-9));
  const radius = clamp(room / (whole * 4.6), bore * 0.56, bore * 0.85);
  const fitting = Math.max(1, Math.min(whole, Math.floor(room / (radius * 4.2))));
  if (room < radius * 4.2) return [];
  // As deep as the ceiling lets it: whole quarter turns with legs, or where there is less room a shallower swing.
  const swing = Math.acos(clamp(1 - drop / (2 * radius), 0, 1));
  const each = Math.min(
    extra / fitting,
    4 * radius * (swing - Math.sin(swing)) + 2 * Math.max(0, drop - 2 * radius),
  );
  return Array.from({ length: fitting }, () => {
    // An open loop of angle a uses 4r(a - sin a) more line than its width; a full one adds its two legs.
    const full = 4 * radius * (Math.PI / 2 - 1);
    let angle = Math.PI / 2;
    if (each < full) {
      angle = Math.cbrt((each / (4 * radius)) * 6);
      for (let k = 0; k < 4; k += 1)
        angle -= (angle - Math.sin(angle) - each / (4 * radius)) / Math.max(1e-6, 1 - Math.cos(angle));
    }
    const leg = Math.max(0, (each - full) / 2);
    const arc = (turn: number): Leg => ({
      piece,
      length: radius * Math.abs(turn),
      turn,
      metres: 0,
      level: true,
    });
    const straight: Leg = { piece, length: leg, turn: 0, metres: 0, level: true };
    return [arc(angle), straight, arc(-2 * angle), straight, arc(angle)];
  });
}

export const across = (legs: readonly Leg[]) => {
  let heading = 0;
  let x = 0;
  for (const leg of legs) {
    if (leg.turn === 0) x += leg.length * Math.cos(heading);
    else {
      const radius = leg.length / leg.turn;
      x += radius * (Math.sin(heading + leg.turn) - Math.sin(heading));
      heading += leg.turn;
    }
  }
  return x;
};
