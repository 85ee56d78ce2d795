/** The one door of the charts: a chart is added with its file and a line here. */
import Crossing from './Crossing.svelte';
import Ledger from './Ledger.svelte';
import PressureWalk from './PressureWalk.svelte';
import SteamClock from './SteamClock.svelte';
import WattsLitres from './WattsLitres.svelte';

/** What the lesson hangs up by name; the others are sent only to a page that asks for them. */
export const charts = { crossing: Crossing, ledger: Ledger, walk: PressureWalk } as const;
export type ChartName = keyof typeof charts;

export { Crossing, Ledger, PressureWalk, SteamClock, WattsLitres };
export { account, type Account, type LedgerRow } from './ledger.ts';
export type {
  Curve,
  Guess,
  LedgerEntry,
  Likely,
  SteamStory,
  Tone,
  WalkLeak,
  WalkMark,
  WalkStation,
  WattsFan,
  WattsPoint,
} from './types.ts';
