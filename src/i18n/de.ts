/** German. A message that is missing, or that English has not, does not compile. */
import messages from './messages/de.json' with { type: 'json' };
import type { MessageKey } from './index.ts';
import type { Language } from './languages.ts';

/** Said only on pages that are built in English alone. */
type EnglishOnly = Extract<MessageKey, `know.${string}` | `gallery.${string}`>;
type Wanted = Exclude<MessageKey, EnglishOnly>;

type Missing = Exclude<Wanted, keyof typeof messages>;
type Stray = Exclude<keyof typeof messages, Wanted>;
/** Its name stands in the error. */
const complete: Missing | Stray extends never ? true : Missing | Stray = true;
void complete;

export const language: Language = 'de';
export { messages };
