/**
 * The lesson's one machine. States are phases; the step, the answers and the repairs are context, and
 * context is JSON. Every move to another step, and the end of every reveal, goes through `arriving`,
 * which lands in the furthest phase that step has reached; nothing therefore skips a phase or undoes one.
 */
import { assign, setup } from 'xstate';
import { START, type Journey, type Phase, type Prediction } from './journey.ts';
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
    hasReached: ({ context }, phase: Phase) => rules.furthestPhase(here(context), context) === phase,
    isLegalPrediction: ({ context }, prediction: Prediction) => rules.mayPredict(here(context), prediction),
    hasPrediction: ({ context }) => rules.recordOf(context, here(context).id).prediction !== undefined,
    isOffered: ({ context }, { part, option }: { part: 'observe' | 'explain'; option: string }) => {
      const step = here(context);
      return step.kind === 'fault' && step[part].options.includes(option);
    },
    mayGoOn: ({ context }) => rules.mayGoOn(context.lesson, context),
    mayGoBack: ({ context }) => rules.mayVisit(context, context.stepIndex - 1),
    mayVisit: ({ context }, index: number) => rules.mayVisit(context, index),
    mayRepair: ({ context }, stepId: string) => rules.mayRepair(context.lesson, context, stepId),
    isRepaired: ({ context }, stepId: string) => context.repairs.includes(stepId),
    allRepaired: ({ context }) => rules.allRepaired(context.lesson, context),
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
    observe: assign(({ context }, option: string) => {
      const { observations } = rules.recordOf(context, here(context).id);
      return rules.withRecord(context.lesson, context, { observations: [...observations, option] });
    }),
    explain: assign(({ context }, option: string) => {
      const { explanations } = rules.recordOf(context, here(context).id);
      return rules.withRecord(context.lesson, context, { explanations: [...explanations, option] });
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

const arrivals = (
  ['brief', 'predict', 'locked', 'observe', 'explain', 'settled', 'mending', 'finished'] as const
).map((phase) => ({ guard: { type: 'hasReached' as const, params: phase }, target: phase }));

const replay = { 'phase.replay': 'reveal' } as const;

export const lessonMachine = lessonSetup.createMachine({
  id: 'lesson',
  context: ({ input }) => ({ lesson: input.lesson, ...START }),
  initial: 'brief',
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
    'lesson.restart': { target: '.brief', actions: 'restart' },
  },
  states: {
    arriving: { always: arrivals },
    brief: { on: { 'step.begin': { target: 'predict', actions: 'begin' } } },
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
    observe: {
      on: {
        ...replay,
        'observation.answer': {
          guard: { type: 'isOffered', params: ({ event }) => ({ part: 'observe', option: event.option }) },
          target: 'arriving',
          actions: { type: 'observe', params: ({ event }) => event.option },
        },
      },
    },
    explain: {
      on: {
        ...replay,
        'explanation.answer': {
          guard: { type: 'isOffered', params: ({ event }) => ({ part: 'explain', option: event.option }) },
          target: 'arriving',
          actions: { type: 'explain', params: ({ event }) => event.option },
        },
      },
    },
    settled: {
      on: {
        ...replay,
        'step.next': {
          guard: 'mayGoOn',
          target: 'arriving',
          actions: { type: 'goTo', params: ({ context }) => context.stepIndex + 1 },
        },
      },
    },
    mending: {
      on: {
        'repair.make': {
          guard: { type: 'mayRepair', params: ({ event }) => event.stepId },
          actions: { type: 'repair', params: ({ event }) => event.stepId },
        },
        'repair.undo': {
          guard: { type: 'isRepaired', params: ({ event }) => event.stepId },
          actions: { type: 'undo', params: ({ event }) => event.stepId },
        },
        'lesson.finish': { guard: 'allRepaired', target: 'finished', actions: 'finish' },
      },
    },
    finished: {},
  },
});
