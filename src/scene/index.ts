/** The one door of the scene. */
export { default as Scene } from './Scene.svelte';
export { default as LostHatch } from './LostHatch.svelte';
export { frameFor } from './frame.ts';
export { layout } from './layout/index.ts';
export { belliesIn } from './layout/scale.ts';
export { exitOf, type Exit } from './layout/plan.ts';
export { describe } from './words.ts';
export type { Belly, Box, Drawing, FaultLabel, Frame, Lettering, Point, Sample } from './types.ts';
