/** The shapes the charts take. Flows and pressures come in L/s and Pa; the charts turn them into the reader's unit. */
import type { CurvePoint, Moment } from '#physics';

export type Tone = 'healthy' | 'ghost' | 'before' | 'present';

/** A system curve with the words that stand on it. */
export interface Curve {
  readonly id: string;
  readonly label: string;
  readonly points: readonly CurvePoint[];
  readonly tone: Tone;
}

/** A prediction being made. All in L/s; `onset` is told a value already clamped and stepped. */
export interface Guess {
  readonly value_L_s: number;
  readonly min: number;
  readonly max: number;
  readonly step: number;
  onset(value_L_s: number): void;
}

/** Where a flow really lies, 95 times in a hundred. */
export interface Likely {
  readonly low_L_s: number;
  readonly high_L_s: number;
}

export interface LedgerEntry {
  readonly id: string;
  readonly label: string;
  readonly kind: 'opening' | 'debit' | 'credit' | 'pending';
  /** Balance after this entry. */
  readonly flow_L_s: number;
  readonly before_L_s: number;
  /** Of the balance; absent while it is still changing. */
  readonly likely?: Likely | undefined;
  /** Id of the piece it is about: what is marked there is marked here. */
  readonly at?: string | undefined;
}

/** A place on the run under the drawing: `x` in the drawing's pixels. */
export interface WalkStation {
  readonly x: number;
  readonly total_Pa: number;
  readonly static_Pa: number;
  /** Id of the piece just upstream; "room" for the first. */
  readonly after: string;
}

/** A place where pressure is spent: `texts` longest first. */
export interface WalkMark {
  readonly id: string;
  readonly x: number;
  readonly texts: readonly string[];
}

/** A leak: above 0 air leaves for the roof space, below 0 it is drawn in. `at` is the piece. */
export interface WalkLeak {
  readonly id: string;
  readonly at: string;
  readonly x: number;
  readonly flow_L_s: number;
}

/** What a fan draws and moves on the run at a share of rated speed. */
export interface WattsPoint {
  readonly speed: number;
  readonly power_W: number;
  readonly flow_L_s: number;
}

/** A fan, or a run one change ago: its speed steps from slow to fast, and where it runs now. */
export interface WattsFan {
  readonly id: string;
  readonly label: string;
  readonly points: readonly WattsPoint[];
  readonly present?: WattsPoint | undefined;
}

/** A shower and after it, a moment a minute, from `showerStory`. */
export interface SteamStory {
  readonly id: string;
  readonly label: string;
  readonly tone: 'healthy' | 'present';
  readonly moments: readonly Moment[];
}

/** The numbers of a chart as a real table; the first cell of a row is its heading. */
export interface ChartTable {
  readonly caption: string;
  readonly columns: readonly string[];
  readonly rows: readonly (readonly string[])[];
}
