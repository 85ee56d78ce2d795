/**
 * How well a cause of unknown amount explains readings, with all its amounts weighed: the likelihood
 * averaged over the prior of the amount (Bayes' evidence), as a logarithm. A cause that must be exactly so
 * pays for it, and a second cause has to earn its place.
 */

/** Smallest amount that counts as a fault (model assumption); chances lie from here to 1, falling off as exp(-amount / mean). */
export const LEAST_AMOUNT = 0.02;

/** Log of the prior density of an amount from LEAST_AMOUNT to 1. */
export function logPrior(amount: number, mean: number): number {
  const whole = mean * (Math.exp(-LEAST_AMOUNT / mean) - Math.exp(-1 / mean));
  return -amount / mean - Math.log(whole);
}

/** Log of a sum of which only the logs of the terms are at hand; -Infinity of nothing. */
export function logSum(logs: readonly number[]): number {
  const top = Math.max(-Infinity, ...logs);
  if (top === -Infinity) return top;
  return top + Math.log(logs.reduce((sum, log) => sum + Math.exp(log - top), 0));
}

/** What the model gives at one amount. */
export interface Weighed<Extra> {
  /** Log of likelihood times prior. */
  readonly log: number;
  /** Computed less read, in standard errors. */
  readonly off: readonly number[];
  readonly extra: Extra;
}

export interface Node<Extra> extends Weighed<Extra> {
  readonly amount: number;
}

export interface Evidence<Extra> {
  readonly log: number;
  readonly best: Node<Extra>;
}

/** A stretch whose peak lies this far below the best (a chance of 1 in 3000) is not looked into. */
const WORTH = 8;
/** A stretch over which the readings move by fewer standard errors is straight enough. */
const SMOOTH = 0.8;
/** Parts into which a stretch is cut for its integral. */
const PARTS = 8;

const half = (off: readonly number[]) => off.reduce((sum, x) => sum + x * x, 0) / 2;

/** A stretch between two nodes, along which what is off is taken to change in a straight line. */
class Stretch<Extra> {
  /** How far the readings move over it, in standard errors. */
  readonly moved: number;
  /** Where on it, 0 to 1, the readings are met best. */
  readonly peak: number;
  readonly potential: number;
  readonly log: number;

  constructor(
    readonly from: Node<Extra>,
    readonly to: Node<Extra>,
  ) {
    const change = to.off.map((x, i) => x - from.off[i]!);
    this.moved = Math.sqrt(2 * half(change));
    const along = change.reduce((sum, d, i) => sum - d * from.off[i]!, 0);
    this.peak = this.moved > 0 ? Math.min(1, Math.max(0, along / this.moved ** 2)) : 0.5;
    const [a, b] = [from.log + half(from.off), to.log + half(to.off)];
    const logAt = (t: number) => a + (b - a) * t - half(change.map((d, i) => from.off[i]! + d * t));
    this.potential = logAt(this.peak);
    const parts = Array.from({ length: PARTS }, (_, i) => logAt((i + 0.5) / PARTS));
    this.log = logSum(parts) + Math.log((to.amount - from.amount) / PARTS);
  }
}

/**
 * Integrates likelihood times prior over the amount, from nodes at `start` (rising) and at most `cuts` more,
 * put where the readings would be met best. `at` gives null where the model has no answer; null when it
 * has answers at fewer than two nodes.
 */
export function evidence<Extra>(
  at: (amount: number) => Weighed<Extra> | null,
  start: readonly number[],
  cuts: number,
): Evidence<Extra> | null {
  const nodeAt = (amount: number): Node<Extra> | null => {
    const found = at(amount);
    return found && { amount, ...found };
  };
  const nodes = start.map(nodeAt).filter((node) => node !== null);
  if (nodes.length < 2) return null;
  const stretches = nodes.slice(1).map((node, i) => new Stretch(nodes[i]!, node));
  for (let cut = 0; cut < cuts; cut++) {
    const top = Math.max(...stretches.map(({ potential }) => potential));
    const rough = (each: Stretch<Extra>) => each.potential > top - WORTH && each.moved > SMOOTH;
    const index = stretches.reduce(
      (most, each, i) => (rough(each) && each.moved > (stretches[most]?.moved ?? 0) ? i : most),
      -1,
    );
    const widest = stretches[index];
    if (!widest) break;
    const { from, to } = widest;
    const share = Math.min(0.85, Math.max(0.15, widest.peak));
    const node = nodeAt(from.amount + share * (to.amount - from.amount));
    if (!node) break;
    nodes.push(node);
    stretches.splice(index, 1, new Stretch(from, node), new Stretch(node, to));
  }
  return {
    log: logSum(stretches.map(({ log }) => log)),
    best: nodes.reduce((a, b) => (b.log > a.log ? b : a)),
  };
}
