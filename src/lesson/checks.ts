/**
 * What can be asked of a reader's eyes, and the true answer worked out from the engine's results. A
 * lesson names a check and some of its answers; the answers of `which-piece` are the ids of pieces.
 */
import type { CurvePoint, Solution } from '#physics';

/** A run before and after one fault: both solutions, and both curves read at the same flows. */
export interface Sight {
  readonly before: Solution;
  readonly after: Solution;
  readonly system: { readonly before: readonly CurvePoint[]; readonly after: readonly CurvePoint[] };
  readonly fan: { readonly before: readonly CurvePoint[]; readonly after: readonly CurvePoint[] };
  readonly required_L_s?: number;
  /** What the step's last reading says of the required rate, by the meter's error. */
  readonly verdict?: 'pass' | 'marginal' | 'fail';
}

interface Check {
  /** Answers a lesson may offer; absent where they are ids of pieces. */
  readonly answers?: readonly string[];
  /** The true answer; null where what happened is none of the answers. */
  readonly see: (sight: Sight) => string | null;
}

/** Share of the scale below which two marks on a chart cannot be told apart (model assumption). */
export const SAME = 0.005;
/** Pa that count as nothing where a curve meets the pressure axis. */
const NOTHING_PA = 0.5;

type Way = 'up' | 'down' | 'level';

function way(before: number, after: number): Way {
  if (Math.abs(after - before) <= SAME * Math.max(Math.abs(before), Math.abs(after))) return 'level';
  return after > before ? 'up' : 'down';
}

/** How far the second curve stands above the first, in order of rising flow. */
function gaps({ before, after }: Sight['system']): number[] {
  const heights = new Map(before.map((point) => [point.flow_L_s, point.pressure_Pa]));
  return [...after]
    .sort((one, other) => one.flow_L_s - other.flow_L_s)
    .flatMap((point) => {
      const height = heights.get(point.flow_L_s);
      return height === undefined ? [] : [point.pressure_Pa - height];
    });
}

function topOf(curves: Sight['system']): number {
  return Math.max(...[...curves.before, ...curves.after].map((point) => point.pressure_Pa));
}

function seeSystemCurve({ system }: Sight): string | null {
  const gap = gaps(system);
  const first = gap[0];
  const last = gap.at(-1);
  if (first === undefined || last === undefined || gap.length < 3) return null;
  if (gap.every((height) => Math.abs(height) <= SAME * topOf(system))) return 'unchanged';
  if (Math.abs(first) > NOTHING_PA) return Math.abs(last - first) <= 0.2 * Math.abs(first) ? 'shifted' : null;
  const grows = gap.every((height, i) => i === 0 || Math.abs(height) >= Math.abs(gap[i - 1]!));
  if (!grows) return null;
  return last > 0 ? 'steeper' : 'flatter';
}

function seeOperatingPoint({ before, after }: Sight): string | null {
  const flow = way(before.flow_L_s.fan, after.flow_L_s.fan);
  const pressure = way(before.fan.pressure_Pa, after.fan.pressure_Pa);
  if (flow === 'level') return pressure === 'level' ? 'still' : null;
  if (flow === 'up') return 'right';
  return pressure === 'up' ? 'up-left' : pressure === 'down' ? 'down-left' : null;
}

function seeWhichPiece({ before, after }: Sight): string | null {
  const grown = after.pieces
    .map((piece) => ({
      id: piece.id,
      growth: piece.loss_Pa - (before.pieces.find((other) => other.id === piece.id)?.loss_Pa ?? 0),
    }))
    .filter(({ growth }) => growth > NOTHING_PA)
    .sort((one, other) => other.growth - one.growth);
  // Two pieces that both grew leave no single answer to "which one".
  return grown.length === 1 ? grown[0]!.id : null;
}

function seeFanPressure({ before, after }: Sight): string {
  const words: Record<Way, string> = { up: 'rose', down: 'fell', level: 'same' };
  return words[way(before.fan.pressure_Pa, after.fan.pressure_Pa)];
}

function seeFanCurve({ fan }: Sight): string | null {
  const gap = gaps(fan);
  const least = SAME * topOf(fan);
  if (gap.length < 3) return null;
  if (gap.every((height) => Math.abs(height) <= least)) return 'unchanged';
  if (gap.every((height) => height <= least)) return 'dropped';
  return gap.every((height) => height >= -least) ? 'lifted' : null;
}

type Number = (solution: Solution) => number;
const outdoors: Number = ({ flow_L_s }) => flow_L_s.outdoors;

/** Which way a number of the solution went, in the words of the check. */
function went<Word extends string>(number: Number, words: Record<Way, Word>) {
  return ({ before, after }: Sight): Word => words[way(number(before), number(after))];
}
const MOVED = { up: 'rose', down: 'fell', level: 'same' } as const;

