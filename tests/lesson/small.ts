/** A lesson of two faults and the mending, small enough to walk its whole graph; and the walking of it. */
import { createActor } from 'xstate';
import {
  lessonMachine,
  readLesson,
  snapshotOf,
  type Journey,
  type Lesson,
  type LessonEvent,
  type LessonSnapshot,
} from '#lesson';

const step = (id: string, observe: object) => ({
  id,
  kind: 'fault',
  fault: { kind: 'sag', at: 'out', amount: 0.5 },
  predict: { low_L_s: 0, high_L_s: 60, step_L_s: 0.5 },
  observe,
  explain: { options: ['turns', 'climb', 'metres'], right: 'turns' },
  chain: [
    { id: 'slack', piece: 'out' },
    { id: 'turns', piece: 'out' },
    { id: 'crossing', chart: 'crossing' },
  ],
});

/** A fresh copy, free to be spoilt. */
export const raw = () => ({
  format: 1,
  version: 3,
  slug: 'two-faults',
  number: 9,
  rig: 'upstairs-bathroom',
  minutes: 5,
  aims: ['predict'],
  terms: ['fan-curve'],
  cautions: ['power'],
  steps: [
    step('first', { check: 'system-curve', options: ['steeper', 'shifted', 'unchanged'], right: 'steeper' }),
    step('second', { check: 'fan-pressure', options: ['fell', 'rose', 'same'], right: 'rose' }),
    { id: 'mend', kind: 'mend' },
  ],
});

// A file is spoilt on purpose in ways its type forbids.
// eslint-disable-next-line @typescript-eslint/no-explicit-any
export type Spoilt = any;

export const FILE = 'lessons/09-two-faults/lesson.json';

export function smallLesson(): Lesson {
  const read = readLesson(raw(), FILE);
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  return read.lesson;
}

/** An entry check, a case asked by cards with a second question, a plain question, and no mending. */
export const rawWide = () => ({
  ...raw(),
  slug: 'two-cases',
  aims: ['predict', 'mend'],
  steps: [
    {
      id: 'entry',
      kind: 'entry',
      questions: [
        { id: 'curve', aim: 'predict', options: ['a', 'b', 'c'], right: 'a' },
        { id: 'point', aim: 'mend', options: ['a', 'b', 'c'], right: 'b' },
      ],
      skipTo: 'same',
    },
    {
      id: 'second',
      kind: 'case',
      role: 'compare',
      aim: 'predict',
      from: { faults: [] },
      to: { faults: [{ kind: 'sag', at: 'out', amount: 0.5 }] },
      predict: { check: 'outlet-flow', options: ['rose', 'fell', 'same'], right: 'fell' },
      observe: { check: 'fan-pressure', options: ['fell', 'rose', 'same'], right: 'rose' },
      explain: { options: ['turns', 'climb', 'metres'], right: 'turns' },
      again: { options: ['a', 'b', 'c'], right: 'c' },
    },
    {
      id: 'same',
      kind: 'case',
      role: 'transfer',
      rig: 'long-laundry-run',
      explain: { options: ['turns', 'climb', 'metres'], right: 'climb' },
    },
  ],
  returns: [
    { id: 'one', aim: 'predict', options: ['a', 'b', 'c'], right: 'a' },
    { id: 'two', aim: 'predict', options: ['a', 'b', 'c'], right: 'b' },
    { id: 'three', aim: 'mend', options: ['a', 'b', 'c'], right: 'c' },
  ],
});

/** A fault, its mending, and a question after it. */
export function mixedLesson(): Lesson {
  const [first, , mend] = raw().steps;
  const read = readLesson({ ...raw(), steps: [first, mend, rawWide().steps[2]] }, FILE);
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  return read.lesson;
}

export function wideLesson(): Lesson {
  const read = readLesson(rawWide(), FILE);
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  return read.lesson;
}

