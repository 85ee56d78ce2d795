/** The lesson's door. `#lesson-progress` is a part of it fetched only where something was saved. `#lesson-load` is its other door, for the build alone: it carries the Markdown reader. */
export { CHECKS, CHECK_NAMES, answersOf, trueAnswer, type CheckName, type Sight } from './checks.ts';
export { evidence, type AimEvidence, type Evidence, type Given, type IdeaHeld } from './evidence.ts';
export {
  fill,
  fillWords,
  placeholdersIn,
  BUILT,
  METER_PLACEHOLDERS,
  OUTCOME_PLACEHOLDERS,
  SHAPE_PLACEHOLDERS,
  type BuiltName,
  type BuiltValues,
  type Placeholder,
  type PlaceholderValues,
} from './fill.ts';
export { PHASES, START, type Journey, type Phase, type Prediction, type StepRecord } from './journey.ts';
export {
  forgetProgress,
  keptProgress,
  progressKey,
  saveProgress,
  type ProgressStorage,
  type SaveResult,
} from './keeping.ts';
export { accountOf } from './account-of.ts';
export { lessonMachine, type LessonContext, type LessonEvent } from './machine.ts';
export { checkText, partsOf, withCommon, type LessonText, type Section } from './parts.ts';
export { possible, type Possibility } from './possible.ts';
export { judgePrediction, VERDICTS, type Verdict } from './predictions.ts';
export { problemText, type Problem as LessonProblem } from './problems.ts';
export { loadProgress, snapshotOf, type LessonSnapshot, type LoadResult } from './progress.ts';
export { readLesson, type ReadLesson } from './read.ts';
export {
  allRepaired,
  faultSteps,
  fewest,
  furthestPhase,
  isDone,
  jobsOf,
  mayLeap,
  needsAgain,
  questionOf,
  recordOf,
  repairsIn,
  stepAt,
  type Job,
  type Part,
} from './rules.ts';
export {
  changes,
  CHARTS,
  EFFORTS,
  guessesFlow,
  isJob,
  isTaught,
  ROLES,
  type CaseStep,
  type ChainLink,
  type ChartName,
  type EffortName,
  type EntryStep,
  type FaultStep,
  type FlowGuess,
  type Item,
  type Lesson,
  type MendStep,
  type Meter,
  type Observation,
  type Question,
  type Step,
  type TaughtStep,
} from './schema.ts';
export {
  account,
  everyStage,
  mended,
  pile,
  stageBefore,
  stageHealthy,
  stageKey,
  stageNow,
  stagesOf,
  type LedgerLine,
  type Stage,
} from './stages.ts';
export { runValues, stepValues, subjectOf, type RunFacts, type StepFacts } from './values.ts';
export {
  currentRecord,
  currentStep,
  lastAnswer,
  lookAgain,
  phase,
  stations,
  type LessonView,
} from './view.ts';
