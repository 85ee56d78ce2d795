/** The shapes of a check against something outside this engine, and of its verdict. */
import type { SourceId } from './sources.ts';

/** How far the outside number has been verified; "computed independently" is worked apart from this engine. */
export type CheckMark =
  'published' | 'transcribed' | 'memory' | 'computed independently' | 'common practice, no source';

/**
 * How far ours may lie from the outside number. `absolute` is in the check's own unit, `relative` a share
 * of the outside number; `at least` asks only that ours is not below it.
 */
export type Allowed =
  | { readonly kind: 'absolute' | 'relative'; readonly by: number; readonly why: string }
  | { readonly kind: 'at least'; readonly why: string };

export interface Check {
  readonly id: string;
  /** Key of `SOURCES`. */
  readonly source: SourceId;
  /** Page, table, example or statement within the source. */
  readonly where: string;
  readonly mark: CheckMark;
  /** What is compared, in words. */
  readonly quantity: string;
  /** Empty for a pure number. */
  readonly unit: string;
  readonly published: number;
  /** Asks the engine. */
  readonly ours: () => number;
  readonly allowed: Allowed;
}

export interface Row extends Omit<Check, 'ours'> {
  readonly ours: number;
  /** Ours less the outside number, in the check's unit. */
  readonly difference: number;
  readonly verdict: 'passes' | 'fails';
  /** Why there is no number of ours, when there is none. */
  readonly problem?: string;
}

export interface Source {
  readonly title: string;
  readonly edition: string;
  /** How it was read. */
  readonly read: string;
}
