/** What is live while the app is open: settings and the running lesson. */
export { settings, readSettings, type Theme, type View } from './settings.svelte.ts';
export { LessonPlay, type Balance } from './lesson-play.svelte.ts';
export { browserStorage } from './storage.ts';
export * from './lesson-engine.ts';
export * from './efforts.ts';
