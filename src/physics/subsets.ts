/** The flow of a rig with every subset of its faults: what fair shares and the put-right list both rest on. */
import { CENTRAL, type Coefficients } from './central.ts';
import { refused, type Refusal } from './refusal.ts';
import { buildNetwork, isFailure } from './build.ts';
import { operate } from './operate.ts';
import type { Failure, Fault, Rig, Solution, Stock } from './types.ts';

/**
 * Subsets double with each fault: 12 are 4,096, about a third of a second on a leaky run. Beyond that a caller
 * is refused rather than given an estimate: drawn orders would leave shares that add up only nearly and differ
 * from seed to seed, and the best order of repairs is known to be best only while every subset is seen.
 */
export const MOST_FAULTS = 12;

export type FlowName = keyof Solution['flow_L_s'];

export interface SubsetOptions {
  readonly coefficients?: Coefficients;
  /** Which flow is counted; outdoors when absent, because that is the air the run exists to move. */
  readonly flow?: FlowName;
}

export interface Subsets {
  readonly outcome: 'solved';
  readonly faults: readonly Fault[];
  /** L/s by subset: bit i of the index says whether fault i is in. */
  readonly flows_L_s: Float64Array;
}

/** Solves the rig once for every subset of its listed faults. The Failure of the first that has no answer. */
export function solveSubsets(
  rig: Rig,
  stock: Stock,
  { coefficients = CENTRAL, flow = 'outdoors' }: SubsetOptions = {},
): Subsets | Failure | Refusal {
  const faults = rig.faults ?? [];
  if (faults.length > MOST_FAULTS)
    return refused('too-many-faults', faults.length, [0, MOST_FAULTS], 'faults');
  const flows_L_s = new Float64Array(2 ** faults.length);
  const starts = new Float64Array(flows_L_s.length);
  // All faults first, so that a slip in any of them is told at its own place in the list.
  for (let subset = flows_L_s.length - 1; subset >= 0; subset--) {
    const present = faults.filter((_, i) => subset & (1 << i));
    // The same subset and its first missing fault is solved by now: a fault apart is a good guess.
    const near = starts[subset | (subset + 1)];
    const network = buildNetwork({ ...rig, faults: present }, stock, coefficients);
    const found = isFailure(network) ? network : operate(network, near);
    if (isFailure(found)) return found;
    flows_L_s[subset] = found.flow_L_s[flow];
    starts[subset] = found.start;
  }
  return { outcome: 'solved', faults, flows_L_s };
}
