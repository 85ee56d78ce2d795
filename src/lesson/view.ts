/** What a screen reads off a snapshot: pure selectors, nothing kept. */
import type { Phase, StepRecord } from './journey.ts';
import type { LessonContext } from './machine.ts';
import { answersTo, furthestPhase, isDone, recordOf, stepAt, type Part } from './rules.ts';
import type { Step } from './schema.ts';

/** The part of a machine snapshot the selectors read. */
export interface LessonView {
  readonly value: unknown;
  readonly context: LessonContext;
}

/** The phase the step on screen is in. */
export function phase(snapshot: LessonView): Phase {
  return snapshot.value as Phase;
}

/** The step on screen. */
export function currentStep({ context }: LessonView): Step {
  return stepAt(context.lesson, context.stepIndex);
}

/** What was done in the step on screen. */
export function currentRecord({ context }: LessonView): StepRecord {
  return recordOf(context, stepAt(context.lesson, context.stepIndex).id);
}

/** The last observation was wrong: look at the picture again. */
export function lookAgain(snapshot: LessonView): boolean {
  return phase(snapshot) === 'observe' && currentRecord(snapshot).observations.length > 0;
}

/** The answer last given in the present phase of answering, for its reason to be shown. */
export function lastAnswer(snapshot: LessonView, part: Part): string | undefined {
  return answersTo(currentRecord(snapshot), part).at(-1);
}

/** Each step's furthest phase, for the row of numbered stations. */
export function stations({
  context,
}: LessonView): { step: Step; phase: Phase; done: boolean; reached: boolean; current: boolean }[] {
  return context.lesson.steps.map((step, i) => ({
    step,
    phase: furthestPhase(context.lesson, step, context),
    done: isDone(context.lesson, step, context),
    reached: i <= context.furthest,
    current: i === context.stepIndex,
  }));
}
