/** The one door of the charts: a chart is added with its file and a line here. */
import Crossing from './Crossing.svelte';
import Ledger from './Ledger.svelte';
import PressureWalk from './PressureWalk.svelte';

export const charts = { crossing: Crossing, ledger: Ledger, walk: PressureWalk } as const;
export type ChartName = keyof typeof charts;

export { Crossing, Ledger, PressureWalk };
export { account, type Account, type LedgerRow } from './ledger.ts';
export type { Curve, Guess, LedgerEntry, Likely, Tone, WalkLeak, WalkMark, WalkStation } from './types.ts';
