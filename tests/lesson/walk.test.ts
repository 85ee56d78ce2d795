/** A random learner: legal and illegal events in any order. What must hold holds after every one. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { createActor } from 'xstate';
import {
  lessonMachine,
  loadProgress,
  phase,
  possible,
  saveProgress,
  type LessonEvent,
  type LessonSnapshot,
} from '#lesson';
import { broken } from './invariants.ts';
import { memory } from './memory.ts';
import { EVERY_EVENT, smallLesson, TO_MENDING, WIDE_EVENTS, wideLesson } from './small.ts';

const prediction = fc.record({
  type: fc.constant('prediction.set' as const),
  flow_L_s: fc.oneof(fc.double({ min: 0, max: 60, noNaN: true }), fc.double()),
  sure: fc.constantFrom(undefined, 1 as const, 2 as const, 3 as const),
});
const anyEvent: fc.Arbitrary<LessonEvent> = fc.oneof(
  fc.constantFrom(...EVERY_EVENT, ...WIDE_EVENTS),
  prediction,
);
describe.each([
  ['faults', smallLesson(), TO_MENDING],
  ['cases', wideLesson(), []],
] as const)('a random walk through %s', (_name, lesson, lead) => {
  /** Where a reveal would end: what the actor itself does with `reveal.end`. */
  function landing(snapshot: LessonSnapshot) {
    const actor = createActor(lessonMachine, { input: { lesson }, snapshot }).start();
    actor.send({ type: 'reveal.end' });
    return phase(actor.getSnapshot());
  }
  /** Some walks start deep, so that the mending is met as often as the first step. */
  const walk = fc.tuple(fc.nat(lead.length), fc.array(anyEvent, { maxLength: 60 }));

  it('keeps every promise, and a save at any moment comes back to the same step and phase', () => {
    fc.assert(
      fc.property(walk, ([start, events]) => {
        const actor = createActor(lessonMachine, { input: { lesson } }).start();
        lead.slice(0, start).forEach((event) => actor.send(event));
        for (const event of events) {
          const before = actor.getSnapshot();
          expect(possible(before, event).possible).toBe(before.can(event));
          actor.send(event);
          const after = actor.getSnapshot();
          expect(broken(lesson, after)).toEqual([]);
          if (event.type !== 'lesson.restart') {
            for (const [id, record] of Object.entries(before.context.records)) {
              if (record.lockedPrediction) {
                expect(after.context.records[id]?.lockedPrediction).toEqual(record.lockedPrediction);
              }
            }
          }
        }
        const last = actor.getSnapshot();
        const storage = memory();
        expect(saveProgress(storage, last)).toEqual({ saved: true });
        const loaded = loadProgress(storage, lesson);
        expect(loaded.kind).toBe('restored');
        if (loaded.kind !== 'restored') return;
        expect(loaded.snapshot.context).toEqual(last.context);
        expect(phase(loaded.snapshot)).toBe(phase(last) === 'reveal' ? landing(last) : phase(last));
      }),
      { numRuns: 300, seed: 20 },
    );
  });

  it('cannot be finished by pressing Next', () => {
    const first = lesson.steps[0]!.kind === 'entry' ? 1 : 0;
    fc.assert(
      fc.property(
        fc.array(fc.constantFrom<LessonEvent>({ type: 'step.next' }, { type: 'lesson.finish' })),
        (events) => {
          const actor = createActor(lessonMachine, { input: { lesson } }).start();
          events.forEach((event) => actor.send(event));
          expect(phase(actor.getSnapshot())).toBe('brief');
          // An entry check may be passed by; nothing else may.
          expect(actor.getSnapshot().context.furthest).toBeLessThanOrEqual(first);
        },
      ),
      { seed: 20 },
    );
  });
});
