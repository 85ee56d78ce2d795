/**
 * The run as a walk of straights and arcs: up from the ceiling, over at its bends, then level to the wall,
 * or to where it turns up through the roof or down through the eaves. Ducts keep their length to scale;
 * fittings are drawn at the size of their enlarged bore.
 */
import type { Piece, PieceShape } from '#physics';
import { reachOf } from './ends.ts';
import { across, loops, stepLegs, type Leg } from './features.ts';
import { clamp } from './numbers.ts';
import { radians, type Plan } from './plan.ts';
import type { Scale } from './scale.ts';
import type { Sizes } from './sizes.ts';
import { stand, type Setting, type Standing } from './stand.ts';

export interface Walk {
  readonly legs: readonly Leg[];
  /** Ids of ducts too long to stand up, drawn short with a break mark. */
  readonly broken: readonly string[];
  /** x of the end, or for an exit by the wall of its inner face, measured from the start. */
  readonly width: number;
}

/** Level stretch of duct with its steps and loops set evenly in it. */
function level(
  piece: Piece & { kind: 'duct' },
  room: number,
  steps: readonly (readonly Leg[])[],
  bore: number,
  shape: PieceShape,
  scale: Scale,
  drop: number,
): Leg[] {
  const features: (readonly Leg[])[] = [...steps];
  const taken = features.reduce((sum, feature) => sum + across(feature), 0);
  if (shape.drapedLoops) {
    const sag = (shape.sag_m ?? 0) / (shape.span_m ?? 1);
    // Arc of a shallow parabola, 1 + 8/3 r^2: what the belly uses is not in the loops.
    const extra =
      Math.max(0, (shape.usedLength_m ?? 0) - piece.path_m * (1 + (8 / 3) * sag ** 2)) * scale.pixelsPerMetre;
    const clear = drop - bore / 2 - (shape.sag_m ?? 0) * scale.pixelsPerMetre * scale.enlargement;
    features.push(...loops(piece.id, room - taken, shape.drapedLoops, bore, extra, Math.max(1, clear)));
  }
  const used = features.reduce((sum, feature) => sum + across(feature), 0);
  const gap = Math.max(bore * 0.05, (room - used) / (features.length + 1));
  const plain: Leg = { piece: piece.id, length: gap, turn: 0, metres: 0, level: true };
  return [plain, ...features.flatMap((feature) => [...feature, plain])];
}

/** Spreads a piece's metres over its legs by their drawn length. */
function share(legs: readonly Leg[], metres: number): readonly Leg[] {
  if (metres === 0) return legs;
  const total = legs.reduce((sum, leg) => sum + leg.length, 0) || 1;
  return legs.map((leg) => ({ ...leg, metres: (metres * leg.length) / total }));
}

/** Drawn length of what is neither duct nor elbow. */
function lengthOf(piece: Piece, plan: Plan, index: number, bored: number, size: Sizes): number {
  const bore = plan.bore_m[index]! * bored;
  if (piece.kind === 'fan') return bore * (size.wide ? 2.5 : 2.1);
  if (piece.kind === 'fitting') return bore * 0.8;
  if (piece.kind === 'damper') return bore * 1.3;
  if (piece.kind !== 'reducer') return 0;
  const change = Math.abs(plan.boreTo_m[index]! - plan.bore_m[index]!) * bored;
  if (piece.form === 'sudden') return plan.widest_m * bored * 0.5;
  const cone = change / 2 / Math.tan(radians(clamp(piece.angle_deg ?? 30, 8, 120)) / 2);
  return clamp(cone, bore * 0.3, bore * 2.2);
}

/** Legs of the way out: a standing end walked backwards, which for a roof turns the other way. */
function reversed(standing: Standing, index: number, up: boolean): Leg[] {
  const legs = standing.legs.get(index) ?? [];
  return legs.map((leg) => (up ? { ...leg, turn: -leg.turn || 0 } : leg)).reverse();
}

export function walk(
  run: readonly Piece[],
  plan: Plan,
  scale: Scale,
  size: Sizes,
  shapes: ReadonlyMap<string, PieceShape>,
): Walk {
  const bored = scale.pixelsPerMetre * scale.enlargement;
  const metre = scale.pixelsPerMetre;
  const setting: Setting = {
    run,
    plan,
    metre,
    bored,
    lengthOf: (index) => lengthOf(run[index]!, plan, index, bored, size),
  };
  const face = size.ceiling + size.board;
  const order = run.map((_, index) => index);
  const up = stand(setting, order, plan.entry, face - size.axis, face - size.joistTop);
  const axis = size.axis + plan.end_m * bored;
  const out =
    plan.exit === 'wall'
      ? null
      : stand(
          setting,
          order.slice().reverse(),
          plan.leaving,
          plan.exit === 'roof' ? axis - size.mouth : size.mouth - axis,
          Math.abs(size.mouth - size.shell),
        );
  const legs: Leg[] = [];
  let width = 0;
  run.forEach((piece, index) => {
    const bore = plan.bore_m[index]! * bored;
    const metres =
      piece.kind === 'duct'
        ? piece.path_m
        : piece.kind === 'elbow'
          ? radians(piece.angle_deg) * (piece.radiusRatio ?? 1) * (piece.diameter_mm / 1000)
          : 0;
    const own: Leg[] = [...(up.legs.get(index) ?? [])];
    const steps = () => plan.steps[index]!.map((step) => stepLegs(piece.id, step, bore, true));
    const leaves = out ? index >= out.last : false;
    if (index >= up.last && !(leaves && index > out!.last)) {
      if (piece.kind === 'duct') {
        const spent = (index === up.last ? up.spent : 0) + (leaves ? out!.spent : 0);
        const room = Math.max(piece.path_m * metre - spent, index === up.last || leaves ? 0 : bore * 0.2);
        const drop = size.ceiling - size.axis - plan.deepest_m[index]! * bored - bore * 0.15;
        if (room > 0) own.push(...level(piece, room, steps(), bore, shapes.get(piece.id) ?? {}, scale, drop));
      } else if (index > up.last && !leaves) {
        if (piece.kind === 'elbow') own.push(...steps().flat());
        else if (piece.kind === 'terminal')
          own.push({
            piece: piece.id,
            length: size.wallThick + reachOf(piece.form, bore / 2),
            turn: 0,
            metres: 0,
            level: true,
          });
        else own.push({ piece: piece.id, length: setting.lengthOf(index), turn: 0, metres: 0, level: true });
      }
    }
    if (out) own.push(...reversed(out, index, plan.exit === 'roof'));
    legs.push(...share(own, metres));
    if (piece.kind === 'terminal' && plan.exit === 'wall')
      width = spanOf(legs) - size.wallThick - reachOf(piece.form, bore / 2);
  });
  return {
    legs,
    broken: [up.broken, out?.broken ?? null].filter((id) => id !== null),
    width: plan.exit === 'wall' ? width : spanOf(legs),
  };
}

/** Distance across the page from the first point, which heads up, to the last. */
function spanOf(legs: readonly Leg[]): number {
  let heading = -Math.PI / 2;
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
}
