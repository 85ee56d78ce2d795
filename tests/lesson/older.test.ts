/** A lesson changes under its learners: what they showed stays with the aims, and nothing of it is lost. */
import { describe, expect, it } from 'vitest';
import { evidence, loadProgress, phase, progressKey, readLesson, saveProgress, type Lesson } from '#lesson';
import {
  accountOf,
  accountsOf,
  gone,
  heldIdeas,
  merged,
  NO_PRACTICE,
  readable,
  readPractice,
  saysAnything,
  standings,
  withAnswer,
  withFinished,
  withOlder,
  type Account,
} from '#lesson-practice';
import { memory } from './memory.ts';
import { FILE, journeyOf, play, rawWide, type Spoilt } from './small.ts';

function lessonWith(change: (raw: Spoilt) => void = () => {}): Lesson {
  const raw: Spoilt = rawWide();
  change(raw);
  const read = readLesson(raw, FILE);
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  return read.lesson;
}
const first = lessonWith();
/** The aim `mend` is gone, `why` is new. */
const second = lessonWith((raw) => {
  raw.version = 4;
  raw.aims = ['predict', 'why'];
  raw.steps[0].questions[1].aim = 'why';
  raw.returns[2].aim = 'why';
});
const KEY = progressKey(first.slug);
const section = (title: string, idea?: string) => ({ title, html: '', ...(idea ? { idea } : {}) });
const text = {
  title: 'Two cases',
  sections: {
    'aims/predict': section('You can say which way it goes'),
    'aims/mend': section('You can mend it to {required}'),
    'entry/curve': section('Which curve?'),
    'entry/curve/a': section('The solid one'),
    'second/explain': section('Why?'),
    'second/explain/climb': section('It climbs', 'The uphill idea'),
    'second/explain/turns': section('It turns, from {before} to {flow}'),
  },
};
const snapshot = play(
  [
    { type: 'step.begin' },
    { type: 'entry.answer', question: 'curve', option: 'a' },
    { type: 'entry.answer', question: 'point', option: 'a' },
    { type: 'step.next' },
    { type: 'step.begin' },
    { type: 'prediction.set', option: 'fell' },
    { type: 'prediction.lock' },
    { type: 'reveal.play' },
    { type: 'reveal.end' },
    { type: 'observation.answer', option: 'rose' },
    { type: 'explanation.answer', option: 'climb' },
    { type: 'explanation.answer', option: 'turns' },
  ],
  first,
);
const flows = () => ({ before_L_s: 40, after_L_s: 30 });
const account = accountOf(first, evidence(first, journeyOf(snapshot), flows), text);
const other = (version: number, changed: Partial<Account> = {}): Account => ({
  ...account,
  version,
  ...changed,
});
const now = new Date('2026-03-01T09:00:00.000Z');

describe('what was shown, in words that last', () => {
  it('has by aim what was right at the first try', () => {
    expect(account).toMatchObject({
      version: 3,
      aims: [
        { aim: 'predict', title: 'You can say which way it goes', asked: 4, right: 3 },
        { aim: 'mend', title: 'You can mend it to …', asked: 1, right: 0 },
      ],
    });
  });

  it('has the mistaken ideas by name, and of every question the first answer and the last', () => {
    expect(account.ideas).toEqual([
      { section: 'second/explain/climb', aim: 'predict', title: 'The uphill idea', changed: false },
    ]);
    expect(account.answers).toEqual([
      {
        section: 'entry/curve',
        aim: 'predict',
        title: 'Which curve?',
        first: 'The solid one',
        last: 'The solid one',
        right: true,
      },
      { section: 'entry/point', aim: 'mend', first: 'a', last: 'a', right: false },
      { section: 'second/predict', aim: 'predict', first: 'fell', last: 'fell', right: true },
      { section: 'second/observe', aim: 'predict', first: 'rose', last: 'rose', right: true },
      {
        section: 'second/explain',
        aim: 'predict',
        title: 'Why?',
        first: 'It climbs',
        last: 'It turns, from … to …',
        right: false,
      },
    ]);
  });
});

