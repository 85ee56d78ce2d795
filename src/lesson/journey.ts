/** How far a learner is, as plain JSON: this is what the machine carries and what is saved. */

/** A flow, or one of the options on offer: whichever the step asks for. */
export interface Prediction {
  readonly flow_L_s?: number;
  readonly option?: string;
  /** 1 a guess, 2 fairly, 3 certain. */
  readonly sure?: 1 | 2 | 3;
}

/** What was done in one step. Answers are kept in the order given, wrong ones too. */
export interface StepRecord {
  readonly begun: boolean;
  readonly prediction?: Prediction;
  readonly lockedPrediction?: Prediction;
  readonly revealed: boolean;
  readonly observations: readonly string[];
  readonly explanations: readonly string[];
  /** Answers to the second question, for those whose first explanation was wrong. */
  readonly again?: readonly string[];
  /** The entry check: one answer a question, by its id. */
  readonly entry?: Readonly<Record<string, string>>;
}

export interface Journey {
  readonly stepIndex: number;
  /** The furthest step reached. */
  readonly furthest: number;
  /** By step id; a step not yet touched has none. */
  readonly records: Readonly<Record<string, StepRecord>>;
  /** Ids of the steps whose faults are mended, in the order mended. */
  readonly repairs: readonly string[];
  readonly finished: boolean;
}

export const PHASES = [
  'brief',
  'asking',
  'predict',
  'locked',
  'reveal',
  'observe',
  'explain',
  'again',
  'settled',
  'mending',
  'finished',
] as const;
export type Phase = (typeof PHASES)[number];

export const UNTOUCHED: StepRecord = { begun: false, revealed: false, observations: [], explanations: [] };
export const START: Journey = { stepIndex: 0, furthest: 0, records: {}, repairs: [], finished: false };
