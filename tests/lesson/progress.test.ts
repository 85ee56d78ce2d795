/** Saved progress: it comes back to the same place, and whatever cannot be trusted is set aside, not lost. */
import { describe, expect, it } from 'vitest';
import { createActor } from 'xstate';
import { has } from '#i18n';
import {
  forgetProgress,
  lessonMachine,
  loadProgress,
  phase,
  progressKey,
  saveProgress,
  type Journey,
  type LoadResult,
} from '#lesson';
import { memory } from './memory.ts';
import { journeyOf, play, smallLesson, through, TO_MENDING, type Spoilt } from './small.ts';

const lesson = smallLesson();
const KEY = progressKey(lesson.slug);

function restored(result: LoadResult) {
  if (result.kind !== 'restored') throw new Error(`${result.kind}: ${JSON.stringify(result)}`);
  return result.snapshot;
}

/** Saved after `events`, with the saved JSON changed by hand. */
function tampered(events: Parameters<typeof play>[0], change: (saved: Spoilt) => void) {
  const storage = memory();
  saveProgress(storage, play(events));
  const saved = JSON.parse(storage.items.get(KEY)!);
  change(saved);
  storage.items.set(KEY, JSON.stringify(saved));
  return storage;
}

describe('progress that can be read', () => {
  it('is fresh where nothing was saved', () => {
    expect(loadProgress(memory(), lesson)).toEqual({ kind: 'fresh' });
  });

  it('comes back to the same step and phase and goes on from there', () => {
    for (let length = 0; length <= TO_MENDING.length; length++) {
      const storage = memory();
      const before = play(TO_MENDING.slice(0, length));
      saveProgress(storage, before);
      const snapshot = restored(loadProgress(storage, lesson));
      expect(snapshot.context).toEqual(before.context);
      expect(phase(snapshot)).toBe(phase(before) === 'reveal' ? 'observe' : phase(before));
      const actor = createActor(lessonMachine, { input: { lesson }, snapshot }).start();
      TO_MENDING.slice(length).forEach((event) => actor.send(event));
      expect(phase(actor.getSnapshot())).toBe('mending');
    }
  });

  it('keeps repairs in their order', () => {
    const storage = memory();
    saveProgress(
      storage,
      play([
        ...TO_MENDING,
        { type: 'repair.make', stepId: 'second' },
        { type: 'repair.make', stepId: 'first' },
      ]),
    );
    expect(restored(loadProgress(storage, lesson)).context.repairs).toEqual(['second', 'first']);
  });

  it('does not store the lesson itself, and takes the lesson as it is now', () => {
    const storage = memory();
    saveProgress(storage, play(through('steeper')));
    expect(storage.items.get(KEY)).not.toContain('upstairs-bathroom');
    expect(restored(loadProgress(storage, lesson)).context.lesson).toBe(lesson);
  });

  it('can be forgotten', () => {
    const storage = memory();
    saveProgress(storage, play([]));
    forgetProgress(storage, lesson.slug);
    expect(storage.items.size).toBe(0);
  });
});

