/** The rules of a lesson as pure functions: what may happen, and what it makes of the journey. */
import type { Fault } from '#physics';
import { UNTOUCHED, type Journey, type Phase, type Prediction, type StepRecord } from './journey.ts';
import {
  changes,
  guessesFlow,
  isTaught,
  type EntryStep,
  type FaultStep,
  type Lesson,
  type MendStep,
  type Question,
  type Step,
  type TaughtStep,
} from './schema.ts';

/** The step at an index; throws a RangeError outside the lesson. */
export function stepAt(lesson: Lesson, index: number): Step {
  const step = lesson.steps[index];
  if (!step) throw new RangeError(`step ${index} of a lesson with ${lesson.steps.length}`);
  return step;
}

/** The steps that put a fault in, in order. */
export function faultSteps(lesson: Lesson): FaultStep[] {
  return lesson.steps.filter((step) => step.kind === 'fault');
}

/** A fault to be mended. Its id is that of the words that name it, and of its repair. */
export interface Job {
  readonly id: string;
  readonly fault: Fault;
}

/** What a mending step has to mend: faults of its own, or those the lesson has piled up. */
export function jobsOf(lesson: Lesson, step: MendStep): readonly Job[] {
  return step.faults
    ? step.faults.map(({ id, ...fault }) => ({ id: `${step.id}/${id}`, fault }))
    : faultSteps(lesson).map(({ id, fault }) => ({ id, fault }));
}

/** The repairs made in a mending step, in the order made. */
export function repairsIn(lesson: Lesson, step: MendStep, { repairs }: Journey): readonly string[] {
  const jobs = jobsOf(lesson, step);
  return repairs.filter((repair) => jobs.some(({ id }) => id === repair));
}

/** The mending step on screen, if it is one that mends this. */
function mendingOf(lesson: Lesson, journey: Journey, job: string): MendStep | undefined {
  const step = stepAt(lesson, journey.stepIndex);
  return step.kind === 'mend' && jobsOf(lesson, step).some(({ id }) => id === job) ? step : undefined;
}

/** What was done in a step; an untouched record where nothing was. */
export function recordOf(journey: Journey, stepId: string): StepRecord {
  return journey.records[stepId] ?? UNTOUCHED;
}

/** The questions a step answers by cards, by the phase they are asked in. */
export type Part = 'observe' | 'explain' | 'again';

/** The question a step asks in a part; undefined where it asks none. */
export function questionOf(step: Step, part: Part): Question | undefined {
  return isTaught(step) ? step[part] : undefined;
}

export function answersTo(record: StepRecord, part: Part): readonly string[] {
  if (part === 'again') return record.again ?? [];
  return part === 'observe' ? record.observations : record.explanations;
}

/** Answered rightly at last, or never asked. */
function through(step: Step, record: StepRecord, part: Part): boolean {
  const question = questionOf(step, part);
  return !question || answersTo(record, part).at(-1) === question.right;
}

/** The second question is for those whose first explanation was wrong. */
export function needsAgain(step: TaughtStep, record: StepRecord): boolean {
  return step.again !== undefined && record.explanations.length > 1;
}

const asked = (step: EntryStep, record: StepRecord) =>
  step.questions.every(({ id }) => record.entry?.[id] !== undefined);

/** Every question of the entry check answered rightly. */
export function mayLeap(step: Step, record: StepRecord): boolean {
  return step.kind === 'entry' && step.questions.every(({ id, right }) => record.entry?.[id] === right);
}

/** A question of the entry check is answered once: it steers, it does not teach. */
export function mayAnswerEntry(
  step: Step,
  record: StepRecord,
  { question, option }: { readonly question: string; readonly option: string },
): boolean {
  if (step.kind !== 'entry' || record.entry?.[question] !== undefined) return false;
  return step.questions.some(({ id, options }) => id === question && options.includes(option));
}

/** Only a change can be watched again. */
export function mayReplay(step: Step): boolean {
  return isTaught(step) && changes(step);
}

/** The furthest phase reached of a step; a reveal under way counts as seen. */
export function furthestPhase(lesson: Lesson, step: Step, journey: Journey): Phase {
  const ended = journey.finished && lesson.steps.at(-1) === step;
  if (ended) return 'finished';
  if (step.kind === 'mend') return 'mending';
  const record = recordOf(journey, step.id);
  if (!record.begun) return 'brief';
  if (step.kind === 'entry') return asked(step, record) ? 'settled' : 'asking';
  if (step.predict) {
    if (!record.lockedPrediction) return 'predict';
    if (!record.revealed) return 'locked';
  }
  if (!through(step, record, 'observe')) return 'observe';
  if (!through(step, record, 'explain')) return 'explain';
  return needsAgain(step, record) && !through(step, record, 'again') ? 'again' : 'settled';
}

