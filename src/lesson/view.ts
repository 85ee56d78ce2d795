/** What a screen reads off a snapshot: pure selectors, nothing kept. */
import type { Fault } from '#physics';
import type { Journey, Phase, StepRecord } from './journey.ts';
import type { LessonContext } from './machine.ts';
import { faultSteps, furthestPhase, recordOf, stepAt } from './rules.ts';
import type { FaultStep, Lesson, Step } from './schema.ts';

/** The part of a machine snapshot the selectors read. */
export interface LessonView {
  readonly value: unknown;
  readonly context: LessonContext;
}

export type LedgerLine =
  | { readonly kind: 'opening' }
  | { readonly kind: 'debit'; readonly stepId: string }
  | { readonly kind: 'credit'; readonly stepId: string };

export function phase(snapshot: LessonView): Phase {
  return snapshot.value as Phase;
}

export function currentStep({ context }: LessonView): Step {
  return stepAt(context.lesson, context.stepIndex);
}

export function currentRecord({ context }: LessonView): StepRecord {
  return recordOf(context, stepAt(context.lesson, context.stepIndex).id);
}

/** The last observation was wrong: look at the picture again. */
export function lookAgain(snapshot: LessonView): boolean {
  return phase(snapshot) === 'observe' && currentRecord(snapshot).observations.length > 0;
}

/** The answer last given in the present phase of answering, for its reason to be shown. */
export function lastAnswer(snapshot: LessonView, part: 'observe' | 'explain'): string | undefined {
  const record = currentRecord(snapshot);
  return (part === 'observe' ? record.observations : record.explanations).at(-1);
}

/** Fault steps whose faults have been seen by the step now on screen, in order. */
function seen(lesson: Lesson, journey: Journey): FaultStep[] {
  return lesson.steps
    .slice(0, journey.stepIndex + 1)
    .filter((step) => step.kind === 'fault')
    .filter((step, i) => i < journey.stepIndex || recordOf(journey, step.id).revealed);
}

const mending = (lesson: Lesson, journey: Journey) => stepAt(lesson, journey.stepIndex).kind === 'mend';

/** The faults of the rig to draw now: the present one from its reveal on; in the mending half, those not mended. */
export function faultsNow(lesson: Lesson, { context }: LessonView): Fault[] {
  const mended = mending(lesson, context) ? context.repairs : [];
  return seen(lesson, context)
    .filter((step) => !mended.includes(step.id))
    .map((step) => step.fault);
}

/** The faults of the ghost: the rig one change ago. In the mending half that is before the last repair. */
export function faultsBefore(lesson: Lesson, { context }: LessonView): Fault[] {
  if (mending(lesson, context)) {
    const mended = context.repairs.slice(0, -1);
    return faultSteps(lesson)
      .filter((step) => !mended.includes(step.id))
      .map((step) => step.fault);
  }
  return faultSteps(lesson)
    .slice(0, context.stepIndex)
    .map((step) => step.fault);
}

/** The account as it stands on the step now on screen. */
export function ledgerLines(lesson: Lesson, { context }: LessonView): LedgerLine[] {
  const debits = seen(lesson, context).map(({ id }) => ({ kind: 'debit' as const, stepId: id }));
  const credits = mending(lesson, context)
    ? context.repairs.map((stepId) => ({ kind: 'credit' as const, stepId }))
    : [];
  return [{ kind: 'opening' }, ...debits, ...credits];
}

/** Faults in the rig after the first `count` lines of the account: what each line's balance is solved on. */
export function faultsAfter(lesson: Lesson, lines: readonly LedgerLine[], count: number): Fault[] {
  const there = new Map<string, Fault>();
  for (const line of lines.slice(0, count)) {
    if (line.kind === 'credit') there.delete(line.stepId);
    const step = line.kind === 'debit' && faultSteps(lesson).find(({ id }) => id === line.stepId);
    if (step) there.set(step.id, step.fault);
  }
  return [...there.values()];
}

/** Each step's furthest phase, for the row of numbered stations. */
export function stations({
  context,
}: LessonView): { step: Step; phase: Phase; reached: boolean; current: boolean }[] {
  return context.lesson.steps.map((step, i) => ({
    step,
    phase: furthestPhase(step, context),
    reached: i <= context.furthest,
    current: i === context.stepIndex,
  }));
}
