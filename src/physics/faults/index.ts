/**
 * The faults, one file a kind: `fault(rig, place, amount) -> rig`. An amount of 0 changes nothing. Faults
 * are marks on the pieces, so any order of putting them in gives the same rig.
 */
import type { Fault, FaultKind, Piece, Rig, Stock } from '../types.ts';
import { crimp } from './crimp.ts';
import { extraLength } from './extra-length.ts';
import { flexibleSwap } from './flexible-swap.ts';
import { sag } from './sag.ts';
import { tightTies } from './tight-ties.ts';

export interface FaultMeasure {
  readonly quantity: 'sag-ratio' | 'flattened-share' | 'swapped-share' | 'tied-share' | 'extra-length';
  /** A share, or metres for extra length. */
  readonly value: number;
}

export interface FaultDefinition {
  readonly kind: FaultKind;
  /** Whether the fault can befall this piece. */
  readonly fits: (piece: Piece, stock: Stock) => boolean;
  /** What an amount 0 to 1 means on the job. */
  readonly measure: (amount: number) => FaultMeasure;
  readonly apply: (rig: Rig, fault: Fault) => Rig;
}

export const FAULTS: Readonly<Record<FaultKind, FaultDefinition>> = {
  sag,
  crimp,
  'flexible-swap': flexibleSwap,
  'tight-ties': tightTies,
  'extra-length': extraLength,
};

/** One fault put in. Amount 0 to 1. */
export function addFault(rig: Rig, fault: Fault): Rig {
  return fault.amount > 0 ? FAULTS[fault.kind].apply(rig, fault) : rig;
}

/** All of a rig's listed faults put into its pieces; the list itself is left as it was. */
export function applyFaults(rig: Rig): Rig {
  return (rig.faults ?? []).reduce(addFault, rig);
}
