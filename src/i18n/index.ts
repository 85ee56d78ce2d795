/**
 * Messages by key, in ICU form, one file a language. Screens hold no prose: they call `say`.
 * Parsing and plurals are `intl-messageformat`'s.
 */
import { IntlMessageFormat } from 'intl-messageformat';
import en from './messages/en.json' with { type: 'json' };

export type MessageKey = keyof typeof en;
export type Values = Record<string, string | number>;

const catalogues: Record<string, Record<MessageKey, string>> = { en };
const parsed = new Map<string, IntlMessageFormat>();

/** Whether `key` names a message; for keys put together from data, such as `fault.sag`. */
export function has(key: string): key is MessageKey {
  return key in en;
}

/** The message `key` with `values` set in. Throws only where the message itself asks for a value not given. */
export function say(key: MessageKey, values?: Values, language = 'en'): string {
  const catalogue = catalogues[language] ?? en;
  const id = `${language}/${key}`;
  let message = parsed.get(id);
  if (!message) {
    message = new IntlMessageFormat(catalogue[key] ?? en[key], language);
    parsed.set(id, message);
  }
  return String(message.format(values));
}
