/** A lesson and the engine together, with no page: a door of its own (`#lesson-engine`) for commands. */
export { LessonRuns, RunSolver, rigAt, type Extent } from './lesson-run.ts';
export {
  lessonFacts,
  likelyBand,
  stageBands,
  stepFacts,
  type LessonFacts,
  type Likely,
} from './lesson-facts.ts';
export { auditLesson } from './lesson-audit.ts';
export { builtValues } from './lesson-numbers.ts';
export { sightOf } from './lesson-sight.ts';
export { lessonRigs, seedRig, stock, stockFor, stockOf } from './lesson-rig.ts';