describe('progress that cannot be trusted', () => {
  const journey = (saved: Spoilt): Spoilt => saved.snapshot.journey;
  const first = (saved: Spoilt): Spoilt => journey(saved).records.first;
  const told = through('steeper').slice(0, 3);
  const cases: [string, ReturnType<typeof memory>, string][] = [
    ['another format', tampered(told, (saved) => (saved.format = 2)), 'other-version'],
    ['another lesson', tampered(told, (saved) => (saved.slug = 'else')), 'other-version'],
    ['no envelope', tampered(told, (saved) => delete saved.slug), 'unreadable'],
    ['a missing part', tampered(told, (saved) => delete journey(saved).repairs), 'unreadable'],
    ['an unknown key', tampered(told, (saved) => (journey(saved).score = 5)), 'unreadable'],
    ['a phase there is not', tampered(told, (saved) => (saved.snapshot.phase = 'arriving')), 'unreadable'],
    [
      'a flow that is text',
      tampered(told, (saved) => (first(saved).prediction.flow_L_s = '30')),
      'unreadable',
    ],
    [
      'a reveal with no locked prediction',
      tampered(through('steeper').slice(0, 4), (saved) => delete first(saved).lockedPrediction),
      'impossible',
    ],
    ['a reveal that never began', tampered(told, (saved) => (saved.snapshot.phase = 'reveal')), 'impossible'],
    [
      'a changed lock',
      tampered(told, (saved) => (first(saved).lockedPrediction.flow_L_s = 22)),
      'impossible',
    ],
    [
      'a prediction off the scale',
      tampered(told, (saved) => {
        first(saved).prediction.flow_L_s = 61;
        first(saved).lockedPrediction.flow_L_s = 61;
      }),
      'impossible',
    ],
    ['a later phase', tampered(told, (saved) => (saved.snapshot.phase = 'settled')), 'impossible'],
    [
      'an answer not on offer',
      tampered(told, (saved) => first(saved).observations.push('rose')),
      'impossible',
    ],
    [
      'an observation before the reveal',
      tampered(told, (saved) => first(saved).observations.push('shifted')),
      'impossible',
    ],
    [
      'an explanation without a right observation',
      tampered(through('shifted').slice(0, 6), (saved) => first(saved).explanations.push('climb')),
      'impossible',
    ],
    ['a step skipped', tampered(told, (saved) => (journey(saved).furthest = 1)), 'impossible'],
    ['a step beyond the furthest', tampered(told, (saved) => (journey(saved).stepIndex = 1)), 'impossible'],
    [
      'a step beyond the last',
      tampered(TO_MENDING, (saved) => (journey(saved).stepIndex = journey(saved).furthest = 3)),
      'impossible',
    ],
    [
      'records of a strange step',
      tampered(told, (saved) => (journey(saved).records.third = first(saved))),
      'impossible',
    ],
    [
      'records of a step not reached',
      tampered(told, (saved) => (journey(saved).records.second = first(saved))),
      'impossible',
    ],
    ['a repair too soon', tampered(told, (saved) => journey(saved).repairs.push('first')), 'impossible'],
    [
      'a fault mended twice',
      tampered(TO_MENDING, (saved) => journey(saved).repairs.push('first', 'first')),
      'impossible',
    ],
    ['finished unmended', tampered(TO_MENDING, (saved) => (journey(saved).finished = true)), 'impossible'],
  ];
  for (const text of ['', '{', 'null', '[]', '"hello"', '{"format":1}']) {
    const storage = memory();
    storage.items.set(KEY, text);
    cases.push([`the text ${JSON.stringify(text)}`, storage, 'unreadable']);
  }

  it.each(cases)('%s', (_name, storage, reason) => {
    const text = storage.items.get(KEY)!;
    const result = loadProgress(storage, lesson);
    expect(result).toEqual({
      kind: 'set-aside',
      reason: `lesson.progress.${reason}`,
      keptAs: `${KEY}.set-aside.1`,
    });
    expect(has(`lesson.progress.${reason}`)).toBe(true);
    expect(storage.items.get(`${KEY}.set-aside.1`)).toBe(text);
    expect(loadProgress(storage, lesson)).toEqual({ kind: 'fresh' });
  });

  it('keeps the ones set aside before', () => {
    const storage = memory();
    for (let i = 1; i <= 7; i++) {
      storage.items.set(KEY, `broken ${i}`);
      loadProgress(storage, lesson);
    }
    expect([...storage.items.values()]).toEqual(['broken 1', 'broken 2', 'broken 3', 'broken 4', 'broken 7']);
  });
});

describe('a storage that fails', () => {
  it('is reported, never thrown', () => {
    const snapshot = play([]);
    expect(saveProgress(memory(['setItem']), snapshot)).toEqual({
      saved: false,
      reason: 'lesson.progress.not-saved',
    });
    expect(loadProgress(memory(['getItem']), lesson)).toEqual({
      kind: 'fresh',
      reason: 'lesson.progress.no-storage',
    });
    expect(() => forgetProgress(memory(['removeItem']), lesson.slug)).not.toThrow();
  });

  it('leaves broken progress where it is when it cannot be moved', () => {
    const storage = memory(['setItem']);
    storage.items.set(KEY, 'broken');
    expect(loadProgress(storage, lesson)).toEqual({
      kind: 'set-aside',
      reason: 'lesson.progress.unreadable',
    });
    expect(storage.items.get(KEY)).toBe('broken');
  });
});

it('a journey holds nothing but plain JSON', () => {
  const journey: Journey = journeyOf(play(TO_MENDING));
  expect(JSON.parse(JSON.stringify(journey))).toEqual(journey);
});