/** Right and wrong payloads of every event; events that the present phase does not take included. */
export const EVERY_EVENT: readonly LessonEvent[] = [
  { type: 'step.begin' },
  { type: 'prediction.set', flow_L_s: 30, sure: 2 },
  { type: 'prediction.set', flow_L_s: 999 },
  { type: 'prediction.lock' },
  { type: 'reveal.play' },
  { type: 'reveal.end' },
  ...['steeper', 'shifted', 'rose', 'fell', 'no-such-option'].map((option) => ({
    type: 'observation.answer' as const,
    option,
  })),
  ...['turns', 'climb', 'no-such-option'].map((option) => ({ type: 'explanation.answer' as const, option })),
  ...['a', 'c', 'no-such-option'].map((option) => ({ type: 'again.answer' as const, option })),
  ...['a', 'b', 'no-such-option'].flatMap((option) =>
    ['curve', 'point', 'no-such-question'].map((question) => ({
      type: 'entry.answer' as const,
      question,
      option,
    })),
  ),
  { type: 'prediction.set', option: 'fell', sure: 2 },
  { type: 'prediction.set', option: 'no-such-option' },
  { type: 'step.leap' },
  { type: 'phase.replay' },
  { type: 'step.next' },
  { type: 'step.back' },
  ...[0, 1, 2, 3, -1, 0.5].map((index) => ({ type: 'step.visit' as const, index })),
  ...['first', 'second', 'mend'].flatMap((stepId) => [
    { type: 'repair.make' as const, stepId },
    { type: 'repair.undo' as const, stepId },
  ]),
  { type: 'lesson.finish' },
  { type: 'lesson.restart' },
];

/** Those of the wide lesson, few enough that its graph stays small. */
export const WIDE_EVENTS: readonly LessonEvent[] = [
  { type: 'step.begin' },
  { type: 'entry.answer', question: 'curve', option: 'a' },
  ...['a', 'b'].map((option) => ({ type: 'entry.answer' as const, question: 'point', option })),
  { type: 'step.leap' },
  { type: 'prediction.set', flow_L_s: 30 },
  { type: 'prediction.set', option: 'fell' },
  { type: 'prediction.lock' },
  { type: 'reveal.play' },
  { type: 'reveal.end' },
  ...['fell', 'rose'].map((option) => ({ type: 'observation.answer' as const, option })),
  ...['turns', 'climb'].map((option) => ({ type: 'explanation.answer' as const, option })),
  ...['a', 'c'].map((option) => ({ type: 'again.answer' as const, option })),
  { type: 'phase.replay' },
  { type: 'step.next' },
  { type: 'step.back' },
  ...[0, 2].map((index) => ({ type: 'step.visit' as const, index })),
  { type: 'lesson.finish' },
  { type: 'lesson.restart' },
];

/** A step done rightly from its first word to its last. */
export function through(observation: string): LessonEvent[] {
  return [
    { type: 'step.begin' },
    { type: 'prediction.set', flow_L_s: 30 },
    { type: 'prediction.lock' },
    { type: 'reveal.play' },
    { type: 'reveal.end' },
    { type: 'observation.answer', option: observation },
    { type: 'explanation.answer', option: 'turns' },
  ];
}

export const TO_MENDING: readonly LessonEvent[] = [
  ...through('steeper'),
  { type: 'step.next' },
  ...through('rose'),
  { type: 'step.next' },
];

export function play(events: readonly LessonEvent[], lesson = smallLesson()): LessonSnapshot {
  const actor = createActor(lessonMachine, { input: { lesson } }).start();
  for (const event of events) actor.send(event);
  return actor.getSnapshot();
}

export function journeyOf(snapshot: LessonSnapshot): Journey {
  const { lesson: _, ...journey } = snapshot.context;
  return journey;
}

export function resumed(journey: Journey, lesson = smallLesson()) {
  return createActor(lessonMachine, { input: { lesson }, snapshot: snapshotOf(lesson, journey) }).start();
}
