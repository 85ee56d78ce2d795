/**
 * Messages by key, in ICU form, one file a language, and the language of this build. Screens hold no prose:
 * they call `say`. Parsing and plurals are `intl-messageformat`'s.
 */
import { IntlMessageFormat } from 'intl-messageformat';
import { language, messages } from '#language';
import type english from './messages/en.json';

export { language };
export { languages, type Language } from './languages.ts';

export type MessageKey = keyof typeof english;
export type Values = Record<string, string | number>;

/** Text, or in a built page its parsed form (see compile.ts). */
type Message = ConstructorParameters<typeof IntlMessageFormat>[0];

const catalogue: Partial<Record<MessageKey, Message>> = messages;
const parsed = new Map<string, IntlMessageFormat>();

/** Whether `key` names a message; for keys put together from data, such as `fault.sag`. */
export function has(key: string): key is MessageKey {
  return key in catalogue;
}

/** The message `key` with `values` set in. Throws only where the message itself asks for a value not given. */
export function say(key: MessageKey, values?: Values): string {
  // A page that is built in English alone is still read by every build; no reader sees what it says there.
  const source = catalogue[key] ?? key;
  if (typeof source === 'string' && !source.includes('{')) return source;
  let message = parsed.get(key);
  if (!message) {
    message = new IntlMessageFormat(source, language);
    parsed.set(key, message);
  }
  return String(message.format(values));
}

const point = new Intl.NumberFormat(language)
  .formatToParts(0.5)
  .find(({ type }) => type === 'decimal')!.value;

/** Digits as code writes them, with the decimal sign of the language. */
export function numeral(digits: string): string {
  return digits.replace('.', point);
}
