/**
 * What a learner keeps over weeks: lessons done, how each aim went, which ideas were tried, and three returns
 * of three questions after about 2 days, 10 days and 5 weeks (gaps after Cepeda and others 2008; even steps
 * would do as well). A door of its own (`#lesson-practice`). All of it stays in the reader's browser.
 */
import * as v from 'valibot';
import type { MessageKey } from '#i18n';
import { accountParts, accountSchema, type Account } from './account.ts';
import type { ProgressStorage } from './keeping.ts';
import { accountIn, allOlder, withOlder } from './older.ts';
import type { Item } from './schema.ts';

export { accountOf } from './account-of.ts';
export type { Account } from './account.ts';
export { readable } from './readable.ts';
export { accountsOf, gone, heldIdeas, saysAnything, standings, withOlder, type Standing } from './older.ts';

const day = 24 * 60 * 60 * 1000;
/** Days after the lesson was done. */
export const GAPS = [2, 10, 35] as const;
/** Questions of one return. */
export const QUESTIONS = 3;

const time = v.pipe(v.string(), v.isoTimestamp());
const answer = v.strictObject({ item: v.string(), option: v.string(), right: v.boolean(), at: time });
const kept = v.strictObject({
  /** When it was first finished; the returns are counted from here. */
  finished: time,
  ...accountParts,
  /** Answers by return, the first gap first. */
  returns: v.pipe(v.array(v.array(answer)), v.maxLength(GAPS.length)),
});
export const practiceSchema = v.strictObject({
  // A record of before older versions were kept is one without any.
  format: v.pipe(
    v.picklist([1, 2]),
    v.transform(() => 2 as const),
  ),
  lessons: v.record(v.string(), kept),
  /** Shown in other versions of a lesson than the one its entry speaks of, or before it was finished. */
  older: v.optional(v.record(v.string(), v.array(accountSchema))),
});

export type Practice = v.InferOutput<typeof practiceSchema>;
export type Kept = v.InferOutput<typeof kept>;

export const NO_PRACTICE: Practice = { format: 2, lessons: {} };
const KEY = 'lost-litres.practice';

/**
 * A lesson finished: its first finish sets the clock, a later one only brings the account up to date; what
 * was shown in another version is set beside it. `place`: what it is kept under.
 */
export function withFinished(practice: Practice, place: string, shown: Account, now: Date): Practice {
  const before = practice.lessons[place];
  const one: Kept = {
    finished: before?.finished ?? now.toISOString(),
    ...shown,
    returns: before?.returns ?? [],
  };
  const next = { ...practice, lessons: { ...practice.lessons, [place]: one } };
  return before ? withOlder(next, place, [accountIn(before)]) : next;
}

export interface Due {
  /** Which return, from 0. */
  readonly round: number;
  readonly at: Date;
  readonly now: boolean;
}

/** The next return of a lesson, and whether its day has come; null when all are done. */
export function nextReturn({ finished, returns }: Kept, now: Date): Due | null {
  const open = returns.findIndex((answers) => answers.length < QUESTIONS);
  const round = open >= 0 ? open : returns.length;
  const gap = GAPS[round];
  if (gap === undefined) return null;
  const at = new Date(Date.parse(finished) + gap * day);
  return { round, at, now: now >= at };
}

/** What speaks for asking an item: last answered wrongly, then a weak aim, then not asked for longest. */
function urgency(item: Item, { aims, returns }: Kept): readonly number[] {
  const answers = returns.flat().filter((each) => each.item === item.id);
  const last = answers.at(-1);
  const aim = aims.find((each) => each.aim === item.aim);
  return [last && !last.right ? 0 : 1, aim && aim.asked > 0 ? aim.right / aim.asked : 1, answers.length];
}

/** Up to three questions of a return still to be asked, missed ideas first. */
export function questionsOf(items: readonly Item[], one: Kept, round: number): Item[] {
  const asked = one.returns[round] ?? [];
  const earlier = { ...one, returns: one.returns.slice(0, round) };
  const ranked = items
    .map((item, place) => ({ item, rank: [...urgency(item, earlier), place] }))
    .sort((a, b) => a.rank.map((value, i) => value - b.rank[i]!).find((gap) => gap !== 0) ?? 0)
    .slice(0, QUESTIONS)
    .map(({ item }) => item);
  return ranked.filter(({ id }) => !asked.some(({ item }) => item === id));
}

/** One question of a return answered; the first answer counts. */
export function withAnswer(
  practice: Practice,
  slug: string,
  round: number,
  { id, right }: Item,
  option: string,
  now: Date,
): Practice {
  const one = practice.lessons[slug];
  if (!one || one.returns[round]?.some(({ item }) => item === id)) return practice;
  const returns = Array.from({ length: Math.max(one.returns.length, round + 1) }, (_, i) => [
    ...(one.returns[i] ?? []),
    ...(i === round ? [{ item: id, option, right: option === right, at: now.toISOString() }] : []),
  ]);
  return { ...practice, lessons: { ...practice.lessons, [slug]: { ...one, returns } } };
}

export type ReadPractice =
  { readonly ok: true; readonly practice: Practice } | { readonly ok: false; readonly reason: MessageKey };

/** From a file or the browser's store; what cannot be read is refused whole, never half taken. */
export function readPractice(text: string): ReadPractice {
  let value: unknown;
  try {
    value = JSON.parse(text.replace(/^\uFEFF/, ''));
  } catch {
    return { ok: false, reason: 'practice.not-json' };
  }
  const read = v.safeParse(practiceSchema, value);
  if (read.success) return { ok: true, practice: read.output };
  const format = (value as { format?: unknown } | null)?.format;
  return {
    ok: false,
    reason: typeof format === 'number' && format > 2 ? 'practice.newer' : 'practice.not-ours',
  };
}

/** Two records as one: of a lesson in both, the earlier start, the fuller returns, and what each version showed. */
export function merged(mine: Practice, other: Practice): Practice {
  const older = allOlder(mine, other);
  let both: Practice = { format: 2, lessons: { ...mine.lessons }, ...(older ? { older } : {}) };
  for (const [place, theirs] of Object.entries(other.lessons)) {
    const ours = mine.lessons[place];
    const fuller = !ours || theirs.returns.flat().length > ours.returns.flat().length ? theirs : ours;
    const newer = !ours || theirs.version > ours.version ? theirs : ours;
    const first = !ours || Date.parse(theirs.finished) < Date.parse(ours.finished) ? theirs : ours;
    const shown = ours?.version === theirs.version ? fuller : newer;
    const one = { ...shown, returns: fuller.returns, finished: first.finished };
    both = { ...both, lessons: { ...both.lessons, [place]: one } };
    both = withOlder(both, place, [accountIn(theirs), ...(ours ? [accountIn(ours)] : [])]);
  }
  return both;
}

/** What is stored; a store that cannot be read is left as it is and told of. */
export function loadPractice(storage: ProgressStorage): {
  readonly practice: Practice;
  readonly reason?: MessageKey;
} {
  try {
    const text = storage.getItem(KEY);
    if (text === null) return { practice: NO_PRACTICE };
    const read = readPractice(text);
    if (read.ok) return { practice: read.practice };
    storage.setItem(`${KEY}.set-aside`, text);
    return { practice: NO_PRACTICE, reason: 'practice.set-aside' };
  } catch {
    return { practice: NO_PRACTICE, reason: 'lesson.progress.no-storage' };
  }
}

/** False where the store would not take it. */
export function savePractice(storage: ProgressStorage, practice: Practice): boolean {
  try {
    storage.setItem(KEY, JSON.stringify(practice));
    return true;
  } catch {
    return false;
  }
}
