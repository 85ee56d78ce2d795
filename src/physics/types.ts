/**
 * The shapes that cross the engine's door. Keys end in their unit, in JSON and in code alike, so a
 * number is never read without one; inside functions everything is SI (m, m3/s, Pa, kg/m3).
 */

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
}

/** The flow a rule asks for, and where the rule is written. */
export interface Requirement {
  readonly flow_L_s: number;
  readonly source: string;
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
}

export interface Elbow extends Base {
  readonly kind: 'elbow';
  readonly form: 'gored' | 'pressed' | 'mitred' | 'adjustable' | 'flexible';
  readonly angle_deg: number;
  readonly radiusRatio?: number;
  readonly diameter_mm: number;
  readonly lossCoefficient?: number;
}

export interface Fan extends Base {
  readonly kind: 'fan';
  /** A catalogue id, or the table itself. */
  readonly fan: string | FanTable;
  /** Share of rated speed; 1 when absent. */
  readonly speed?: number;
  /** Spigot bore; that of the neighbouring pieces when absent. */
  readonly diameter_mm?: number;
  readonly condition?: { readonly inletFlattening?: number };
}

export interface Terminal extends Base {
  readonly kind: 'terminal';
  readonly form: 'open-end' | 'wall-cowl' | 'rain-cap' | 'high-rain-cap' | 'louvre';
  readonly diameter_mm: number;
  /** Includes the exit velocity pressure. */
  readonly lossCoefficient?: number;
}

/** A loss stated outright, charged on the velocity pressure of its bore. */
export interface Fitting extends Base {
  readonly kind: 'fitting';
  readonly diameter_mm: number;
  readonly lossCoefficient: number;
}

export type Piece = Grille | Duct | Elbow | Fan | Terminal | Fitting;
/** The room itself is reported as a piece when replacement air has to squeeze in. */
export type PieceKind = Piece['kind'] | 'room';

/** A fault named by kind, place (a piece id) and amount 0 to 1. */
export interface Fault {
  readonly kind: FaultKind;
  readonly at: string;
  readonly amount: number;
  /** `sag` only: span left where supports are missing. */
  readonly span_m?: number;
  /** `extra-length` only; bunched when absent. */
  readonly manner?: 'bunched' | 'draped';
}

export type FaultKind = 'sag' | 'crimp' | 'flexible-swap' | 'tight-ties' | 'extra-length';

/** One room, fan, run and surroundings with its faults, in order from room to outdoors. */
export interface Rig {
  readonly name: string;
  readonly about?: string;
  readonly air?: Air;
  readonly room?: Room;
  readonly required?: Requirement;
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
  | 'make-up';

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
}

export interface PieceResult {
  readonly id: string;
  readonly kind: PieceKind;
  readonly flow_L_s: number;
  readonly velocity_m_s: number;
  readonly velocityPressure_Pa: number;
  /** Total-pressure loss; 0 for the fan, whose rise stands in `Solution.fan`. Inlet faults of the fan count here. */
  readonly loss_Pa: number;
  readonly causes: readonly CauseLoss[];
  readonly shape: PieceShape;
}

/** A place between pieces: `before` the first piece is the room, `after` the last outdoors. */
export interface Station {
  /** Piece just upstream; "room" or "outside air" for the first, "fan inlet" just before the fan lifts the pressure. */
  readonly after: string;
  readonly flow_L_s: number;
  readonly totalPressure_Pa: number;
  readonly staticPressure_Pa: number;
  readonly velocity_m_s: number;
}

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
