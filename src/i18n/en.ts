/** English, unless another language is asked for. */
import messages from './messages/en.json' with { type: 'json' };
import type { Language } from './languages.ts';

export const language: Language = 'en';
export { messages };
