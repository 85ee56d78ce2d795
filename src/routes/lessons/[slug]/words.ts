/** A lesson's words with the engine's numbers set in, in the reader's units. */
import {
  currentStep,
  fill,
  fillWords,
  isJob,
  isTaught,
  mended,
  pile,
  recordOf,
  runValues,
  stagesOf,
  stepValues,
  type BuiltValues,
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
  readonly has: (key: string) => boolean;
}

export function valuesOf(
  play: LessonPlay,
  built: Readonly<Record<string, BuiltValues>>,
  required: Requirement | undefined,
  choice: UnitChoice,
): PlaceholderValues {
  const step = currentStep(play.snapshot);
  const { healthy, lesson, runs, snapshot } = play;
  const rule = required === undefined ? {} : { required_L_s: required.flow_L_s };
  if (isJob(step)) return runValues({ healthy, now: runs.at(mended(lesson, step)), ...rule }, choice);
  if (!isTaught(step)) return runValues({ healthy, now: runs.at(pile(lesson, 0)), ...rule }, choice);
  const { from, to } = stagesOf(lesson, step);
  const predicted = recordOf(snapshot.context, step.id).lockedPrediction?.flow_L_s;
  return stepValues(
    {
      step,
      healthy,
      before: runs.at(from),
      after: runs.at(to),
      ...rule,
      ...(predicted === undefined ? {} : { predicted_L_s: predicted }),
      built: built[step.id] ?? {},
    },
    choice,
  );
}

export function wordsOf(text: LessonText, values: PlaceholderValues): Words {
  return {
    title: (key) => fillWords(text.sections[key]?.title ?? '', values, key),
    has: (key) => key in text.sections,
    html: (key) => fill(text.sections[key]?.html ?? '', values, key),
  };
}
