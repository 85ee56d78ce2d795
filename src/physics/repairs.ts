/**
 * The put-right list: the order of repairs that moves the most air while the work goes on. Every order takes
 * the same minutes in all, so the best one has the largest area under flow against minutes worked.
 */
import { refused, type Refusal } from './refusal.ts';
import { solveSubsets, type SubsetOptions, type Subsets } from './subsets.ts';
import type { Failure, Fault, Mark, Rig, Stock } from './types.ts';

export interface Labour {
  readonly minutes: number;
  readonly mark: Mark;
}

const invented = (minutes: number): Labour => ({ minutes, mark: 'invented' });

/** Minutes to put a fault right, by kind: invented, to be set to one's own. */
export const LABOUR: Readonly<Record<string, Labour>> = {
  sag: invented(20),
  crimp: invented(30),
  'flexible-swap': invented(45),
  'tight-ties': invented(10),
  'extra-length': invented(25),
  'bend-at-fan': invented(60),
  'fan-reversed': invented(45),
  'joint-weep': invented(10),
  'joint-open': invented(15),
  'joint-off': invented(20),
  crushed: invented(30),
  'blocked-grille': invented(10),
  'blocked-cowl': invented(25),
  'screened-cowl': invented(20),
  'stuck-damper': invented(20),
  undersized: invented(90),
  'no-make-up-air': invented(30),
  'weak-fan': invented(60),
  dented: invented(40),
};
/** For a kind not in the table. */
export const OTHER_LABOUR: Labour = invented(30);

export interface Repair {
  readonly fault: Fault;
  readonly minutes: number;
  /** Won by this repair after those before it. */
  readonly gain_L_s: number;
  /** Gain over minutes of work, L/s per minute. */
  readonly gainRate_L_s_min: number;
  /** Flow once it is done. */
  readonly flow_L_s: number;
}

export interface PutRight {
  readonly outcome: 'solved';
  readonly before_L_s: number;
  readonly after_L_s: number;
  readonly repairs: readonly Repair[];
  readonly minutes: number;
  /** Area under flow against minutes worked, each repair counting from when it is done: litres moved meanwhile. */
  readonly moved_L: number;
}

export interface RepairOptions extends SubsetOptions {
  /** Minutes by fault kind, over the table's. */
  readonly minutes?: Readonly<Record<string, number>>;
}

/**
 * Best order of n jobs: exact, by working back from all done (dynamic programming over subsets). `flows[present]`
 * with bit i for job i still to do; `minutes` by job. Equal orders go to the one earlier in the list.
 */
export function bestOrder(minutes: readonly number[], flows: ArrayLike<number>) {
  const jobs = minutes.length;
  const best = new Float64Array(2 ** jobs);
  const first = new Int8Array(2 ** jobs).fill(-1);
  for (let present = 1; present < best.length; present++) {
    best[present] = -Infinity;
    for (let i = 0; i < jobs; i++) {
      if (!(present & (1 << i))) continue;
      const area = flows[present]! * minutes[i]! + best[present & ~(1 << i)]!;
      // A later job must be better by more than rounding.
      const margin = 1e-12 * Math.abs(area);
      if (first[present] === -1 || area > best[present]! + margin) {
        best[present] = area;
        first[present] = i;
      }
    }
  }
  const order: number[] = [];
  for (let present = best.length - 1; present > 0; present &= ~(1 << order.at(-1)!))
    order.push(first[present]!);
  return { order, area: best[best.length - 1]! };
}

/** The list from flows already solved. */
export function putRightOf(
  { faults, flows_L_s }: Subsets,
  own: Readonly<Record<string, number>> = {},
): PutRight | Refusal {
  const minutes = faults.map(({ kind }) => own[kind] ?? (LABOUR[kind] ?? OTHER_LABOUR).minutes);
  const wrong = minutes.find((each) => !(each > 0 && each < Infinity));
  if (wrong !== undefined) return refused('minutes-not-positive', wrong, [0, Number.MAX_VALUE], 'min');
  const { order, area } = bestOrder(minutes, flows_L_s);
  let present = flows_L_s.length - 1;
  const repairs = order.map((i): Repair => {
    const was = flows_L_s[present]!;
    present &= ~(1 << i);
    const gain_L_s = flows_L_s[present]! - was;
    return {
      fault: faults[i]!,
      minutes: minutes[i]!,
      gain_L_s,
      gainRate_L_s_min: gain_L_s / minutes[i]!,
      flow_L_s: flows_L_s[present]!,
    };
  });
  return {
    outcome: 'solved',
    before_L_s: flows_L_s[flows_L_s.length - 1]!,
    after_L_s: flows_L_s[0]!,
    repairs,
    minutes: minutes.reduce((sum, each) => sum + each, 0),
    moved_L: area * 60,
  };
}

/** The put-right list of a rig's faults; counts the flow outdoors unless told otherwise. At most 12 faults (`MOST_FAULTS` says why). */
export function putRight(
  rig: Rig,
  stock: Stock,
  { minutes, ...options }: RepairOptions = {},
): PutRight | Failure | Refusal {
  const subsets = solveSubsets(rig, stock, options);
  return subsets.outcome === 'solved' ? putRightOf(subsets, minutes) : subsets;
}
