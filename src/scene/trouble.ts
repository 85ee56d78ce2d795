/** The second door of the scene: what can be wrong, and the meters. Only pages that show either carry it. */
import { drawer } from './layout/trouble/index.ts';
import Picture from './parts/Trouble.svelte';

/** Handed to `Scene` as `trouble`; its `drawer` to `layout`. */
export const trouble = { drawer, Picture };
export type Trouble = typeof trouble;
export type { MeterReading } from './layout/trouble/meter.ts';
