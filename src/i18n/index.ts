/**
 * Messages by key, in ICU form, one file a language. Screens hold no prose: they call `say`.
 * Parsing and plurals are `intl-messageformat`'s.
 */
import { IntlMessageFormat } from 'intl-messageformat';
import en from './messages/en.json' with { type: 'json' };

export type MessageKey = keyof typeof en;
export type Values = Record<string, string | number>;

/** Text, or in a built page its parsed form (see compile.ts). */
type Message = ConstructorParameters<typeof IntlMessageFormat>[0];

const catalogues: Record<string, Record<MessageKey, Message>> = { en };
const parsed = new Map<string, IntlMessageFormat>();

/** Whether `key` names a message; for keys put together from data, such as `fault.sag`. */
export function has(key: string): key is MessageKey {
  return key in en;
}

/** The message `key` with `values` set in. Throws only where the message itself asks for a value not given. */
export function say(key: MessageKey, values?: Values, language = 'en'): string {
  const catalogue = catalogues[language] ?? en;
  const id = `${language}/${key}`;
  const source: Message = catalogue[key] ?? en[key];
  if (typeof source === 'string' && !source.includes('{')) return source;
  let message = parsed.get(id);
  if (!message) {
    message = new IntlMessageFormat(source, language);
    parsed.set(id, message);
  }
  return String(message.format(values));
}
