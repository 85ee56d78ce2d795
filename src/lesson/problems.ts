/** What is wrong with a lesson's file: where, what was found, what is allowed. A value, never an exception. */
import { say } from '#i18n';

export interface Problem {
  readonly file: string;
  /** A path such as `steps[2].observe.right` in JSON, or a section such as `sag/observe/steeper` in text. */
  readonly path: string;
  readonly found: string;
  readonly allowed: string;
  /** Of the heading in a text that it is about, where there is one. */
  readonly line?: number;
}

/** One line for an author. */
export function problemText({ file, path, found, allowed, line }: Problem): string {
  return line === undefined
    ? say('lesson.problem', { file, path, found, allowed })
    : say('lesson.problem.at', { file, path, line: String(line), found, allowed });
}

/** A problem with its line, where that is known and was not told yet. */
export function lineAt(problem: Problem, line: number | undefined): Problem {
  return line === undefined || problem.line !== undefined ? problem : { ...problem, line };
}

/** Line of a place in a text, the first being 1. */
export function lineOf(text: string, index: number): number {
  return text.slice(0, index).split(/\r\n|\r|\n/).length;
}

/**
 * A file saved in another encoding. Read as UTF-8, letters of an older one turn into U+FFFD, and those of
 * UTF-16 fall apart with a NUL between them.
 */
export function notUtf8(content: string, file: string): Problem[] {
  const at = content.search(/[\0\ufffd]/);
  if (at < 0) return [];
  const path = say('lesson.problem.line', { line: String(lineOf(content, at)) });
  return [{ file, path, found: say('lesson.problem.not-utf8'), allowed: say('lesson.problem.utf8') }];
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
