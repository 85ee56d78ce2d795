/**
 * Exhaust rates that documents ask for, as teaching data: each with its document, edition and how far the
 * figure has been checked. None of them stands for the code that applies on a job.
 */
import type { RateMark } from '#physics';
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

export const rates = data as readonly Rate[];

/** The rule `judge` takes, for a fan that runs at times or all the time; null for an id there is none of. */
export function rule(id: string, running: 'intermittent' | 'continuous') {
  const rate = rates.find((each) => each.id === id);
  if (!rate) return null;
  return running === 'intermittent'
    ? { required_L_s: rate.intermittent_L_s, mark: rate.intermittentMark }
    : { required_L_s: rate.continuous_L_s, mark: rate.continuousMark };
}
