/**
 * The lesson's one machine. States are phases; the step, the answers and the repairs are context, and
 * context is JSON. Every move to another step, and the end of every reveal, goes through `arriving`,
 * which lands in the furthest phase that step has reached; nothing therefore skips a phase or undoes one.
 */
import { assign, setup } from 'xstate';
import { PHASES, START, type Journey, type Phase, type Prediction } from './journey.ts';
import * as rules from './rules.ts';
import type { Lesson } from './schema.ts';

export interface LessonContext extends Journey {
  readonly lesson: Lesson;
}

export type LessonEvent =
  | { type: 'step.begin' }
  | ({ type: 'prediction.set' } & Prediction)
  | { type: 'prediction.lock' }
  | { type: 'reveal.play' }
  | { type: 'reveal.end' }
  | { type: 'observation.answer'; option: string }
  | { type: 'explanation.answer'; option: string }
  | { type: 'again.answer'; option: string }
  | { type: 'entry.answer'; question: string; option: string }
  | { type: 'step.leap' }
  | { type: 'phase.replay' }
  | { type: 'step.next' }
  | { type: 'step.back' }
  | { type: 'step.visit'; index: number }
  | { type: 'repair.make'; stepId: string }
  | { type: 'repair.undo'; stepId: string }
  | { type: 'lesson.finish' }
  | { type: 'lesson.restart' };

const here = ({ lesson, stepIndex }: LessonContext) => rules.stepAt(lesson, stepIndex);

const lessonSetup = setup({
  types: {
    context: {} as LessonContext,
    events: {} as LessonEvent,
    input: {} as { lesson: Lesson },
  },
  guards: {
    hasReached: ({ context }, phase: Phase) =>
      rules.furthestPhase(context.lesson, here(context), context) === phase,
    isLegalPrediction: ({ context }, prediction: Prediction) => rules.mayPredict(here(context), prediction),
    hasPrediction: ({ context }) => rules.recordOf(context, here(context).id).prediction !== undefined,
    isOffered: ({ context }, { part, option }: { part: rules.Part; option: string }) =>
      rules.questionOf(here(context), part)?.options.includes(option) ?? false,
    isAsked: ({ context }, answer: { question: string; option: string }) =>
      rules.mayAnswerEntry(here(context), rules.recordOf(context, here(context).id), answer),
    mayLeap: ({ context }) => rules.mayLeap(here(context), rules.recordOf(context, here(context).id)),
    mayReplay: ({ context }) => rules.mayReplay(here(context)),
    mayGoOn: ({ context }) => rules.mayGoOn(context.lesson, context),
    mayGoBack: ({ context }) => rules.mayVisit(context, context.stepIndex - 1),
    mayVisit: ({ context }, index: number) => rules.mayVisit(context, index),
    mayRepair: ({ context }, stepId: string) => rules.mayRepair(context.lesson, context, stepId),
    mayUndo: ({ context }, stepId: string) => rules.mayUndo(context.lesson, context, stepId),
    mayFinish: ({ context }) => rules.mayFinish(context.lesson, context),
  },
  actions: {
    begin: assign(({ context }) => rules.withRecord(context.lesson, context, { begun: true })),
    predict: assign(({ context }, prediction: Prediction) => {
      const record = rules.recordOf(context, here(context).id);
      return rules.withRecord(context.lesson, context, rules.predicted(record, prediction));
    }),
    lock: assign(({ context }) => {
      const { prediction } = rules.recordOf(context, here(context).id);
      return rules.withRecord(
        context.lesson,
        context,
        prediction ? { lockedPrediction: { ...prediction } } : {},
      );
    }),
    reveal: assign(({ context }) => rules.withRecord(context.lesson, context, { revealed: true })),
    answer: assign(({ context }, { part, option }: { part: rules.Part; option: string }) => {
      const record = rules.recordOf(context, here(context).id);
      const key = ({ observe: 'observations', explain: 'explanations', again: 'again' } as const)[part];
      return rules.withRecord(context.lesson, context, {
        [key]: [...rules.answersTo(record, part), option],
      });
    }),
    answerEntry: assign(({ context }, { question, option }: { question: string; option: string }) => {
      const { entry } = rules.recordOf(context, here(context).id);
      return rules.withRecord(context.lesson, context, { entry: { ...entry, [question]: option } });
    }),
    leap: assign(({ context }) => {
      const step = here(context);
      return step.kind === 'entry' ? rules.moved(context, rules.leapTarget(context.lesson, step)) : {};
    }),
    goTo: assign(({ context }, index: number) => rules.moved(context, index)),
    repair: assign(({ context }, stepId: string) => ({ repairs: [...context.repairs, stepId] })),
    undo: assign(({ context }, stepId: string) => ({
      repairs: context.repairs.filter((id) => id !== stepId),
    })),
    finish: assign({ finished: true }),
    restart: assign(() => ({ ...START })),
  },
});

