/** What was shown in another version of a lesson, carried over by aim; fetched only where there is any. */
import { say } from '#i18n';
import { evidence, stagesOf, type Journey, type LessonText } from '#lesson';
import {
  accountOf,
  loadPractice,
  readable,
  saysAnything,
  savePractice,
  withOlder,
  type Account,
} from '#lesson-practice';
import { browserStorage, type LessonPlay } from '#session';

interface Older {
  readonly from: number;
  readonly account?: Account;
  readonly journey?: Journey;
}

function accountFrom({ from, account, journey }: Older, play: LessonPlay, text: LessonText): Account {
  const { lesson, runs } = play;
  if (account || !journey) return account ?? { version: from, aims: [], ideas: [] };
  const shown = evidence(lesson, readable(lesson, journey), (step) => {
    const { from: before, to: after } = stagesOf(lesson, step);
    return {
      before_L_s: runs.at(before).flow_L_s.outdoors,
      after_L_s: runs.at(after).flow_L_s.outdoors,
    };
  });
  return { ...accountOf(lesson, shown, text), version: from };
}

/** Writes it into the practice record, and says what was kept and what was not. */
export function carryOver(older: Older, play: LessonPlay, text: LessonText, place: string): string {
  const { lesson } = play;
  const account = accountFrom(older, play, text);
  const told = [say('carry.place', { from: older.from, now: lesson.version })];
  if (!saysAnything(account)) return [...told, say('carry.nothing')].join(' ');
  const { practice } = loadPractice(browserStorage);
  if (!savePractice(browserStorage, withOlder(practice, place, [account])))
    return [...told, say('carry.not-saved')].join(' ');
  const shown = account.aims.filter(({ asked }) => asked > 0);
  const list = (aims: typeof shown) =>
    aims
      .map(({ aim, title }) => text.sections[`aims/${aim}`]?.title ?? title ?? aim)
      .map((title) => `“${title}”`)
      .join(', ');
  const kept = shown.filter(({ aim }) => lesson.aims.includes(aim));
  const lost = shown.filter(({ aim }) => !lesson.aims.includes(aim));
  if (kept.length) told.push(say('carry.kept', { count: kept.length, aims: list(kept) }));
  if (lost.length) told.push(say('carry.gone', { count: lost.length, aims: list(lost), from: older.from }));
  const loose = (account.answers ?? []).filter(({ aim }) => aim === undefined).length;
  if (loose) told.push(say('carry.answers', { count: loose }));
  if (!older.account) told.push(say('carry.by-step'));
  return told.join(' ');
}
