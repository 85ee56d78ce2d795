/** Messages whose keys are put together from data. Where one is missing the bare name stands, and a test complains. */
import { has, say } from '#i18n';

const said = (key: string, name: string) => (has(key) ? say(key) : name);

/** A mark as a message key has it: "common practice, no source" becomes "common-practice-no-source". */
export const slug = (mark: string) => mark.replace(/,? /g, '-');
export const markWords = (mark: string) => said(`know.mark.${slug(mark)}`, mark);
export const assumptionWords = (code: string) => said(`assumption.${code}`, code);
export const coefficientWords = (name: string) => said(`know.coefficient.${name}`, name);

/** Every mark a number on the page may carry. */
export const MARKS = [
  'published',
  'transcribed',
  'memory',
  'computed independently',
  'model assumption',
  'common practice, no source',
  'invented',
] as const;
