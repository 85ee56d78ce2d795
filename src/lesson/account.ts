/**
 * What was shown in one version of a lesson, in words that last: a later version may have none for it. Kept
 * with the place in a lesson, and in the practice record.
 */
import * as v from 'valibot';
import type { Evidence } from './evidence.ts';
import type { LessonText } from './parts.ts';
import type { Lesson } from './schema.ts';

const count = v.pipe(v.number(), v.integer(), v.minValue(0));
const words = v.optional(v.string());
const said = v.union([v.string(), v.pipe(v.number(), v.finite())]);

/** The parts of an account; `title` and the like are missing in records of before they were kept. */
export const accountParts = {
  version: count,
  aims: v.array(v.strictObject({ aim: v.string(), title: words, asked: count, right: count })),
  ideas: v.array(
    v.strictObject({ section: v.string(), aim: v.optional(v.string()), title: words, changed: v.boolean() }),
  ),
  /** Of each question the first answer and the last: words of cards, or a flow in L/s. */
  answers: v.optional(
    v.array(
      v.strictObject({
        section: v.string(),
        aim: v.optional(v.string()),
        title: words,
        first: said,
        last: said,
        right: v.boolean(),
      }),
    ),
  ),
};
export const accountSchema = v.strictObject(accountParts);
export type Account = v.InferOutput<typeof accountSchema>;

/** A heading as it can be read without the lesson: its numbers are gone. */
const lasting = (title: string) => title.replace(/\{[^{}]*\}/g, '…');

/** What was shown, with the lesson's words for it. */
export function accountOf({ version }: Lesson, shown: Evidence, { sections }: LessonText): Account {
  const titled = (key: string) => {
    const title = lasting(sections[key]?.title ?? '');
    return title ? { title } : {};
  };
  const card = (section: string, given: string | number) =>
    typeof given === 'number' ? given : (titled(`${section}/${given}`).title ?? given);
  const of = (aim: string | undefined) => (aim === undefined ? {} : { aim });
  return {
    version,
    aims: shown.aims.map(({ aim, asked, right }) => ({ aim, ...titled(`aims/${aim}`), asked, right })),
    ideas: shown.ideas.map(({ section, aim, changed }) => {
      const { idea } = sections[section] ?? {};
      return { section, ...of(aim), ...(idea ? { title: lasting(idea) } : titled(section)), changed };
    }),
    answers: shown.answers.map(({ section, aim, first, last, right }) => ({
      section,
      ...of(aim),
      ...titled(section),
      first: card(section, first),
      last: card(section, last),
      right,
    })),
  };
}
