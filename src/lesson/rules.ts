/** The rules of a lesson as pure functions: what may happen, and what it makes of the journey. */
import { UNTOUCHED, type Journey, type Phase, type Prediction, type StepRecord } from './journey.ts';
import type { FaultStep, Lesson, Step } from './schema.ts';

export function stepAt(lesson: Lesson, index: number): Step {
  const step = lesson.steps[index];
  if (!step) throw new RangeError(`step ${index} of a lesson with ${lesson.steps.length}`);
  return step;
}

export function faultSteps(lesson: Lesson): FaultStep[] {
  return lesson.steps.filter((step) => step.kind === 'fault');
}

export function recordOf(journey: Journey, stepId: string): StepRecord {
  return journey.records[stepId] ?? UNTOUCHED;
}

const observed = (step: FaultStep, record: StepRecord) => record.observations.at(-1) === step.observe.right;
const explained = (step: FaultStep, record: StepRecord) => record.explanations.at(-1) === step.explain.right;

/** The furthest phase reached of a step; a reveal under way counts as seen. */
export function furthestPhase(step: Step, journey: Journey): Phase {
  if (step.kind === 'mend') return journey.finished ? 'finished' : 'mending';
  const record = recordOf(journey, step.id);
  if (!record.begun) return 'brief';
  if (!record.lockedPrediction) return 'predict';
  if (!record.revealed) return 'locked';
  if (!observed(step, record)) return 'observe';
  return explained(step, record) ? 'settled' : 'explain';
}

export function mayPredict(step: Step, prediction: Prediction): boolean {
  if (step.kind !== 'fault') return false;
  const { flow_L_s, sure } = prediction;
  const { low_L_s, high_L_s } = step.predict;
  const legalSure = sure === undefined || sure === 1 || sure === 2 || sure === 3;
  return Number.isFinite(flow_L_s) && flow_L_s >= low_L_s && flow_L_s <= high_L_s && legalSure;
}

export function mayVisit(journey: Journey, index: number): boolean {
  return Number.isInteger(index) && index >= 0 && index <= journey.furthest;
}

export function mayGoOn(lesson: Lesson, journey: Journey): boolean {
  return journey.stepIndex < lesson.steps.length - 1;
}

export function mayRepair(lesson: Lesson, journey: Journey, stepId: string): boolean {
  return faultSteps(lesson).some((step) => step.id === stepId) && !journey.repairs.includes(stepId);
}

export function allRepaired(lesson: Lesson, journey: Journey): boolean {
  return faultSteps(lesson).every((step) => journey.repairs.includes(step.id));
}

/** The record of the present step changed. */
export function withRecord(
  lesson: Lesson,
  journey: Journey,
  change: Partial<StepRecord>,
): Pick<Journey, 'records'> {
  const { id } = stepAt(lesson, journey.stepIndex);
  return { records: { ...journey.records, [id]: { ...recordOf(journey, id), ...change } } };
}

/** A prediction not yet locked; how sure is kept when only the flow changes. */
export function predicted(record: StepRecord, { flow_L_s, sure }: Prediction): Partial<StepRecord> {
  const how = sure ?? record.prediction?.sure;
  // Adding 0 turns a negative zero into the zero that JSON keeps.
  const flow = flow_L_s + 0;
  return { prediction: how === undefined ? { flow_L_s: flow } : { flow_L_s: flow, sure: how } };
}

export function moved(journey: Journey, stepIndex: number): Pick<Journey, 'stepIndex' | 'furthest'> {
  return { stepIndex, furthest: Math.max(journey.furthest, stepIndex) };
}
