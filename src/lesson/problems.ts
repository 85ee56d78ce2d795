/** What is wrong with a lesson's file: where, what was found, what is allowed. A value, never an exception. */
import { say } from '#i18n';

export interface Problem {
  readonly file: string;
  /** A path such as `steps[2].observe.right` in JSON, or a section such as `sag/observe/steeper` in text. */
  readonly path: string;
  readonly found: string;
  readonly allowed: string;
}

/** One line for an author. */
export function problemText({ file, path, found, allowed }: Problem): string {
  return say('lesson.problem', { file, path, found, allowed });
}

/** A value as an author would recognise it, kept short. */
export function shown(value: unknown): string {
  if (value === undefined) return say('lesson.problem.nothing');
  // JSON has no word for NaN and the infinities.
  const text = typeof value === 'number' ? String(value) : (JSON.stringify(value) ?? String(value));
  return text.length > 60 ? `${text.slice(0, 57)}...` : text;
}

/** Keys and indexes as `steps[2].fault.amount`. */
export function pathOf(keys: readonly unknown[]): string {
  return keys
    .map((key, i) => (typeof key === 'number' ? `[${key}]` : `${i === 0 ? '' : '.'}${String(key)}`))
    .join('');
}
