/** Engine numbers set into a lesson's words. No number the engine can compute is typed in a text file. */
import { say } from '#i18n';

/** What a fault looks like: may be told before the reveal. */
export const SHAPE_PLACEHOLDERS = [
  'healthy',
  'before',
  'required',
  'sag',
  'open',
  'ties',
  'bore',
  'spare',
  'compression',
] as const;
/** What the fault does: may be told only after the reveal. */
export const OUTCOME_PLACEHOLDERS = [
  'flow',
  'drop',
  'loss',
  'loss_before',
  'pressure',
  'pressure_before',
  'predicted',
] as const;

export type Placeholder = (typeof SHAPE_PLACEHOLDERS)[number] | (typeof OUTCOME_PLACEHOLDERS)[number];
export type PlaceholderValues = Partial<Readonly<Record<Placeholder, string>>>;

const PATTERN = /\{([^{}]*)\}/g;

export function placeholdersIn(text: string): string[] {
  return [...text.matchAll(PATTERN)].map((match) => match[1]!);
}

function escaped(text: string): string {
  return text.replace(/[&<>"']/g, (sign) => `&#${sign.charCodeAt(0)};`);
}

function filled(
  text: string,
  values: PlaceholderValues,
  where: string,
  write: (value: string) => string,
): string {
  return text.replace(PATTERN, (_, name: string) => {
    const value = values[name as Placeholder];
    if (value === undefined) throw new Error(say('lesson.problem.no-value', { name, where }));
    // A value and its unit stay on one line.
    return write(value.replaceAll(' ', '\u00a0'));
  });
}

/** Values, escaped, into HTML. Throws, naming the section, where a placeholder has no value. */
export function fill(html: string, values: PlaceholderValues, where = 'text'): string {
  return filled(html, values, where, escaped);
}

/** Values into plain words, such as a heading. */
export function fillWords(words: string, values: PlaceholderValues, where = 'text'): string {
  return filled(words, values, where, (value) => value);
}
