/** Which faults are in the drawn rig, and the account, at every moment of a lesson. */
import { describe, expect, it } from 'vitest';
import { has } from '#i18n';
import {
  account,
  possible,
  stageBefore,
  stageNow,
  stations,
  type LessonEvent,
  type LessonSnapshot,
} from '#lesson';
import { EVERY_EVENT, play, smallLesson, through, TO_MENDING, wideLesson } from './small.ts';

const lesson = smallLesson();
const [first, second] = lesson.steps.map((step) => (step.kind === 'fault' ? step.fault : undefined));
const before = (snapshot: LessonSnapshot) => stageBefore(lesson, snapshot).faults;
const now = (events: readonly LessonEvent[]) => stageNow(lesson, play(events)).faults;

describe('the faults of the drawn rig', () => {
  it('has the present fault from its reveal on, and not a moment sooner', () => {
    expect(now(through('steeper').slice(0, 3))).toEqual([]);
    expect(now(through('steeper').slice(0, 4))).toEqual([first]);
    expect(now([...through('steeper'), { type: 'step.next' }])).toEqual([first]);
    expect(now(TO_MENDING)).toEqual([first, second]);
  });

  it('shows an earlier step as it was', () => {
    expect(now([...TO_MENDING, { type: 'step.visit', index: 0 }])).toEqual([first]);
  });

  it('leaves out what is mended, in the mending half only', () => {
    const mended: LessonEvent[] = [...TO_MENDING, { type: 'repair.make', stepId: 'first' }];
    expect(now(mended)).toEqual([second]);
    expect(before(play(mended))).toEqual([first, second]);
    expect(now([...mended, { type: 'step.back' }])).toEqual([first, second]);
  });

  it('has a ghost one fault back', () => {
    expect(before(play(through('steeper')))).toEqual([]);
    expect(before(play([...through('steeper'), { type: 'step.next' }]))).toEqual([first]);
  });
});

describe('the account', () => {
  const lines = (snapshot: LessonSnapshot) => account(lesson, snapshot).map(({ line }) => line);
  const mended: LessonEvent[] = [
    ...TO_MENDING,
    { type: 'repair.make', stepId: 'second' },
    { type: 'repair.make', stepId: 'first' },
  ];

  it('opens, takes a debit a fault and a credit a repair, in order', () => {
    expect(lines(play([]))).toEqual([{ kind: 'opening' }]);
    expect(lines(play(mended))).toEqual([
      { kind: 'opening' },
      { kind: 'debit', stepId: 'first' },
      { kind: 'debit', stepId: 'second' },
      { kind: 'credit', stepId: 'second' },
      { kind: 'credit', stepId: 'first' },
    ]);
  });

  it('has the faults that each balance is solved on; all lines together are the rig as drawn', () => {
    const snapshot = play(mended.slice(0, -1));
    const stages = account(lesson, snapshot).map(({ stage }) => stage);
    expect(stages.map(({ faults }) => faults.length)).toEqual([0, 1, 2, 1]);
    expect(stages.at(-1)).toEqual(stageNow(lesson, snapshot));
  });
});

it('names each station by how far it has come', () => {
  expect(
    stations(play([...through('steeper'), { type: 'step.next' }])).map((each) => [
      each.phase,
      each.reached,
      each.current,
    ]),
  ).toEqual([
    ['settled', true, false],
    ['brief', true, true],
    ['mending', false, false],
  ]);
});

it('gives a reason for everything that cannot be done, in every phase on the way', () => {
  for (let length = 0; length <= TO_MENDING.length; length++) {
    const snapshot = play(TO_MENDING.slice(0, length));
    for (const event of EVERY_EVENT) {
      const answer = possible(snapshot, event);
      if (!answer.possible) expect(has(answer.reason)).toBe(true);
      expect(answer.possible).toBe(snapshot.can(event));
    }
  }
});

it('asks for a number where a number is wanted, and for a card where cards are', () => {
  const first = play([{ type: 'step.begin' }]);
  expect(possible(first, { type: 'prediction.lock' })).toEqual({
    possible: false,
    reason: 'lesson.reason.predict-first',
  });
  const answers: LessonEvent[] = ['curve', 'point'].map((question) => ({
    type: 'entry.answer',
    question,
    option: 'a',
  }));
  const cards = play(
    [{ type: 'step.begin' }, ...answers, { type: 'step.next' }, { type: 'step.begin' }],
    wideLesson(),
  );
  expect(possible(cards, { type: 'prediction.lock' })).toEqual({
    possible: false,
    reason: 'lesson.reason.choose-first',
  });
});
