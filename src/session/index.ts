/** What is live while the app is open: settings and the running lesson. */
export { settings, readSettings, type Theme, type View } from './settings.svelte.ts';
export { LessonPlay, type Balance } from './lesson-play.svelte.ts';
export { RunSolver } from './lesson-run.ts';
export { lessonFacts, stageKey, type LessonFacts, type Likely } from './lesson-facts.ts';
export { browserStorage } from './storage.ts';
export { lessonRig, stock, stockFor } from './lesson-rig.ts';
