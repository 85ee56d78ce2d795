/** What was shown in a lesson, told in its words; apart from the checks of such accounts, which not every page needs. */
import type { Account } from './account.ts';
import type { Evidence } from './evidence.ts';
import type { LessonText } from './parts.ts';
import type { Lesson } from './schema.ts';

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
