/** The lesson's door. `#lesson-progress` is a part of it fetched once a page is up. `#lesson-load` is its other door, for the build alone: it carries the Markdown reader. */
export { CHECKS, CHECK_NAMES, answersOf, trueAnswer, type CheckName, type Sight } from './checks.ts';
export {
  fill,
  fillWords,
  placeholdersIn,
  OUTCOME_PLACEHOLDERS,
  SHAPE_PLACEHOLDERS,
  type Placeholder,
  type PlaceholderValues,
} from './fill.ts';
export { PHASES, START, type Journey, type Phase, type Prediction, type StepRecord } from './journey.ts';
export { lessonMachine, type LessonContext, type LessonEvent } from './machine.ts';
export { checkText, partsOf, type LessonText, type Section } from './parts.ts';
export { possible, type Possibility } from './possible.ts';
export { judgePrediction, VERDICTS, type Verdict } from './predictions.ts';
export { problemText, type Problem } from './problems.ts';
export {
  forgetProgress,
  loadProgress,
  progressKey,
  saveProgress,
  snapshotOf,
  type LessonSnapshot,
  type LoadResult,
  type ProgressStorage,
  type SaveResult,
} from './progress.ts';
export { readLesson, type ReadLesson } from './read.ts';
export { allRepaired, faultSteps, furthestPhase, recordOf, stepAt } from './rules.ts';
export {
  CHARTS,
  type ChainLink,
  type ChartName,
  type FaultStep,
  type Lesson,
  type MendStep,
  type Step,
} from './schema.ts';
export { runValues, stepValues, type RunFacts, type StepFacts } from './values.ts';
export {
  currentRecord,
  currentStep,
  faultsAfter,
  faultsBefore,
  faultsNow,
  lastAnswer,
  ledgerLines,
  lookAgain,
  phase,
  stations,
  type LedgerLine,
  type LessonView,
} from './view.ts';