/** Whether nothing more is asked at a step. */
export function isDone(lesson: Lesson, step: Step, journey: Journey): boolean {
  if (step.kind === 'mend') return allRepaired(lesson, step, journey);
  // The entry check steers; nobody has to take it.
  if (step.kind === 'entry') return true;
  return ['settled', 'finished'].includes(furthestPhase(lesson, step, journey));
}

export function mayPredict(step: Step, { flow_L_s, option, sure }: Prediction): boolean {
  if (!isTaught(step) || !step.predict) return false;
  if (sure !== undefined && sure !== 1 && sure !== 2 && sure !== 3) return false;
  if (!guessesFlow(step.predict))
    return flow_L_s === undefined && option !== undefined && step.predict.options.includes(option);
  const { low_L_s, high_L_s } = step.predict;
  if (option !== undefined || flow_L_s === undefined) return false;
  return Number.isFinite(flow_L_s) && flow_L_s >= low_L_s && flow_L_s <= high_L_s;
}

export function mayVisit(journey: Journey, index: number): boolean {
  return Number.isInteger(index) && index >= 0 && index <= journey.furthest;
}

export function mayGoOn(lesson: Lesson, journey: Journey): boolean {
  return (
    journey.stepIndex < lesson.steps.length - 1 && isDone(lesson, stepAt(lesson, journey.stepIndex), journey)
  );
}

/** The last step is done, so the lesson can be ended. */
export function mayFinish(lesson: Lesson, journey: Journey): boolean {
  const last = journey.stepIndex === lesson.steps.length - 1;
  return last && isDone(lesson, stepAt(lesson, journey.stepIndex), journey);
}

export function mayRepair(lesson: Lesson, journey: Journey, job: string): boolean {
  return mendingOf(lesson, journey, job) !== undefined && !journey.repairs.includes(job);
}

/** A repair can be taken back until the learner has gone on. */
export function mayUndo(lesson: Lesson, journey: Journey, job: string): boolean {
  const here = mendingOf(lesson, journey, job) !== undefined && journey.furthest === journey.stepIndex;
  return here && journey.repairs.includes(job) && !journey.finished;
}

/** Whether all that a mending step has to mend is mended. */
export function allRepaired(lesson: Lesson, step: MendStep, { repairs }: Journey): boolean {
  return jobsOf(lesson, step).every(({ id }) => repairs.includes(id));
}

/** Every choice of some of these, from none to all. */
export const subsetsOf = (ids: readonly string[]): string[][] =>
  Array.from({ length: 2 ** ids.length }, (_, set) => ids.filter((_id, i) => set & (1 << i)));

/**
 * The smallest set of jobs whose repair alone brings a run to its rate, the best of that size first; undefined
 * where not even all of them do. `flowWith` gives the flow outdoors with these jobs done, L/s.
 */
export function fewest(
  jobs: readonly string[],
  flowWith: (repaired: readonly string[]) => number,
  required_L_s: number,
): readonly string[] | undefined {
  return subsetsOf(jobs)
    .map((repaired) => ({ repaired, flow_L_s: flowWith(repaired) }))
    .filter(({ flow_L_s }) => flow_L_s >= required_L_s)
    .sort((one, other) => one.repaired.length - other.repaired.length || other.flow_L_s - one.flow_L_s)[0]
    ?.repaired;
}

/** Index of the step a right entry check leads to. */
export function leapTarget(lesson: Lesson, step: EntryStep): number {
  return lesson.steps.findIndex(({ id }) => id === step.skipTo);
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

/** A prediction not yet locked; how sure is kept when only the answer changes. */
export function predicted(record: StepRecord, { flow_L_s, option, sure }: Prediction): Partial<StepRecord> {
  const how = sure ?? record.prediction?.sure;
  // Adding 0 turns a negative zero into the zero that JSON keeps.
  const said = flow_L_s === undefined ? { option } : { flow_L_s: flow_L_s + 0 };
  return { prediction: how === undefined ? said : { ...said, sure: how } };
}

export function moved(journey: Journey, stepIndex: number): Pick<Journey, 'stepIndex' | 'furthest'> {
  return { stepIndex, furthest: Math.max(journey.furthest, stepIndex) };
}
