/** What is live while the app is open: settings and the running lesson. */
export { settings, readSettings, type Theme } from './settings.svelte.ts';
export { LessonPlay, type Balance } from './lesson-play.svelte.ts';
export { LessonRuns, rigAt, type Extent } from './lesson-run.ts';
export { lessonFacts, type LessonFacts, type Likely } from './lesson-facts.ts';
export { auditLesson } from './lesson-audit.ts';
export { sightOf } from './lesson-sight.ts';
export { browserStorage } from './storage.ts';
export { lessonRigs, stock, stockFor } from './lesson-rig.ts';
