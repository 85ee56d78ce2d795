/**
 * The faults, one file a kind: `fault(rig, place, amount) -> rig`. An amount of 0 changes nothing. Faults
 * are marks on the pieces, so any order of putting them in gives the same rig.
 */
import type { Cause, Fault, FaultKind, Piece, Rig, Stock } from '../types.ts';
import { bendAtFan } from './bend-at-fan.ts';
import { blockedCowl } from './blocked-cowl.ts';
import { blockedGrille } from './blocked-grille.ts';
import { crimp } from './crimp.ts';
import { crushed } from './crushed.ts';
import { dented } from './dented.ts';
import { extraLength } from './extra-length.ts';
import { fanReversed } from './fan-reversed.ts';
import { flexibleSwap } from './flexible-swap.ts';
import { jointOff } from './joint-off.ts';
import { jointOpen } from './joint-open.ts';
import { jointWeep } from './joint-weep.ts';
import { noMakeUpAir } from './no-make-up-air.ts';
import { sag } from './sag.ts';
import { screenedCowl } from './screened-cowl.ts';
import { stuckDamper } from './stuck-damper.ts';
import { tightTies } from './tight-ties.ts';
import { undersized } from './undersized.ts';
import { weakFan } from './weak-fan.ts';

export interface FaultMeasure {
  readonly quantity:
    | 'sag-ratio'
    | 'flattened-share'
    | 'swapped-share'
    | 'tied-share'
    | 'extra-length'
    | 'bend-angle'
    | 'gap'
    | 'dent-depth'
    | 'blocked-share'
    | 'flap-angle'
    | 'bore-missing'
    | 'sealed-share'
    | 'speed-missing';
  /** A share; metres for extra length, millimetres for a gap, degrees for an angle. */
  readonly value: number;
}

export interface FaultDefinition {
  readonly kind: FaultKind;
  /** What the loss it makes is booked under, at its piece. */
  readonly causes: readonly Cause[];
  /** Flows that more of it can raise; the file of the fault says why. */
  readonly mayRaise?: readonly ('room' | 'fan' | 'outdoors')[];
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
  'bend-at-fan': bendAtFan,
  'fan-reversed': fanReversed,
  'joint-weep': jointWeep,
  'joint-open': jointOpen,
  'joint-off': jointOff,
  crushed,
  dented,
  'blocked-grille': blockedGrille,
  'blocked-cowl': blockedCowl,
  'screened-cowl': screenedCowl,
  'stuck-damper': stuckDamper,
  undersized,
  'no-make-up-air': noMakeUpAir,
  'weak-fan': weakFan,
};

/** One fault put in. Amount 0 to 1. */
export function addFault(rig: Rig, fault: Fault): Rig {
  return fault.amount > 0 ? FAULTS[fault.kind].apply(rig, fault) : rig;
}

/** All of a rig's listed faults put into its pieces; the list itself is left as it was. */
export function applyFaults(rig: Rig): Rig {
  return (rig.faults ?? []).reduce(addFault, rig);
}
