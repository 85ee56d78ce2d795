/** The pieces a run is put together from, and what faults may have done to each. Lengths carry their unit in the key. */
import type { FanTable } from './types.ts';

export interface Supports {
  readonly spacing_m: number;
  /** Width of strap or saddle that carries the duct. */
  readonly width_mm: number;
}

export interface Bend {
  readonly angle_deg: number;
  /** Centreline radius over bore. */
  readonly radiusRatio: number;
}

interface Base {
  readonly id: string;
}

export interface Grille extends Base {
  readonly kind: 'grille';
  readonly diameter_mm: number;
  /** Open share of the face, 0 to 1. */
  readonly freeArea?: number;
  readonly lossCoefficient?: number;
  readonly condition?: {
    /** Share of the open face that lint and paint have closed, 0 to 1. */
    readonly blocked?: number;
    /** How far the room is sealed: 2 000 mm2 over the opening left for replacement air. */
    readonly sealed?: number;
    /** What a meter held over it costs, K on the spigot's velocity pressure. */
    readonly held?: number;
  };
}

/** EN 12237 air-tightness classes of round duct, A the leakiest. */
export type LeakClass = 'A' | 'B' | 'C' | 'D';

/** What faults have done to the joint at the end of a piece that is nearer the fan. */
export interface JointCondition {
  /** Clear gap all round behind a weeping tape, mm; the air oozes through as through a seam. */
  readonly weep_mm?: number;
  /** Clear gap all round, mm. */
  readonly gap_mm?: number;
  /** The duct has come off: nothing passes from one side to the other. */
  readonly off?: boolean;
}

export interface Duct extends Base {
  readonly kind: 'duct';
  readonly material: string;
  readonly diameter_mm: number;
  /** Length of the path it follows. */
  readonly path_m: number;
  /** Length of the same piece pulled fully out; the path when absent. */
  readonly fullLength_m?: number;
  readonly roughness_mm?: number;
  readonly supports?: Supports;
  readonly bends?: readonly Bend[];
  /** Leakage of wall and seams, spread over the surface. */
  readonly leakClass?: LeakClass;
  /** The same stated outright: L/s per m2 of surface at 1 Pa. Used instead of a class. */
  readonly leakCoefficient_L_s_m2?: number;
  /** Exponent of pressure for leakage of the wall, 0.5 to 1; 0.65 when absent. */
  readonly leakExponent?: number;
  /** A leak at the joint nearer the fan: L/s at 1 Pa, and its exponent (0.5, a hole, when absent). */
  readonly jointLeak?: { readonly coefficient_L_s: number; readonly exponent?: number };
  /** What faults have done to it; never written in a file. */
  readonly condition?: DuctCondition;
}

export interface DuctCondition {
  /** Sag depth over span, 0 to 0.25. */
  readonly sagRatio?: number;
  /** Span between the supports that are left, when supports are missing. */
  readonly span_m?: number;
  /** Bore under each tie over full bore. */
  readonly tieRatio?: number;
  /** Metres beyond what the hung path needs, bunched along it. */
  readonly bunched_m?: number;
  /** Metres beyond what the hung path needs, lying in loops. */
  readonly draped_m?: number;
  /** Share of the length replaced by another material, relaxed as it comes out of the box. */
  readonly swap?: { readonly share: number; readonly material: string };
  readonly joint?: JointCondition;
  /** Share of the bore pressed flat under what is stored on it. */
  readonly crushed?: number;
  /** Share of the bore by which each dent is pushed in. */
  readonly dented?: number;
  /** Bore put in over bore meant. */
  readonly boreRatio?: number;
}

export interface Elbow extends Base {
  readonly kind: 'elbow';
  readonly form: 'gored' | 'pressed' | 'mitred' | 'adjustable' | 'flexible';
  readonly angle_deg: number;
  readonly radiusRatio?: number;
  /** Of a gored elbow; taken as three when absent. */
  readonly gores?: 3 | 5 | 7;
  readonly diameter_mm: number;
  readonly lossCoefficient?: number;
  readonly condition?: {
    readonly joint?: JointCondition;
    /** Put close to the fan: 1 against its flange, 0 far enough off (5 bores). */
    readonly closeToFan?: number;
  };
}

export interface Fan extends Base {
  readonly kind: 'fan';
  /** A catalogue id, or the table itself. */
  readonly fan: string | FanTable;
  /** Share of rated speed; 1 when absent. */
  readonly speed?: number;
  /** Spigot bore; that of the neighbouring pieces when absent. */
  readonly diameter_mm?: number;
  readonly condition?: FanCondition;
}

export interface FanCondition {
  readonly inletFlattening?: number;
  /** A tight bend put in before the fan, and the straight duct between the two. */
  readonly inletBend?: { readonly angle_deg: number; readonly straight_m: number };
  /** The fan faces the wrong way: the angle of each of two bends the duct makes to double back. */
  readonly doubledBack_deg?: number;
  /** Speed it reaches over the speed it should reach. */
  readonly strength?: number;
}

export interface Terminal extends Base {
  readonly kind: 'terminal';
  readonly form: 'open-end' | 'wall-cowl' | 'rain-cap' | 'high-rain-cap' | 'louvre';
  readonly diameter_mm: number;
  /** Includes the exit velocity pressure. */
  readonly lossCoefficient?: number;
  /** A wire mesh across it; open share of the mesh. */
  readonly screen?: { readonly freeArea: number };
  readonly condition?: {
    /** Share of the opening that is closed up. */
    readonly blocked?: number;
    /** Share of the opening taken by a screen put on afterwards. */
    readonly screened?: number;
  };
}

/** A change of bore: from `diameter_mm`, that of the piece before, to `toDiameter_mm`. */
export interface Reducer extends Base {
  readonly kind: 'reducer';
  readonly diameter_mm: number;
  readonly toDiameter_mm: number;
  /** A step, or a cone; a cone when absent. */
  readonly form?: 'sudden' | 'conical';
  /** Total angle of the cone; 30 when absent. */
  readonly angle_deg?: number;
  /** On the velocity pressure of the smaller bore. */
  readonly lossCoefficient?: number;
}

/** A backdraught flap: shut by its weight, and by air that would come in. */
export interface Damper extends Base {
  readonly kind: 'damper';
  readonly diameter_mm: number;
  /** Pressure that lifts the flap. */
  readonly openingPressure_Pa?: number;
  /** Of the open flap. */
  readonly lossCoefficient?: number;
  /** A flap stuck part of the way: degrees from fully open. */
  readonly condition?: { readonly stuck_deg?: number };
}

/** A loss stated outright, charged on the velocity pressure of its bore. */
export interface Fitting extends Base {
  readonly kind: 'fitting';
  readonly diameter_mm: number;
  readonly lossCoefficient: number;
}

export type Piece = Grille | Duct | Elbow | Fan | Terminal | Fitting | Reducer | Damper;
/**
 * The room itself is reported as a piece when replacement air has to squeeze in, and so is the bare end
 * where a duct has come off.
 */
export type PieceKind = Piece['kind'] | 'room' | 'opening';
