/**
 * Every coefficient of the engine that is not a law: its value, the range it may lie in, where it comes
 * from and how far that has been verified. `solve` takes a full set, so that a range can be drawn from.
 */
import { CENTRAL, type CoefficientName } from './central.ts';
import type { Mark } from './types.ts';

export interface Coefficient {
  readonly value: number;
  readonly low: number;
  readonly high: number;
  readonly mark: Mark;
  readonly source: string;
}

export const COEFFICIENTS = {
  /** Scale on (correction factor - 1) of compressed flexible duct. */
  compression: {
    value: CENTRAL.compression,
    low: 0.7,
    high: 2,
    mark: 'transcribed',
    source: 'ASHRAE Fundamentals 2021 ch. 21 eqs 22-23; range from the scatter of published statements',
  },
  /** Scale on the loss of made bends. */
  bend: {
    value: CENTRAL.bend,
    low: 0.7,
    high: 1.3,
    mark: 'transcribed',
    source: 'Idelchik diagram 6-1; spread of four published methods about 20 %, widened for hand-made bends',
  },
  /** Scale on the turning loss of sagging duct. */
  sagTurning: {
    value: CENTRAL.sagTurning,
    low: 0.5,
    high: 2,
    mark: 'model assumption',
    source: 'parabola between supports, each turn charged as a bend',
  },
  /** Scale on the neck loss of a crimp; thick-edged neck of length 0.5 hydraulic diameters. */
  crimpNeck: {
    value: CENTRAL.crimpNeck,
    low: 0.6,
    high: 1.2,
    mark: 'model assumption',
    source: 'Idelchik diagrams 4-12 and 4-15 for a neck; no test of a crimped flexible duct was found',
  },
  /** Scale on the system effect of a crimp at the fan inlet. */
  systemEffect: {
    value: CENTRAL.systemEffect,
    low: 0.5,
    high: 1.5,
    mark: 'model assumption',
    source: '0.5 (1/open - 1)^2 up to 2.5, of the order of handbook values for elbows at fan inlets',
  },
  /** Edge radius over neck diameter where a tie rolls the wall over. */
  tieEdge: {
    value: CENTRAL.tieEdge,
    low: 0,
    high: 0.15,
    mark: 'model assumption',
    source: 'rounded neck, Idelchik diagram 4-13 from memory',
  },
  /** Share of its full length by which flexible duct relaxes when let go. */
  relaxation: {
    value: CENTRAL.relaxation,
    low: 0.1,
    high: 0.3,
    mark: 'published',
    source: 'HPAC Engineering, December 2010: about 15 % when let go, typical site work about 30 %',
  },
  /** Quarter turns made by each metre of draped duct. */
  loopTurns: {
    value: CENTRAL.loopTurns,
    low: 1,
    high: 3,
    mark: 'model assumption',
    source: 'two 90 degree bends of radius one bore a metre',
  },
  /** Extra loss of a grille's entry to its spigot, on the duct's velocity pressure. */
  grilleEntry: {
    value: CENTRAL.grilleEntry,
    low: 0.3,
    high: 0.8,
    mark: 'model assumption',
    source: 'sharp entry 0.5 added to the face loss',
  },
  /** Entry of a bare duct end. */
  bareEntry: {
    value: CENTRAL.bareEntry,
    low: 0.72,
    high: 1.05,
    mark: 'published',
    source: 'thin-walled end: Rennels 1.05, Idelchik 0.95 to 1, through the open `fluids` library',
  },
  /** Discharge coefficient of door gaps and vents. */
  makeUpDischarge: {
    value: CENTRAL.makeUpDischarge,
    low: 0.55,
    high: 0.65,
    mark: 'model assumption',
    source: 'sharp-edged opening; a published rule for a door gap implies 0.56',
  },
  openEnd: {
    value: CENTRAL.openEnd,
    low: 1,
    high: 1,
    mark: 'published',
    source: 'all of the velocity pressure is lost at a free end',
  },
  wallCowl: {
    value: CENTRAL.wallCowl,
    low: 2,
    high: 4,
    mark: 'model assumption',
    source: 'exit 1 plus 1.5 for hood and turn, no flap',
  },
  rainCap: {
    value: CENTRAL.rainCap,
    low: 1.8,
    high: 2.5,
    mark: 'published',
    source: 'Cory: low rain cap costs one velocity pressure more than the exit',
  },
  highRainCap: {
    value: CENTRAL.highRainCap,
    low: 1.2,
    high: 1.25,
    mark: 'published',
    source: 'Cory: high rain cap 0.2 to 0.25 more than the exit',
  },
  louvre: {
    value: CENTRAL.louvre,
    low: 4.5,
    high: 11.1,
    mark: 'memory',
    source: 'EN 13030 class 1, K = 1/0.4^2 on a face the size of the duct',
  },
  /** Scale on the loss of a change of bore. */
  reducer: {
    value: CENTRAL.reducer,
    low: 0.8,
    high: 1.25,
    mark: 'published',
    source:
      'Borda-Carnot, Idelchik diagram 4-9, Rennels cones through the open `fluids` library; spread of the methods',
  },
  /** System effect of a tight bend on the flange of the fan, on the inlet velocity pressure. */
  fanBend: {
    value: CENTRAL.fanBend,
    low: 0.4,
    high: 1.2,
    mark: 'model assumption',
    source:
      'of the order of ASHRAE ED7-2 and its 1988 inlet elbow table; fades over 5 bores of straight duct',
  },
  /** Factor on the loss of an elbow close behind the fan, less 1. */
  outletBend: {
    value: CENTRAL.outletBend,
    low: 0,
    high: 0.5,
    mark: 'model assumption',
    source:
      'elbow within 2.5 bores of the fan; close-coupled fittings cost about 27 % more than their sum in one test',
  },
  /** Pressure that lifts a backdraught flap, Pa. */
  flapOpening: {
    value: CENTRAL.flapOpening,
    low: 3,
    high: 10,
    mark: 'model assumption',
    source: 'weight of a plate of 1 kg/m2 hanging near upright; a plate held level would take 10 to 13 Pa',
  },
  /** Loss of an open flap. */
  flapOpen: {
    value: CENTRAL.flapOpen,
    low: 0.3,
    high: 1,
    mark: 'model assumption',
    source: 'single blade out of the stream, above the 0.2 of a butterfly laid flat',
  },
  /** Scale on what a stuck flap loses. */
  stuckFlap: {
    value: CENTRAL.stuckFlap,
    low: 0.7,
    high: 1.5,
    mark: 'memory',
    source: 'single-leaf butterfly table of the SMACNA and ASHRAE CD9-1 kind',
  },
  /** Discharge coefficient of a gap or hole in the duct. */
  gapDischarge: {
    value: CENTRAL.gapDischarge,
    low: 0.55,
    high: 0.7,
    mark: 'memory',
    source: 'sharp-edged opening',
  },
  /** Share of what its class allows that a wall really leaks. */
  wallLeakage: {
    value: CENTRAL.wallLeakage,
    low: 0.3,
    high: 1.5,
    mark: 'model assumption',
    source: 'a class is a limit at test; a run put together on site may pass or miss it',
  },
  /** Scale on the neck loss of duct crushed under a load. */
  crushedNeck: {
    value: CENTRAL.crushedNeck,
    low: 0.6,
    high: 1.2,
    mark: 'model assumption',
    source: 'Idelchik diagrams 4-12 and 4-15 for a neck, as for a crimp; no test of crushed duct was found',
  },
  /** Scale on the loss of each dent. */
  dent: {
    value: CENTRAL.dent,
    low: 0.5,
    high: 2,
    mark: 'model assumption',
    source: 'each dent a rounded neck of the area left, Idelchik diagram 4-13 from memory',
  },
  /** Scale on the loss of a wire mesh. */
  screen: {
    value: CENTRAL.screen,
    low: 0.85,
    high: 1.35,
    mark: 'memory',
    source: 'Idelchik diagram 8-6; Blevins has 1.35 times as much where the wires are fine and slow',
  },
} as const satisfies Record<CoefficientName, Coefficient>;
