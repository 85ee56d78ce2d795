/**
 * The shapes that cross the engine's door. Keys end in their unit, in JSON and in code alike, so a
 * number is never read without one; inside functions everything is SI (m, m3/s, Pa, kg/m3).
 */

import type { Piece, PieceKind } from './pieces.ts';

export type * from './pieces.ts';

/** Air drawn from the room. Either the state, from which density and viscosity follow, or both outright. */
export interface Air {
  readonly temperature_C?: number;
  /** 0 to 1. */
  readonly relativeHumidity?: number;
  readonly pressure_Pa?: number;
  /** Overrides the computed density. */
  readonly density_kg_m3?: number;
  /** Overrides the computed kinematic viscosity. */
  readonly kinematicViscosity_m2_s?: number;
}

export interface Room {
  readonly volume_m3: number;
  /** Free area through which replacement air enters. */
  readonly makeUpFreeArea_mm2?: number;
  /** What the room is for, for words and drawing; a bathroom where not said. Nothing is reckoned from it. */
  readonly use?: 'bathroom' | 'toilet' | 'laundry' | 'kitchen';
}

/** The flow a rule asks for, and where the rule is written. */
export interface Requirement {
  readonly flow_L_s: number;
  readonly source: string;
  /** Id of one of the required rates in the catalogue, where the figure is one of them. */
  readonly rate?: string;
}

export interface FanPoint {
  readonly flow_L_s: number;
  readonly pressure_Pa: number;
  readonly power_W?: number;
}

/** A fan's measured curve. `pressure` says which pressure the points state. */
export interface FanTable {
  readonly name?: string;
  readonly pressure: 'total' | 'static';
  /** Area on which fan velocity pressure is reckoned; the fan piece's diameter when absent. */
  readonly outletDiameter_mm?: number;
  /** Density the points were rated at; 1.2 kg/m3 when absent (ISO 5801 standard air, from memory). */
  readonly ratingDensity_kg_m3?: number;
  readonly motor?: 'AC' | 'EC';
  /** Watts drawn by the motor's electronics at any speed. */
  readonly motorFloor_W?: number;
  /** Rated speed, shown on the drawing only. */
  readonly speed_rpm?: number;
  /** The curve has a stall dip, so pressure may rise over part of it; without this a rise is refused. */
  readonly saddle?: boolean;
  readonly points: readonly FanPoint[];
  /** Where the numbers come from: "invented" for every fan in the starter catalogue. */
  readonly origin?: string;
}

export type Behaviour = 'rigid' | 'semi-rigid' | 'flexible';

/** A duct wall: how rough it is fully extended, and how it behaves. */
export interface Material {
  readonly name: string;
  readonly behaviour: Behaviour;
  readonly roughness_mm: number;
  /** Published range of the roughness. */
  readonly roughnessRange_mm: readonly [number, number];
  readonly source: string;
  readonly mark: Mark;
}

/** How far a number has been verified. */
export type Mark =
  'published' | 'transcribed' | 'memory' | 'model assumption' | 'common practice, no source' | 'invented';

/** A fault named by kind, place (a piece id) and amount 0 to 1. */
export interface Fault {
  readonly kind: FaultKind;
  readonly at: string;
  readonly amount: number;
  /** `sag` only: span left where supports are missing. */
  readonly span_m?: number;
  /** `extra-length` only; bunched when absent. */
  readonly manner?: 'bunched' | 'draped';
  /** `bend-at-fan` put in at a fan only: straight duct between the bend and the fan; none when absent. */
  readonly straight_m?: number;
}

export type FaultKind =
  | 'sag'
  | 'crimp'
  | 'flexible-swap'
  | 'tight-ties'
  | 'extra-length'
  | 'bend-at-fan'
  | 'fan-reversed'
  | 'joint-weep'
  | 'joint-open'
  | 'joint-off'
  | 'crushed'
  | 'blocked-grille'
  | 'blocked-cowl'
  | 'screened-cowl'
  | 'stuck-damper'
  | 'undersized'
  | 'no-make-up-air'
  | 'weak-fan'
  | 'dented';

/** One room, fan, run and surroundings with its faults, in order from room to outdoors. */
export interface Rig {
  readonly name: string;
  readonly about?: string;
  readonly air?: Air;
  readonly room?: Room;
  readonly required?: Requirement;
  /** Wind (and stack) pressure at the terminal against the room's surroundings; above 0 it pushes back. */
  readonly outdoors?: { readonly wind_Pa: number };
  /** Pressure of the space the duct leaks to, against the room's surroundings; 0 when absent. */
  readonly roofSpace?: { readonly pressure_Pa: number };
  readonly run: readonly Piece[];
  readonly faults?: readonly Fault[];
}

/** Named things a rig may refer to. */
export interface Stock {
  readonly fans: Readonly<Record<string, FanTable>>;
  readonly materials: Readonly<Record<string, Material>>;
}

/** What a loss is due to. */
export type Cause =
  | 'friction'
  | 'compression'
  | 'bend'
  | 'sag'
  | 'crimp'
  | 'fan system effect'
  | 'ties'
  | 'loops'
  | 'swap'
  | 'entry'
  | 'exit'
  | 'fitting'
  | 'make-up'
  | 'fan bend'
  | 'doubling back'
  | 'crushed'
  | 'dents'
  | 'undersized'
  | 'reducer'
  | 'flap'
  | 'stuck flap'
  | 'blocked'
  | 'screen';