/** Shares of the flow lost that a reader can tell apart: up to 2, 15, 35 and 65 % (model assumption). */
function seeShareLost({ before, after }: Sight): string | null {
  const lost = 1 - outdoors(after) / outdoors(before);
  if (!(lost > -0.02)) return null;
  return lost < 0.02
    ? 'nothing'
    : lost < 0.15
      ? 'a-little'
      : lost < 0.35
        ? 'a-quarter'
        : lost < 0.65
          ? 'half'
          : 'most';
}

/** Shares by which the flow grew that a reader can tell apart, the same steps as of what is lost. */
function seeShareGained({ before, after }: Sight): string | null {
  const gained = outdoors(after) / outdoors(before) - 1;
  if (!(gained > -0.02)) return null;
  return gained < 0.02
    ? 'nothing'
    : gained < 0.15
      ? 'a-little'
      : gained < 0.35
        ? 'a-quarter'
        : gained < 0.65
          ? 'half'
          : 'more';
}

function seeBiggestLoss({ after }: Sight): string | null {
  const [first, second] = [...after.pieces].sort((one, other) => other.loss_Pa - one.loss_Pa);
  return first && second && first.loss_Pa - second.loss_Pa > NOTHING_PA ? first.id : null;
}

function seeRequired({ after, required_L_s }: Sight): string | null {
  if (required_L_s === undefined) return null;
  return outdoors(after) >= required_L_s ? 'passes' : 'short';
}

/** Which way air goes through the leaks into or out of the roof space, L/s that count as none: 0.05. */
function seeRoofLeak({ after }: Sight): string | null {
  const flows = after.leaks.map(({ flow_L_s }) => flow_L_s).filter((flow) => Math.abs(flow) > 0.05);
  if (flows.length === 0) return 'none';
  if (flows.every((flow) => flow > 0)) return 'out';
  return flows.every((flow) => flow < 0) ? 'in' : 'both';
}

export const CHECKS = {
  'system-curve': { answers: ['steeper', 'flatter', 'shifted', 'unchanged'], see: seeSystemCurve },
  'operating-point': { answers: ['up-left', 'down-left', 'right', 'still'], see: seeOperatingPoint },
  'which-piece': { see: seeWhichPiece },
  'fan-pressure': { answers: ['rose', 'fell', 'same'], see: seeFanPressure },
  'fan-curve': { answers: ['unchanged', 'dropped', 'lifted'], see: seeFanCurve },
  'outlet-flow': { answers: ['rose', 'fell', 'same'], see: went(outdoors, MOVED) },
  'room-flow': { answers: ['rose', 'fell', 'same'], see: went(({ flow_L_s }) => flow_L_s.room, MOVED) },
  'fan-power': { answers: ['rose', 'fell', 'same'], see: went(({ fan }) => fan.power_W ?? 0, MOVED) },
  'litres-per-watt': {
    answers: ['rose', 'fell', 'same'],
    see: went(({ fan }) => fan.litresPerWatt ?? 0, MOVED),
  },
  /** Of two cases, the step's first and second stage. */
  'which-more': {
    answers: ['first', 'second', 'same'],
    see: went(outdoors, { up: 'second', down: 'first', level: 'same' }),
  },
  /** Minutes to clear go with one over the flow from the room. */
  'clear-time': {
    answers: ['longer', 'shorter', 'same'],
    see: went(({ flow_L_s }) => flow_L_s.room, { up: 'shorter', down: 'longer', level: 'same' }),
  },
  'share-lost': { answers: ['nothing', 'a-little', 'a-quarter', 'half', 'most'], see: seeShareLost },
  'share-gained': { answers: ['nothing', 'a-little', 'a-quarter', 'half', 'more'], see: seeShareGained },
  'biggest-loss': { see: seeBiggestLoss },
  required: { answers: ['passes', 'short'], see: seeRequired },
  verdict: { answers: ['pass', 'marginal', 'fail'], see: ({ verdict }) => verdict ?? null },
  'roof-leak': { answers: ['out', 'in', 'both', 'none'], see: seeRoofLeak },
} as const satisfies Record<string, Check>;

export type CheckName = keyof typeof CHECKS;
export const CHECK_NAMES = Object.keys(CHECKS) as CheckName[];

/** The answers a lesson may offer for a check; null where any piece of the rig may be named. */
export function answersOf(name: CheckName): readonly string[] | null {
  const check: Check = CHECKS[name];
  return check.answers ?? null;
}

/** What a reader who looks rightly must say; null where no answer of the check fits. */
export function trueAnswer(name: CheckName, sight: Sight): string | null {
  return CHECKS[name].see(sight);
}