const arrivals = PHASES.filter((phase) => phase !== 'reveal').map((phase) => ({
  guard: { type: 'hasReached' as const, params: phase },
  target: phase,
}));

const replay = { 'phase.replay': { guard: 'mayReplay', target: 'reveal' } } as const;
const onward = {
  'step.next': {
    guard: 'mayGoOn',
    target: 'arriving',
    actions: { type: 'goTo', params: ({ context }: { context: LessonContext }) => context.stepIndex + 1 },
  },
  'lesson.finish': { guard: 'mayFinish', target: 'finished', actions: 'finish' },
} as const;

/** A card pressed in answer to the question of a part; the machine then lands where that leaves the step. */
function cards(part: rules.Part) {
  return {
    guard: {
      type: 'isOffered' as const,
      params: ({ event }: { event: { option: string } }) => ({ part, option: event.option }),
    },
    target: 'arriving',
    actions: {
      type: 'answer' as const,
      params: ({ event }: { event: { option: string } }) => ({ part, option: event.option }),
    },
  } as const;
}

export const lessonMachine = lessonSetup.createMachine({
  id: 'lesson',
  context: ({ input }) => ({ lesson: input.lesson, ...START }),
  // A lesson may open on a job, which has no brief of its own.
  initial: 'arriving',
  on: {
    'step.back': {
      guard: 'mayGoBack',
      target: '.arriving',
      actions: { type: 'goTo', params: ({ context }) => context.stepIndex - 1 },
    },
    'step.visit': {
      guard: { type: 'mayVisit', params: ({ event }) => event.index },
      target: '.arriving',
      actions: { type: 'goTo', params: ({ event }) => event.index },
    },
    'lesson.restart': { target: '.arriving', actions: 'restart' },
  },
  states: {
    arriving: { always: arrivals },
    brief: {
      on: { 'step.next': onward['step.next'], 'step.begin': { target: 'arriving', actions: 'begin' } },
    },
    asking: {
      on: {
        'step.next': onward['step.next'],
        'entry.answer': {
          guard: { type: 'isAsked', params: ({ event }) => event },
          target: 'arriving',
          actions: { type: 'answerEntry', params: ({ event }) => event },
        },
      },
    },
    predict: {
      on: {
        'prediction.set': {
          guard: { type: 'isLegalPrediction', params: ({ event }) => event },
          actions: { type: 'predict', params: ({ event }) => event },
        },
        'prediction.lock': { guard: 'hasPrediction', target: 'locked', actions: 'lock' },
      },
    },
    locked: { on: { 'reveal.play': { target: 'reveal', actions: 'reveal' } } },
    reveal: { on: { 'reveal.end': 'arriving' } },
    observe: { on: { ...replay, 'observation.answer': cards('observe') } },
    explain: { on: { ...replay, 'explanation.answer': cards('explain') } },
    again: { on: { ...replay, 'again.answer': cards('again') } },
    settled: {
      on: {
        ...replay,
        ...onward,
        'step.leap': { guard: 'mayLeap', target: 'arriving', actions: 'leap' },
      },
    },
    mending: {
      on: {
        ...onward,
        'repair.make': {
          guard: { type: 'mayRepair', params: ({ event }) => event.stepId },
          actions: { type: 'repair', params: ({ event }) => event.stepId },
        },
        'repair.undo': {
          guard: { type: 'mayUndo', params: ({ event }) => event.stepId },
          actions: { type: 'undo', params: ({ event }) => event.stepId },
        },
      },
    },
    finished: {},
  },
});
