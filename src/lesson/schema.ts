/**
 * A lesson as it stands in `lesson.json`: structure only, every word is in `text.<language>.md`. A fault
 * step inherits the rig of the step before, so faults pile up until the mending; a case sets up its own.
 */
import * as v from 'valibot';
import type { FaultKind } from '#physics';
import { CHECK_NAMES } from './checks.ts';

const FAULT_KINDS = [
  'sag',
  'crimp',
  'flexible-swap',
  'tight-ties',
  'extra-length',
  'bend-at-fan',
  'fan-reversed',
  'joint-weep',
  'joint-open',
  'joint-off',
  'crushed',
  'dented',
  'blocked-grille',
  'blocked-cowl',
  'screened-cowl',
  'stuck-damper',
  'undersized',
  'no-make-up-air',
  'weak-fan',
] as const satisfies FaultKind[];
/** Pictures a link of a cause chain may point at, besides a piece of the run. */
export const CHARTS = [
  'crossing',
  'pressure-walk',
  'ledger',
  'big-number',
  'watts-and-litres',
  'steam-clock',
] as const;
/** Charts a step may hang up where its ledger is, for what a run costs or does beyond its litres. */
export const EFFORTS = ['watts-and-litres', 'steam-clock'] as const;
/** What a case is there for. */
export const ROLES = ['worked', 'case', 'compare', 'transfer'] as const;
const INSTRUMENTS = [
  'powered-hood',
  'passive-hood',
  'vane-anemometer',
  'manometer',
  'pitot-traverse',
  'bag',
] as const;

/** Meters that go over a grille, and may stand in the way of the air there. */
const OVER_GRILLE = ['powered-hood', 'passive-hood', 'vane-anemometer', 'bag'] as const;

const id = v.pipe(
  v.string(),
  v.regex(/^[a-z][a-z0-9]*(-[a-z0-9]+)*$/, 'small letters, digits and hyphens, a letter first'),
  // The one such word that every object already answers to.
  v.notValue('constructor', 'any other id'),
);
const count = v.pipe(v.number(), v.integer(), v.minValue(1));
const flow = v.pipe(v.number(), v.finite(), v.minValue(0));
const share = v.pipe(v.number(), v.minValue(0), v.maxValue(1));
const options = v.pipe(v.array(id), v.minLength(3, 'at least 3 options'));
const ids = v.pipe(v.array(id), v.minLength(1, 'at least one id'));

// Each key by itself: a spread of them is code to a bundler, which then sends every reader the whole schema.
const faultKind = v.picklist(FAULT_KINDS);
const amount = v.pipe(share, v.gtValue(0, 'more than 0'));
const span_m = v.optional(v.pipe(v.number(), v.finite(), v.gtValue(0, 'more than 0')));
const straight_m = v.optional(v.pipe(v.number(), v.finite(), v.minValue(0)));
const manner = v.optional(v.picklist(['bunched', 'draped']));
const fault = v.strictObject({ kind: faultKind, at: id, amount, span_m, straight_m, manner });
const job = v.strictObject({ id, kind: faultKind, at: id, amount, span_m, straight_m, manner });

const link = v.union([v.strictObject({ id, piece: id }), v.strictObject({ id, chart: v.picklist(CHARTS) })]);

/** A question about causes or sizes. `check` lets the engine confirm the right answer; see checks.ts. */
const question = v.strictObject({ check: v.optional(v.picklist(CHECK_NAMES)), options, right: id });
/** A question of the eye: the engine always confirms the right answer. */
const observation = v.strictObject({ check: v.picklist(CHECK_NAMES), options, right: id });
const flowGuess = v.strictObject({
  low_L_s: flow,
  high_L_s: flow,
  step_L_s: v.pipe(flow, v.gtValue(0, 'more than 0')),
});
const chain = v.pipe(v.array(link), v.minLength(3, '3 or 4 links'), v.maxLength(4, '3 or 4 links'));
/** A question with an id of its own, for the entry check and the later return; `aim` is what it tests. */
const item = v.strictObject({ id, aim: id, check: v.optional(v.picklist(CHECK_NAMES)), options, right: id });

const faultStep = v.strictObject({
  id,
  kind: v.literal('fault'),
  aim: v.optional(id),
  fault,
  chart: v.optional(v.picklist(EFFORTS)),
  predict: flowGuess,
  observe: observation,
  explain: question,
  /** A second question on a varied item, for those whose first explanation was wrong. */
  again: v.optional(question),
  chain,
});

/** How a case's rig stands. Left out: as before. */
const setup = v.strictObject({
  faults: v.optional(v.array(fault)),
  fan: v.optional(id),
  speed: v.optional(v.pipe(v.number(), v.gtValue(0, 'more than 0'), v.maxValue(1.2))),
  /** A meter over the grille, drawn by the step's `meter`: the run is then that with what it costs. */
  held: v.optional(v.picklist(OVER_GRILLE)),
});

