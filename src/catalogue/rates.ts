/**
 * Exhaust rates that documents ask for, as teaching data: each with its document, edition and how far the
 * figure has been checked. None of them stands for the code that applies on a job.
 */
import * as v from 'valibot';
import type { RateMark, Requirement } from '#physics';
import data from '../../seeds/rates.json';

export interface Rate {
  readonly id: string;
  readonly document: string;
  readonly edition: string;
  readonly clause: string;
  readonly room: string;
  /** null where the document, or our sheet of it, gives no separate figure. */
  readonly intermittent_L_s: number | null;
  readonly continuous_L_s: number | null;
  readonly intermittentMark: RateMark;
  readonly continuousMark: RateMark;
  readonly source: string;
  readonly note?: string;
}

const MARKS = [
  'published',
  'published-2nd',
  'transcribed',
  'memory',
  'model assumption',
  'common practice, no source',
  'invented',
] as const satisfies RateMark[];
const words = v.pipe(v.string(), v.minLength(1, 'some words'));
const flow = v.nullable(v.pipe(v.number(), v.finite(), v.gtValue(0, 'more than 0')));
const ratesSchema = v.array(
  v.strictObject({
    id: words,
    document: words,
    edition: words,
    clause: words,
    room: words,
    intermittent_L_s: flow,
    continuous_L_s: flow,
    intermittentMark: v.picklist(MARKS),
    continuousMark: v.picklist(MARKS),
    source: words,
    note: v.optional(words),
  }),
);

/** Rates out of parsed JSON, or a line for each thing wrong: its path, what was found, what is allowed. */
export function readRates(
  value: unknown,
):
  | { readonly ok: true; readonly rates: readonly Rate[] }
  | { readonly ok: false; readonly problems: string[] } {
  const read = v.safeParse(ratesSchema, value);
  if (read.success) return { ok: true, rates: read.output };
  const problems = read.issues.map((issue) => {
    const path = (issue.path ?? []).map((item) => item.key).join('.');
    return `rates.json: ${path}: found ${issue.received}; allowed: ${issue.expected ?? issue.message}`;
  });
  return { ok: false, problems };
}

export const rates = data as readonly Rate[];

/** The rate a requirement names, where its figure is that rate's own; null otherwise. */
export function rateOf({ rate: id, flow_L_s }: Requirement): Rate | null {
  const rate = rates.find((each) => each.id === id);
  return rate && [rate.intermittent_L_s, rate.continuous_L_s].includes(flow_L_s) ? rate : null;
}

/** The rule `judge` takes, for a fan that runs at times or all the time; null for an id there is none of. */
export function rule(id: string, running: 'intermittent' | 'continuous') {
  const rate = rates.find((each) => each.id === id);
  if (!rate) return null;
  return running === 'intermittent'
    ? { required_L_s: rate.intermittent_L_s, mark: rate.intermittentMark }
    : { required_L_s: rate.continuous_L_s, mark: rate.continuousMark };
}
