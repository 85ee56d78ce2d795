/** Asks each check for our number and says whether it lies within what is allowed. */
import type { Check, Row } from './types.ts';

/** The table proves nothing when it shrinks: fewer than this and it fails as a whole. */
export const LEAST = { checks: 60, sources: 15 } as const;

/** One verdict. A number of ours that is none fails; a check that throws fails as well. */
export function judge({ ours, ...check }: Check): Row {
  const { value, problem } = asked(ours);
  const difference = value - check.published;
  const { allowed } = check;
  let within = Number.isFinite(value);
  if (allowed.kind === 'at least') within &&= difference >= 0;
  else {
    const room = allowed.kind === 'relative' ? allowed.by * Math.abs(check.published) : allowed.by;
    within &&= Math.abs(difference) <= room;
  }
  const verdict = within ? 'passes' : 'fails';
  return { ...check, ours: value, difference, verdict, ...(problem ? { problem } : {}) };
}

function asked(ours: () => number): { value: number; problem?: string } {
  try {
    return { value: ours() };
  } catch (error) {
    return { value: NaN, problem: error instanceof Error ? error.message : String(error) };
  }
}

export interface Summary {
  readonly checks: number;
  readonly sources: number;
  readonly failed: number;
  /** No row fails, and there are enough rows from enough sources. */
  readonly holds: boolean;
}

export function summarise(rows: readonly Row[]): Summary {
  const sources = new Set(rows.map((row) => row.source)).size;
  const failed = rows.filter((row) => row.verdict === 'fails').length;
  const holds = failed === 0 && rows.length >= LEAST.checks && sources >= LEAST.sources;
  return { checks: rows.length, sources, failed, holds };
}