const caseStep = v.strictObject({
  id,
  kind: v.literal('case'),
  role: v.picklist(ROLES),
  aim: v.optional(id),
  chart: v.optional(v.picklist(EFFORTS)),
  /** Another rig than the lesson's: an id of `seeds/rigs`, or of the lesson's own `rigs`. */
  rig: v.optional(id),
  /** As the step opens; without `faults` it has those of the steps before. */
  from: v.optional(setup),
  /** As it is after the reveal; without it nothing changes and nothing is predicted. */
  to: v.optional(setup),
  /** Piece the words `{loss}` and the shape are about. */
  subject: v.optional(id),
  /**
   * A meter held at a place, before or after the change; its reading is `{reading}`. With `both`, before it
   * is `{reading_before}`.
   */
  meter: v.optional(
    v.strictObject({
      kind: v.picklist(INSTRUMENTS),
      at: id,
      seed: v.pipe(v.number(), v.integer(), v.minValue(0)),
      of: v.picklist(['from', 'to', 'both']),
    }),
  ),
  predict: v.optional(v.union([flowGuess, observation])),
  observe: v.optional(observation),
  explain: question,
  again: v.optional(question),
  chain: v.optional(chain),
});

const entryStep = v.strictObject({
  id,
  kind: v.literal('entry'),
  questions: v.pipe(v.array(item), v.minLength(2, 'two or three'), v.maxLength(3, 'two or three')),
  /** Step that those who answer all of it may go on to. */
  skipTo: id,
});

/** Faults mended in any order, each repair taken back at will: the lesson's piled ones, or a job of its own. */
const mendStep = v.strictObject({
  id,
  kind: v.literal('mend'),
  aim: v.optional(id),
  /** Another rig than the lesson's, for a job with `faults` of its own. */
  rig: v.optional(id),
  faults: v.optional(v.pipe(v.array(job), v.minLength(2, '2 to 5 faults'), v.maxLength(5, '2 to 5 faults'))),
});

export const lessonSchema = v.strictObject({
  format: v.literal(1),
  version: count,
  slug: id,
  number: count,
  /** Id of a rig in `seeds/rigs`, or of the lesson's own `rigs`. */
  rig: id,
  /** Rigs of its own, in the form of the files in `seeds/rigs`. */
  rigs: v.optional(v.record(id, v.record(v.string(), v.unknown()))),
  minutes: count,
  aims: ids,
  terms: v.pipe(ids, v.maxLength(5, 'five terms or fewer')),
  cautions: ids,
  steps: v.pipe(
    v.array(v.variant('kind', [entryStep, faultStep, caseStep, mendStep])),
    v.minLength(2, 'at least two steps'),
  ),
  /** Asked again after days and weeks. */
  returns: v.optional(v.pipe(v.array(item), v.minLength(3, 'at least three questions'))),
});

export type Lesson = v.InferOutput<typeof lessonSchema>;
export type FaultStep = v.InferOutput<typeof faultStep>;
export type CaseStep = v.InferOutput<typeof caseStep>;
export type EntryStep = v.InferOutput<typeof entryStep>;
export type MendStep = v.InferOutput<typeof mendStep>;
export type Step = EntryStep | FaultStep | CaseStep | MendStep;
/** A step with a question to explain: what is told, asked and shown phase by phase. */
export type TaughtStep = FaultStep | CaseStep;
export type Question = v.InferOutput<typeof question>;
export type Observation = v.InferOutput<typeof observation>;
export type FlowGuess = v.InferOutput<typeof flowGuess>;
export type Item = v.InferOutput<typeof item>;
export type Setup = v.InferOutput<typeof setup>;
export type Meter = NonNullable<CaseStep['meter']>;
export type ChainLink = v.InferOutput<typeof link>;
export type ChartName = (typeof CHARTS)[number];
export type EffortName = (typeof EFFORTS)[number];

/** Whether a step explains something: a fault or a case. */
export const isTaught = (step: Step): step is TaughtStep => step.kind === 'fault' || step.kind === 'case';
/** Whether a mending step brings faults of its own, and is a job; else it mends what the lesson has piled up. */
export const isJob = (step: Step): step is MendStep => step.kind === 'mend' && step.faults !== undefined;
export const mendsPile = (step: Step): boolean => step.kind === 'mend' && !isJob(step);
/** Whether a prediction is of a flow, and not of cards. */
export const guessesFlow = (predict: TaughtStep['predict']): predict is FlowGuess =>
  predict !== undefined && 'low_L_s' in predict;
/** Whether the step changes the run before the reader's eyes. */
export const changes = (step: TaughtStep): boolean => step.kind === 'fault' || step.to !== undefined;
