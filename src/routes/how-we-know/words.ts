/** Messages whose keys are put together from data. Where one is missing the bare name stands, and a test complains. */
import type { Rate } from '#catalogue';
import { has, say } from '#i18n';

const said = (key: string, name: string) => (has(key) ? say(key) : name);

/** A mark as a message key has it: "common practice, no source" becomes "common-practice-no-source". */
export const slug = (mark: string) => mark.replace(/,? /g, '-');
export const markWords = (mark: string) => said(`know.mark.${slug(mark)}`, mark);
export const assumptionWords = (code: string) => said(`assumption.${code}`, code);
export const coefficientWords = (name: string) => said(`know.coefficient.${name}`, name);

export const faultWords = (kind: string) =>
  said(has(`fault.${kind}`) ? `fault.${kind}` : `know.labour.${kind}`, kind);

/** Marks of a rate's figures; the running one counts only where the document gives a figure for it. */
export const rateMarks = (rate: Rate) => {
  const marks = [
    ...(rate.intermittent_L_s === null ? [] : [rate.intermittentMark]),
    ...(rate.continuous_L_s === null ? [] : [rate.continuousMark]),
  ];
  const [first = '', second = first] = [...new Set(marks)];
  return { first, second, same: first === second ? 'yes' : 'no' };
};

export const place = ({ document, edition, clause }: Rate) => ({ document, edition, clause });
export const noted = ({ source, note = '' }: Rate) => ({ source, note, noted: note === '' ? 'no' : 'yes' });

/** Every mark a number on the page may carry. */
export const MARKS = [
  'published',
  'published-2nd',
  'transcribed',
  'memory',
  'computed independently',
  'model assumption',
  'common practice, no source',
  'invented',
] as const;
