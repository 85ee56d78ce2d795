/** The standing end of a run: from ceiling or way out, through its bends, to level; fitted into the height there is. */
import type { Piece } from '#physics';
import { stepLegs, type Leg } from './features.ts';
import { clamp } from './numbers.ts';
import type { Plan, Turn } from './plan.ts';

export interface Standing {
  /** By index of the run, in order from the standing end to level; its first leg is the neck. */
  readonly legs: ReadonlyMap<number, readonly Leg[]>;
  /** Pixels of the duct that turns last which are spent standing. */
  readonly spent: number;
  /** Last piece of it, which may run on level. */
  readonly last: number;
  /** Id of a duct too long to stand up here, drawn short with a break mark. */
  readonly broken: string | null;
}

interface Item {
  readonly index: number;
  readonly kind: 'neck' | 'riser' | 'straight' | 'turn' | 'step';
  length: number;
  turn: number;
}

export interface Setting {
  readonly run: readonly Piece[];
  readonly plan: Plan;
  /** Pixels of a metre along, and of a metre of bore. */
  readonly metre: number;
  readonly bored: number;
  /** Drawn length of anything but ducts and elbows. */
  readonly lengthOf: (index: number) => number;
}

/** What one piece adds, met from the standing end. A turning duct stands up as far as there is room for. */
function itemsOf(setting: Setting, index: number, turns: readonly Turn[], alone: boolean, last: boolean) {
  const { run, plan, metre, bored } = setting;
  const piece = run[index]!;
  const bore = plan.bore_m[index]! * bored;
  const own = turns.filter((turn) => turn.index === index);
  const arcs = own.map((turn): Item => ({
    index,
    kind: 'turn',
    length: turn.ratio * bore,
    turn: turn.angle,
  }));
  if (piece.kind === 'duct') {
    const arc = arcs.reduce((sum, item) => sum + item.length * item.turn, 0);
    const long = Math.max(0, piece.path_m * metre - arc);
    if (arcs.length === 0) {
      const steps = plan.steps[index]!;
      const part = long / (steps.length + 1);
      const straight: Item = { index, kind: 'straight', length: part, turn: 0 };
      return [
        straight,
        ...steps.flatMap(({ half, ratio, down }): Item[] => [
          { index, kind: 'step', length: ratio * bore, turn: down ? half : -half },
          { ...straight },
        ]),
      ];
    }
    const riser: Item = { index, kind: 'riser', length: alone ? long : last ? 0 : long / 2, turn: 0 };
    const between: Item = { index, kind: 'straight', length: Math.min(bore * 0.6, long * 0.15), turn: 0 };
    const out: Item[] = alone ? [riser] : [{ ...riser, kind: 'straight' }];
    arcs.forEach((item, k) => out.push(...(k > 0 ? [{ ...between }] : []), item));
    if (!last) out.push({ index, kind: 'straight', length: long / 2, turn: 0 });
    return out;
  }
  if (arcs.length > 0) return arcs;
  if (piece.kind === 'elbow')
    return plan.steps[index]!.map(({ half, ratio, down }): Item => ({
      index,
      kind: 'step',
      length: ratio * bore,
      turn: down ? half : -half,
    }));
  const length = setting.lengthOf(index);
  return length > 0 ? [{ index, kind: 'straight', length, turn: 0 } satisfies Item] : [];
}

/** Height taken by arcs and by straights at their full length. */
function heights(items: readonly Item[]) {
  let elevation = Math.PI / 2;
  let turns = 0;
  let steps = 0;
  let straights = 0;
  for (const item of items) {
    if (item.kind === 'straight') straights += item.length * Math.sin(elevation);
    else if (item.kind === 'turn') {
      turns += item.length * (Math.cos(elevation - item.turn) - Math.cos(elevation));
      elevation -= item.turn;
    } else if (item.kind === 'step')
      steps += 2 * item.length * Math.sin(Math.abs(item.turn)) * Math.sin(elevation);
  }
  return { turns, steps, straights };
}

export function stand(
  setting: Setting,
  order: readonly number[],
  turns: readonly Turn[],
  height: number,
  least: number,
): Standing {
  const last = turns[turns.length - 1]!.index;
  const reached = order.slice(0, order.indexOf(last) + 1);
  const alone = turns.length === 1;
  const items: Item[] = [{ index: order[0]!, kind: 'neck', length: 0, turn: 0 }];
  for (const index of reached) items.push(...itemsOf(setting, index, turns, alone, index === last));

  const room = height - least;
  let used = heights(items);
  if (used.turns + used.steps > room) {
    // Tighter bends where the height is short; steps that would have to turn on the spot are left out.
    const tight = clamp((room * 0.75) / used.turns, 0.3, 1);
    const closer = clamp((room - used.turns * tight) / Math.max(1e-6, used.steps), 0, 1);
    const kept = closer < 0.75 ? 0 : closer;
    const factor = kept > 0 ? tight : clamp(room / used.turns, 0.3, 1);
    for (const item of items) {
      if (item.kind === 'turn') item.length *= factor;
      if (item.kind === 'step') item.length *= kept;
    }
    used = heights(items);
  }
  const free = room - used.turns - used.steps;
  const squeeze = used.straights > Math.max(0, free) ? Math.max(0, free) / used.straights : 1;
  const riser = items.find((item) => item.kind === 'riser');
  const risen = riser ? clamp(riser.length, 0, Math.max(0, free - used.straights * squeeze)) : 0;
  const neck = Math.max(least, height - used.turns - used.steps - used.straights * squeeze - risen);

  const legs = new Map<number, Leg[]>();
  let spent = 0;
  let broken: string | null = null;
  for (const item of items) {
    const piece = setting.run[item.index]!;
    const own = legs.get(item.index) ?? [];
    legs.set(item.index, own);
    const plain = { piece: piece.id, turn: 0, metres: 0, level: false };
    const before = own.length;
    if (item.kind === 'turn') own.push({ ...plain, length: item.length * item.turn, turn: item.turn });
    else if (item.kind === 'step') {
      const half = Math.abs(item.turn);
      own.push(...stepLegs(piece.id, { half, ratio: 1, down: item.turn > 0 }, item.length, false));
    } else {
      const length =
        item.kind === 'neck' ? neck : item.kind === 'riser' ? risen : Math.max(0, item.length * squeeze);
      own.push({ ...plain, length });
      if (item.kind === 'straight' && squeeze < 0.97 && piece.kind === 'duct') broken ??= piece.id;
    }
    if (item.index === last && item.kind !== 'neck')
      spent += own.slice(before).reduce((sum, leg) => sum + leg.length, 0);
  }
  return { legs, spent, last, broken };
}
