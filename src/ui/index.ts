/** Controls shared by every screen. */
export { default as StepLine } from './StepLine.svelte';
export { default as Picker } from './Picker.svelte';
export { default as Options } from './Options.svelte';
export { default as CardGuess } from './CardGuess.svelte';
export { default as FlowGuess } from './FlowGuess.svelte';
export { default as Press } from './Press.svelte';
export type { Station, Choice, May } from './types.ts';
