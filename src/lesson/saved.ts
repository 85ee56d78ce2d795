/** What saved progress must look like, and whether it could have come about in this lesson at all. */
import * as v from 'valibot';
import { PHASES, type Journey, type Phase } from './journey.ts';
import { allRepaired, faultSteps, furthestPhase, mayPredict, recordOf, stepAt } from './rules.ts';
import type { FaultStep, Lesson } from './schema.ts';

const prediction = v.strictObject({
  flow_L_s: v.pipe(v.number(), v.finite()),
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
});

/** The envelope alone, so that another format or version is told apart from damage. */
export const envelopeSchema = v.object({
  format: v.number(),
  slug: v.string(),
  lessonVersion: v.number(),
  snapshot: v.unknown(),
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

/** Answers of one question: all of them on offer, the right one only as the last. */
function answersHold(answers: readonly string[], { options, right }: FaultStep['explain']): boolean {
  return answers.every(
    (answer, i) => options.includes(answer) && (answer !== right || i === answers.length - 1),
  );
}

function recordHolds(step: FaultStep, journey: Journey): boolean {
  const { begun, prediction, lockedPrediction, revealed, observations, explanations } = recordOf(
    journey,
    step.id,
  );
  const same =
    !lockedPrediction ||
    (lockedPrediction.flow_L_s === prediction?.flow_L_s && lockedPrediction.sure === prediction.sure);
  return (
    (begun || !prediction) &&
    (!prediction || mayPredict(step, prediction)) &&
    same &&
    (!revealed || lockedPrediction !== undefined) &&
    (observations.length === 0 || revealed) &&
    (explanations.length === 0 || observations.at(-1) === step.observe.right) &&
    answersHold(observations, step.observe) &&
    answersHold(explanations, step.explain)
  );
}

function phaseHolds(lesson: Lesson, journey: Journey, phase: Phase): boolean {
  const step = stepAt(lesson, journey.stepIndex);
  if (phase === 'reveal') return step.kind === 'fault' && recordOf(journey, step.id).revealed;
  return phase === furthestPhase(step, journey);
}

/** Whether a learner could have got here by the rules: no step skipped, no reveal without a locked prediction. */
export function couldHaveHappened(lesson: Lesson, { journey, phase }: SavedSnapshot): boolean {
  const { stepIndex, furthest, records, repairs, finished } = journey;
  const steps = faultSteps(lesson);
  const ids = steps.map((step) => step.id);
  const mending = lesson.steps[furthest]?.kind === 'mend';
  return (
    furthest < lesson.steps.length &&
    stepIndex <= furthest &&
    Object.keys(records).every((id) => ids.includes(id) && ids.indexOf(id) <= furthest) &&
    steps.every((step) => recordHolds(step, journey)) &&
    steps.slice(0, furthest).every((step) => furthestPhase(step, journey) === 'settled') &&
    repairs.every((id, i) => ids.includes(id) && repairs.indexOf(id) === i) &&
    (repairs.length === 0 || mending) &&
    (!finished || (mending && allRepaired(lesson, journey))) &&
    phaseHolds(lesson, journey, phase)
  );
}
