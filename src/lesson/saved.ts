/** What saved progress must look like, and whether it could have come about in this lesson at all. */
import * as v from 'valibot';
import { PHASES, type Journey, type Phase } from './journey.ts';
import {
  furthestPhase,
  isDone,
  jobsOf,
  leapTarget,
  mayLeap,
  mayPredict,
  needsAgain,
  recordOf,
  stepAt,
} from './rules.ts';
import {
  changes,
  isTaught,
  type EntryStep,
  type Lesson,
  type Question,
  type Step,
  type TaughtStep,
} from './schema.ts';

const prediction = v.strictObject({
  flow_L_s: v.optional(v.pipe(v.number(), v.finite())),
  option: v.optional(v.string()),
  sure: v.optional(v.picklist([1, 2, 3])),
});
const index = v.pipe(v.number(), v.integer(), v.minValue(0));

const record = v.strictObject({
  begun: v.boolean(),
  prediction: v.optional(prediction),
  lockedPrediction: v.optional(prediction),
  revealed: v.boolean(),
  observations: v.array(v.string()),
  explanations: v.array(v.string()),
  again: v.optional(v.array(v.string())),
  entry: v.optional(v.record(v.string(), v.string())),
});

/** The envelope alone, so that another format or version is told apart from damage. */
export const envelopeSchema = v.object({
  format: v.number(),
  slug: v.string(),
  lessonVersion: v.number(),
  snapshot: v.unknown(),
  account: v.optional(v.unknown()),
});

export const savedSnapshotSchema = v.strictObject({
  phase: v.picklist(PHASES),
  journey: v.strictObject({
    stepIndex: index,
    furthest: index,
    records: v.record(v.string(), record),
    repairs: v.array(v.string()),
    finished: v.boolean(),
  }),
});
export type SavedSnapshot = v.InferOutput<typeof savedSnapshotSchema>;

/** Answers to one question: all of them on offer, the right one only as the last. */
function answersHold(answers: readonly string[], question: Question | undefined): boolean {
  if (!question) return answers.length === 0;
  const { options, right } = question;
  return answers.every(
    (answer, i) => options.includes(answer) && (answer !== right || i === answers.length - 1),
  );
}

function recordHolds(step: TaughtStep, journey: Journey): boolean {
  const record = recordOf(journey, step.id);
  const { begun, prediction, lockedPrediction, revealed, observations, explanations, again = [] } = record;
  const same =
    !lockedPrediction ||
    (lockedPrediction.flow_L_s === prediction?.flow_L_s &&
      lockedPrediction.option === prediction?.option &&
      lockedPrediction.sure === prediction?.sure);
  const seen = !step.observe || observations.at(-1) === step.observe.right;
  return (
    record.entry === undefined &&
    (begun || !prediction) &&
    (!prediction || mayPredict(step, prediction)) &&
    same &&
    (!revealed || lockedPrediction !== undefined) &&
    (observations.length === 0 || revealed) &&
    (explanations.length === 0 || (begun && seen && (revealed || !changes(step)))) &&
    (again.length === 0 || (needsAgain(step, record) && explanations.at(-1) === step.explain.right)) &&
    answersHold(observations, step.observe) &&
    answersHold(explanations, step.explain) &&
    answersHold(again, step.again)
  );
}

function entryHolds(step: EntryStep, journey: Journey): boolean {
  const { begun, prediction, revealed, observations, explanations, entry = {} } = recordOf(journey, step.id);
  const asked = Object.entries(entry).every(([question, option]) =>
    step.questions.some(({ id, options }) => id === question && options.includes(option)),
  );
  const bare = !prediction && !revealed && observations.length === 0 && explanations.length === 0;
  return asked && bare && (begun || Object.keys(entry).length === 0);
}

function stepHolds(step: Step, journey: Journey): boolean {
  if (step.kind === 'mend') return journey.records[step.id] === undefined;
  return step.kind === 'entry' ? entryHolds(step, journey) : recordHolds(step, journey);
}

function phaseHolds(lesson: Lesson, journey: Journey, phase: Phase): boolean {
  const step = stepAt(lesson, journey.stepIndex);
  if (phase === 'reveal') return isTaught(step) && recordOf(journey, step.id).revealed;
  return phase === furthestPhase(lesson, step, journey);
}

/** Whether every step before the furthest was done, but for those a right entry check leads past. */
function wayHolds(lesson: Lesson, journey: Journey): boolean {
  const entry = lesson.steps[0];
  const leap =
    entry?.kind === 'entry' && mayLeap(entry, recordOf(journey, entry.id)) ? leapTarget(lesson, entry) : 0;
  return lesson.steps
    .slice(0, journey.furthest)
    .every((step, i) => (i > 0 && i < leap) || isDone(lesson, step, journey));
}

/** Whether a learner could have got here by the rules: no step skipped, no reveal without a locked prediction. */
export function couldHaveHappened(lesson: Lesson, { journey, phase }: SavedSnapshot): boolean {
  const { stepIndex, furthest, records, repairs, finished } = journey;
  const ids = lesson.steps.map((step) => step.id);
  // What can have been mended: the jobs of the mending steps that were reached.
  const jobs = lesson.steps
    .slice(0, furthest + 1)
    .flatMap((step) => (step.kind === 'mend' ? jobsOf(lesson, step).map(({ id }) => id) : []));
  const last = lesson.steps.length - 1;
  return (
    furthest <= last &&
    stepIndex <= furthest &&
    Object.keys(records).every((id) => ids.includes(id) && ids.indexOf(id) <= furthest) &&
    lesson.steps.every((step) => stepHolds(step, journey)) &&
    wayHolds(lesson, journey) &&
    repairs.every((id, i) => jobs.includes(id) && repairs.indexOf(id) === i) &&
    (!finished || (furthest === last && isDone(lesson, stepAt(lesson, last), journey))) &&
    phaseHolds(lesson, journey, phase)
  );
}
