/** Engine numbers set into a lesson's words. No number the engine can compute is typed in a text file. */
import { say } from '#i18n';
import type { Quantity } from '#units';

/** How the run stands before its change, and what the change looks like: may be told before the reveal. */
export const SHAPE_PLACEHOLDERS = [
  'healthy',
  'before',
  'required',
  'sag',
  'open',
  'ties',
  'dents',
  'bore',
  'spare',
  'compression',
  'length',
  'pressure_before',
  'loss_before',
  'power_before',
  'efficacy_before',
  'leak_before',
  'room_before',
  'velocity_before',
  'clear_before',
  'dry_before',
  'roof_water_before',
  'reading',
  'reading_low',
  'reading_high',
  'reading_before',
  'reading_before_low',
  'reading_before_high',
] as const;
/** What the change does: may be told only after the reveal. */
export const OUTCOME_PLACEHOLDERS = [
  'flow',
  'drop',
  'loss',
  'pressure',
  'predicted',
  'power',
  'efficacy',
  'leak',
  'room',
  'velocity',
  'clear',
  'dry',
  'roof_water',
] as const;

/**
 * Those worked out while the pages are built, since it takes more of the engine than a lesson is sent:
 * what quantity each is. A name with `_before` is of the run before the change.
 */
export const BUILT = {
  power: 'power',
  power_before: 'power',
  efficacy: 'efficacy',
  efficacy_before: 'efficacy',
  leak: 'flow',
  leak_before: 'flow',
  room: 'flow',
  room_before: 'flow',
  velocity: 'velocity',
  velocity_before: 'velocity',
  clear: 'minutes',
  clear_before: 'minutes',
  dry: 'minutes',
  dry_before: 'minutes',
  roof_water: 'mass',
  roof_water_before: 'mass',
} as const satisfies Partial<Record<Placeholder, Quantity>>;
/** A meter's reading: a flow, a speed or a pressure, by the meter. */
export const METER_PLACEHOLDERS = [
  'reading',
  'reading_low',
  'reading_high',
  'reading_before',
  'reading_before_low',
  'reading_before_high',
] as const;
/** Of a meter held after the change: told only after the reveal. */
export const LATE_READINGS: readonly string[] = METER_PLACEHOLDERS.slice(0, 3);
export type BuiltName = keyof typeof BUILT | (typeof METER_PLACEHOLDERS)[number];
/** By name: what it is, and how much in the unit our keys carry. */
export type BuiltValues = Partial<Readonly<Record<BuiltName, readonly [Quantity, number]>>>;

export type Placeholder = (typeof SHAPE_PLACEHOLDERS)[number] | (typeof OUTCOME_PLACEHOLDERS)[number];
export type PlaceholderValues = Partial<Readonly<Record<Placeholder, string>>>;

const PATTERN = /\{([^{}]*)\}/g;

/** Names of the placeholders in a text, in their order, each as often as it stands there. */
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
