/**
 * Fair shares: how much of the flow lost to all faults together each is answerable for. Faults work on one
 * another, so what one costs depends on which were there before it; the Shapley value is its mean over every
 * order they could have gone in, and is the only division that adds up, treats equals equally and charges
 * nothing to a fault that changes nothing (Shapley 1953, from memory).
 */
import type { Refusal } from './refusal.ts';
import { solveSubsets, type SubsetOptions, type Subsets } from './subsets.ts';
import type { Failure, Fault, Rig, Stock } from './types.ts';

export interface Share {
  readonly fault: Fault;
  /** Its part of the loss; negative for a fault that raises the flow. */
  readonly share_L_s: number;
  /** Lost with this fault and no other. */
  readonly alone_L_s: number;
  /** Won back by mending this one and no other. */
  readonly last_L_s: number;
}

export interface FairShares {
  readonly outcome: 'solved';
  readonly clean_L_s: number;
  readonly faulty_L_s: number;
  /** Clean less faulty: what the shares add up to. */
  readonly loss_L_s: number;
  /** In the order of the rig's own list. */
  readonly shares: readonly Share[];
}

/** Shapley values of `players` over all subsets; `worth[subset]`, bit i for player i, `worth.length = 2^players`, all in one unit, which is the answer's. */
export function shapley(players: number, worth: ArrayLike<number>): number[] {
  // Of all orders, the share in which exactly a given set of `size` comes before a given player.
  const weights: number[] = [];
  for (let size = 0, weight = 1 / players; size < players; size++) {
    weights.push(weight);
    weight *= (size + 1) / (players - 1 - size);
  }
  const values = new Array<number>(players).fill(0);
  for (let subset = 0; subset < 2 ** players; subset++) {
    const weight = weights[ones(subset)]!;
    for (let i = 0; i < players; i++) {
      const bit = 1 << i;
      if (!(subset & bit)) values[i]! += weight * (worth[subset | bit]! - worth[subset]!);
    }
  }
  return values;
}

function ones(bits: number): number {
  let count = 0;
  for (let rest = bits; rest; rest &= rest - 1) count++;
  return count;
}

/** Shares from flows already solved, so that fair shares and the put-right list can use one set. */
export function sharesOf({ faults, flows_L_s }: Subsets): FairShares {
  const clean = flows_L_s[0]!;
  const all = flows_L_s.length - 1;
  const faulty = flows_L_s[all]!;
  const lost = flows_L_s.map((flow) => clean - flow);
  const values = shapley(faults.length, lost);
  return {
    outcome: 'solved',
    clean_L_s: clean,
    faulty_L_s: faulty,
    loss_L_s: clean - faulty,
    shares: faults.map((fault, i) => ({
      fault,
      share_L_s: values[i]!,
      alone_L_s: lost[1 << i]!,
      last_L_s: flows_L_s[all & ~(1 << i)]! - faulty,
    })),
  };
}

/** Fair shares of a rig's listed faults in the flow lost outdoors (or another), exact: 2^n solves, n at most 12 (`MOST_FAULTS` says why). */
export function fairShares(rig: Rig, stock: Stock, options?: SubsetOptions): FairShares | Failure | Refusal {
  const subsets = solveSubsets(rig, stock, options);
  return subsets.outcome === 'solved' ? sharesOf(subsets) : subsets;
}