export interface CauseLoss {
  readonly cause: Cause;
  readonly loss_Pa: number;
}

/** The shape the engine computed for a piece, so that a picture can draw the same thing. */
export interface PieceShape {
  readonly spans?: number;
  readonly span_m?: number;
  readonly sag_m?: number;
  /** Length of duct the path uses, arcs and loops included. */
  readonly usedLength_m?: number;
  readonly fullLength_m?: number;
  /** 1 - used / full, 0 to 1. */
  readonly compression?: number;
  readonly drapedLoops?: number;
  readonly ties?: number;
  /** Bore under a tie over full bore. */
  readonly tieRatio?: number;
  /** Open area of the crimp over full area. */
  readonly crimpOpenArea?: number;
  /** Flattened height over bore at the crimp. */
  readonly crimpHeightRatio?: number;
  readonly swappedShare?: number;
  /** Open area where it is crushed over full area, and over what length. */
  readonly crushedOpenArea?: number;
  readonly crushedLength_m?: number;
  readonly dents?: number;
  /** Open area at a dent over full area. */
  readonly dentOpenArea?: number;
  /** Bore put in over bore meant. */
  readonly boreRatio?: number;
  /** Clear gap all round at the joint nearer the fan. */
  readonly jointGap_mm?: number;
  readonly jointOff?: boolean;
  /** Open share of a grille's face, as clogged. */
  readonly freeArea?: number;
  /** Share of the terminal's opening that is closed up. */
  readonly blockedShare?: number;
  /** Open share of a screen put on afterwards. */
  readonly screenFreeArea?: number;
  readonly stuck_deg?: number;
  /** Degrees of a tight bend before the fan, of each bend of a duct that doubles back, and the share of speed it reaches. */
  readonly inletBend_deg?: number;
  readonly doubledBack_deg?: number;
  readonly fanStrength?: number;
}

export interface PieceResult {
  readonly id: string;
  readonly kind: PieceKind;
  /** Flow that enters it, behind any leak at its upstream joint; below 0 it runs back into the house. */
  readonly flow_L_s: number;
  readonly velocity_m_s: number;
  readonly velocityPressure_Pa: number;
  /**
   * Total-pressure loss in the direction of the run, below 0 where air runs back; 0 for the fan, whose
   * rise stands in `Solution.fan`. Inlet faults of the fan count here.
   */
  readonly loss_Pa: number;
  readonly causes: readonly CauseLoss[];
  readonly shape: PieceShape;
}

/** A place between pieces: `before` the first piece is the room, `after` the last outdoors. */
export interface Station {
  /** Piece just upstream; "room" or "outside air" for the first, "fan inlet" just before the fan lifts the pressure. */
  readonly after: string;
  /** Flow that leaves the piece, past any leak at its downstream joint. */
  readonly flow_L_s: number;
  readonly totalPressure_Pa: number;
  readonly staticPressure_Pa: number;
  readonly velocity_m_s: number;
}

/** One place where the run leaks. */
export interface Leak {
  readonly id: string;
  /** The piece. */
  readonly at: string;
  /** Side of the fan. */
  readonly side: 'suction' | 'discharge';
  /** Above 0 air leaves the duct, below 0 air of the roof space is drawn in. */
  readonly flow_L_s: number;
  /** Static pressure in the duct just before the leak, against the roof space. */
  readonly static_Pa: number;
}

/** `flow_L_s` is what passes the fan. */
export interface OperatingPoint {
  readonly flow_L_s: number;
  readonly pressure_Pa: number;
  readonly stable: boolean;
}

export interface Note {
  /** Key of a message; the list of keys is `NOTES` for warnings and `ASSUMPTIONS` for assumptions. */
  readonly code: string;
  readonly at?: string;
}

export interface Solution {
  readonly outcome: 'solved';
  /**
   * Which way the air goes through the fan: forward; reversed, blown back by the wind; or stopped, when
   * the fan cannot lift the flap or pass any air against what stands before it.
   */
  readonly direction: 'forward' | 'reversed' | 'stopped';
  readonly flow_L_s: { readonly room: number; readonly fan: number; readonly outdoors: number };
  readonly fan: {
    /** Total pressure rise. */
    readonly pressure_Pa: number;
    readonly staticPressure_Pa: number;
    readonly power_W: number | null;
    readonly litresPerWatt: number | null;
    readonly speed: number;
  };
  readonly air: { readonly density_kg_m3: number; readonly kinematicViscosity_m2_s: number };
  readonly residual_Pa: number;
  readonly pieces: readonly PieceResult[];
  readonly stations: readonly Station[];
  readonly leaks: readonly Leak[];
  readonly operatingPoints: readonly OperatingPoint[];
  readonly warnings: readonly Note[];
  readonly assumptions: readonly Note[];
}

/** A legal rig that has no answer, or a rig that contradicts itself: a value, never an exception. */
export interface Failure {
  readonly outcome: 'failed';
  readonly code:
    | 'no-crossing'
    | 'does-not-reach'
    | 'unknown-fan'
    | 'unknown-material'
    | 'unknown-place'
    | 'wrong-place'
    | 'no-fan'
    | 'not-a-number';
  /** Where in the rig, as a path such as `run[3].fullLength_m`. */
  readonly path: string;
  readonly found: string;
  readonly allowed: string;
}

export interface CurvePoint {
  readonly flow_L_s: number;
  readonly pressure_Pa: number;
}
