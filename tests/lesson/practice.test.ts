/** Lessons done, and what comes back when: by the calendar, missed ideas first, never lost and never half read. */
import { describe, expect, it } from 'vitest';
import { has } from '#i18n';
import {
  GAPS,
  loadPractice,
  merged,
  nextReturn,
  NO_PRACTICE,
  questionsOf,
  readPractice,
  savePractice,
  withAnswer,
  withFinished,
  type Account,
} from '#lesson-practice';
import { memory } from './memory.ts';
import { wideLesson } from './small.ts';

const lesson = wideLesson();
const items = lesson.returns!;
const shown: Account = {
  version: lesson.version,
  aims: [
    { aim: 'predict', asked: 4, right: 4 },
    { aim: 'mend', asked: 2, right: 0 },
  ],
  ideas: [{ section: 'second/explain/climb', aim: 'predict', changed: false }],
};
const start = new Date('2026-03-01T09:00:00.000Z');
const after = (days: number) => new Date(start.getTime() + days * 24 * 60 * 60 * 1000);
const done = withFinished(NO_PRACTICE, lesson.slug, shown, start);
const one = (practice = done) => practice.lessons[lesson.slug]!;

function answered(round: number, practice = done, right = true) {
  return questionsOf(items, one(practice), round).reduce(
    (kept, item) =>
      withAnswer(kept, lesson.slug, round, item, right ? item.right : 'wrong', after(GAPS[round]!)),
    practice,
  );
}

describe('the returns', () => {
  it('come after about 2 days, 10 days and 5 weeks, and then no more', () => {
    expect(nextReturn(one(), after(1))).toMatchObject({ round: 0, now: false, at: after(2) });
    expect(nextReturn(one(), after(2))).toMatchObject({ round: 0, now: true });
    const second = answered(0);
    expect(nextReturn(one(second), after(9))).toMatchObject({ round: 1, now: false, at: after(10) });
    const third = answered(1, second);
    expect(nextReturn(one(third), after(40))).toMatchObject({ round: 2, now: true, at: after(35) });
    expect(nextReturn(one(answered(2, third)), after(400))).toBeNull();
  });

  it('stay open until all three questions are answered', () => {
    const [first] = questionsOf(items, one(), 0);
    const begun = withAnswer(done, lesson.slug, 0, first!, first!.right, after(2));
    expect(nextReturn(one(begun), after(3))).toMatchObject({ round: 0, now: true });
    expect(questionsOf(items, one(begun), 0)).toHaveLength(2);
    expect(questionsOf(items, one(begun), 0)).not.toContain(first);
  });

  it('ask of a weak aim first, and of what was missed before that', () => {
    expect(questionsOf(items, one(), 0)[0]!.aim).toBe('mend');
    const missed = withAnswer(answered(0), lesson.slug, 1, items[0]!, 'wrong', after(10));
    const wrongOnce = withAnswer(done, lesson.slug, 0, items[1]!, 'wrong', after(2));
    expect(one(missed).returns[1]![0]!.right).toBe(false);
    expect(questionsOf(items, one(wrongOnce), 1)[0]).toBe(items[1]);
  });

  it('count the first answer only', () => {
    const twice = [items[0]!.right, 'wrong'].reduce(
      (kept, option) => withAnswer(kept, lesson.slug, 0, items[0]!, option, after(2)),
      done,
    );
    expect(one(twice).returns[0]).toHaveLength(1);
    expect(one(twice).returns[0]![0]!.right).toBe(true);
  });

  it('are counted from the first time a lesson was finished', () => {
    const again = withFinished(answered(0), lesson.slug, { ...shown, ideas: [] }, after(20));
    expect(one(again)).toMatchObject({ finished: start.toISOString(), ideas: [] });
    expect(one(again).returns[0]).toHaveLength(3);
  });
});

describe('the record', () => {
  it('comes back from the store as it went in', () => {
    const storage = memory();
    expect(savePractice(storage, answered(0))).toBe(true);
    expect(loadPractice(storage)).toEqual({ practice: answered(0) });
  });

  it.each([
    ['broken text', '{"format":1,', 'practice.not-json'],
    ['another file', '{"name":"a rig"}', 'practice.not-ours'],
    ['a newer one', '{"format":3,"lessons":{}}', 'practice.newer'],
    ['half a record', '{"format":1,"lessons":{"a":{"finished":"yesterday"}}}', 'practice.not-ours'],
  ])('refuses %s by name, and keeps what was there', (_name, text, reason) => {
    expect(readPractice(text)).toEqual({ ok: false, reason });
    expect(has(reason)).toBe(true);
    const storage = memory();
    storage.setItem('lost-litres.practice', text);
    expect(loadPractice(storage)).toEqual({ practice: NO_PRACTICE, reason: 'practice.set-aside' });
    expect(storage.getItem('lost-litres.practice.set-aside')).toBe(text);
  });

  it('takes in another without losing either', () => {
    const theirs = withFinished(NO_PRACTICE, lesson.slug, shown, after(-5));
    const both = merged(answered(0), theirs);
    expect(one(both).finished).toBe(after(-5).toISOString());
    expect(one(both).returns[0]).toHaveLength(3);
    expect(Object.keys(merged(done, withFinished(NO_PRACTICE, 'another', shown, start)).lessons)).toEqual([
      lesson.slug,
      'another',
    ]);
  });

  it('reads a record of before older versions were kept', () => {
    const { version, returns, finished } = one();
    const aims = [{ aim: 'predict', asked: 4, right: 4 }];
    const ideas = [{ section: 'second/explain/climb', changed: false }];
    const before = { format: 1, lessons: { [lesson.slug]: { finished, version, aims, ideas, returns } } };
    expect(readPractice(JSON.stringify(before))).toEqual({ ok: true, practice: { ...before, format: 2 } });
  });

  it('says so when the store takes nothing', () => {
    const closed = memory(['getItem', 'setItem']);
    expect(savePractice(closed, done)).toBe(false);
    expect(loadPractice(closed)).toEqual({ practice: NO_PRACTICE, reason: 'lesson.progress.no-storage' });
  });
});
