/** A lesson's words with the engine's numbers set in, in the reader's units. */
import {
  currentStep,
  faultSteps,
  fill,
  fillWords,
  recordOf,
  runValues,
  stepValues,
  type LessonText,
  type PlaceholderValues,
} from '#lesson';
import type { Requirement } from '#physics';
import type { LessonPlay } from '#session';
import type { UnitChoice } from '#units';

export interface Words {
  /** Heading of a section as plain words. */
  readonly title: (key: string) => string;
  /** Body of a section as HTML, escaped when the pages were built. */
  readonly html: (key: string) => string;
}

export function valuesOf(
  play: LessonPlay,
  required: Requirement | undefined,
  choice: UnitChoice,
): PlaceholderValues {
  const step = currentStep(play.snapshot);
  const { healthy, lesson, run, snapshot } = play;
  const required_L_s = required?.flow_L_s;
  if (step.kind === 'mend') {
    return runValues(
      { healthy, now: run.at([]), ...(required_L_s === undefined ? {} : { required_L_s }) },
      choice,
    );
  }
  const faults = faultSteps(lesson).map((each) => each.fault);
  const index = faultSteps(lesson).indexOf(step);
  const predicted = recordOf(snapshot.context, step.id).lockedPrediction?.flow_L_s;
  return stepValues(
    {
      step,
      healthy,
      before: run.at(faults.slice(0, index)),
      after: run.at(faults.slice(0, index + 1)),
      ...(required_L_s === undefined ? {} : { required_L_s }),
      ...(predicted === undefined ? {} : { predicted_L_s: predicted }),
    },
    choice,
  );
}

export function wordsOf(text: LessonText, values: PlaceholderValues): Words {
  return {
    title: (key) => fillWords(text.sections[key]?.title ?? '', values, key),
    html: (key) => fill(text.sections[key]?.html ?? '', values, key),
  };
}