describe('a place of another version', () => {
  it('is set aside, and hands over what was shown', () => {
    const storage = memory();
    saveProgress(storage, snapshot, first.slug, account);
    const saved = storage.items.get(KEY)!;
    expect(loadProgress(storage, second)).toEqual({
      kind: 'older',
      from: 3,
      account,
      keptAs: `${KEY}.set-aside.1`,
    });
    expect([...storage.items]).toEqual([[`${KEY}.set-aside.1`, saved]]);
    expect(loadProgress(storage, second)).toEqual({ kind: 'fresh' });
  });

  it('comes back whole in its own version, the account with it', () => {
    const storage = memory();
    saveProgress(storage, snapshot, first.slug, account);
    const result = loadProgress(storage, first);
    expect(result.kind === 'restored' && phase(result.snapshot)).toBe(phase(snapshot));
  });

  it.each<[string, (saved: Spoilt) => void]>([
    ['was kept before accounts were', (saved) => delete saved.account],
    ['has a spoilt account', (saved) => (saved.account.aims = 'many')],
    ['has the account of a third version', (saved) => (saved.account.version = 9)],
  ])('is read by its steps where it %s', (_name, change) => {
    const storage = memory();
    saveProgress(storage, snapshot, first.slug, account);
    const saved = JSON.parse(storage.items.get(KEY)!);
    change(saved);
    storage.items.set(KEY, JSON.stringify(saved));
    const result = loadProgress(storage, second);
    if (result.kind !== 'older' || !result.journey) throw new Error(JSON.stringify(result));
    expect(result.account).toBeUndefined();
    const shown = evidence(second, readable(second, result.journey), flows);
    expect(shown.aims).toEqual([
      { aim: 'predict', asked: 3, right: 2 },
      { aim: 'why', asked: 1, right: 0 },
    ]);
    expect(shown.ideas.map((idea) => idea.section)).toEqual(['second/explain/climb']);
  });

  it('is not read where a step is gone or one of its answers is no longer offered', () => {
    const changed = lessonWith((raw) => {
      raw.version = 5;
      raw.steps[1].explain = { options: ['turns', 'metres', 'toll'], right: 'turns' };
      raw.steps[1].id = 'kept';
      raw.steps[2].id = 'second';
      raw.steps[2].explain = { options: ['turns', 'metres', 'toll'], right: 'turns' };
      raw.steps[0].skipTo = 'kept';
    });
    const shown = evidence(changed, readable(changed, journeyOf(snapshot)), flows);
    expect(shown.answers.map((one) => one.section)).toEqual(['entry/curve', 'entry/point']);
  });

  it('is unreadable where neither account nor journey can be read', () => {
    const storage = memory();
    saveProgress(storage, snapshot, first.slug, account);
    const saved = JSON.parse(storage.items.get(KEY)!);
    storage.items.set(KEY, JSON.stringify({ ...saved, account: 1, snapshot: 2 }));
    expect(loadProgress(storage, second)).toMatchObject({
      kind: 'set-aside',
      reason: 'lesson.progress.unreadable',
    });
  });
});

describe('the record', () => {
  const begun = withOlder(NO_PRACTICE, first.slug, [account]);

  it('keeps an unfinished older version, and is read back with it', () => {
    expect(accountsOf(begun, first.slug)).toEqual([account]);
    expect(readPractice(JSON.stringify(begun))).toEqual({ ok: true, practice: begun });
  });

  it('carries what was shown over by aim, and shows aims that are gone as from their version', () => {
    const accounts = accountsOf(begun, first.slug);
    expect(standings(accounts, second.aims)).toEqual([{ aim: 'predict', asked: 4, right: 3, version: 3 }]);
    expect(gone(accounts, second.aims)).toMatchObject([{ version: 3, aims: [{ aim: 'mend' }] }]);
    expect(gone(accounts, first.aims)).toEqual([]);
  });

  it('lets what is shown in the new version speak for an aim, once there is any', () => {
    const aims = [
      { aim: 'predict', asked: 2, right: 2 },
      { aim: 'why', asked: 0, right: 0 },
    ];
    const done = withFinished(begun, first.slug, { version: 4, aims, ideas: [], answers: [] }, now);
    const accounts = accountsOf(done, first.slug);
    expect(standings(accounts, second.aims)).toEqual([{ aim: 'predict', asked: 2, right: 2, version: 4 }]);
    expect(gone(accounts, second.aims)).toMatchObject([{ version: 3, aims: [{ aim: 'mend' }] }]);
  });

  it('holds an older idea until its question is answered without it', () => {
    const without = other(4, { ideas: [], answers: [] });
    const again = other(4, { ideas: [] });
    expect(heldIdeas([without, account])).toMatchObject([{ section: 'second/explain/climb', version: 3 }]);
    expect(heldIdeas([again, account])).toEqual([]);
    expect(heldIdeas([other(4), account])).toMatchObject([{ version: 4 }]);
  });

  it('keeps what a finish in an older version showed, and the returns answered since', () => {
    const done = withFinished(NO_PRACTICE, first.slug, account, now);
    const answered = withAnswer(done, first.slug, 0, first.returns![0]!, 'a', now);
    const next = withFinished(
      answered,
      first.slug,
      other(4, { aims: [] }),
      new Date('2026-05-01T09:00:00.000Z'),
    );
    expect(next.lessons[first.slug]).toMatchObject({ version: 4, finished: now.toISOString() });
    expect(next.lessons[first.slug]!.returns[0]).toHaveLength(1);
    expect(next.older![first.slug]).toEqual([account]);
  });

  it('keeps one account a version, the fuller one, and none that says nothing', () => {
    const less = other(3, { aims: [] });
    expect(withOlder(begun, first.slug, [less]).older![first.slug]).toEqual([account]);
    expect(saysAnything({ version: 1, aims: [{ aim: 'a', asked: 0, right: 0 }], ideas: [] })).toBe(false);
    expect(withOlder(NO_PRACTICE, 'a', [{ version: 1, aims: [], ideas: [] }])).toEqual(NO_PRACTICE);
  });

  it('is merged with another without losing a version of either', () => {
    const mine = withFinished(begun, first.slug, other(4), now);
    const theirs = withFinished(
      withOlder(NO_PRACTICE, first.slug, [other(2)]),
      first.slug,
      other(5),
      new Date('2026-02-01T09:00:00.000Z'),
    );
    for (const both of [merged(mine, theirs), merged(theirs, mine)]) {
      expect(both.lessons[first.slug]).toMatchObject({ version: 5, finished: '2026-02-01T09:00:00.000Z' });
      expect(both.older![first.slug]!.map(({ version }) => version)).toEqual([4, 3, 2]);
      expect(readPractice(JSON.stringify(both))).toEqual({ ok: true, practice: both });
    }
  });
});
