/** Whether a thing can be done now, and if not, why not: no control is off without a reason beside it. */
import type { MessageKey } from '#i18n';
import type { LessonEvent } from './machine.ts';
import {
  allRepaired,
  mayAnswerEntry,
  mayFinish,
  mayGoOn,
  mayLeap,
  mayPredict,
  mayRepair,
  mayReplay,
  mayUndo,
  mayVisit,
  questionOf,
  stepAt,
  type Part,
} from './rules.ts';
import type { Phase } from './journey.ts';
import { guessesFlow, isTaught } from './schema.ts';
import { currentRecord, phase, type LessonView } from './view.ts';

export type Possibility =
  { readonly possible: true } | { readonly possible: false; readonly reason: MessageKey };

const YES: Possibility = { possible: true };
const no = (reason: MessageKey): Possibility => ({ possible: false, reason });
const when = (condition: boolean, reason: MessageKey): Possibility => (condition ? YES : no(reason));

/** What must be done first, by the phase the step is in. */
const FIRST: Readonly<Record<Phase, MessageKey>> = {
  brief: 'lesson.reason.read-brief',
  asking: 'lesson.reason.entry-first',
  predict: 'lesson.reason.lock-first',
  locked: 'lesson.reason.watch-first',
  reveal: 'lesson.reason.still-moving',
  observe: 'lesson.reason.look-first',
  explain: 'lesson.reason.explain-first',
  again: 'lesson.reason.again-first',
  settled: 'lesson.reason.settled',
  mending: 'lesson.reason.mending',
  finished: 'lesson.reason.finished',
};

const PARTS = {
  'observation.answer': 'observe',
  'explanation.answer': 'explain',
  'again.answer': 'again',
} as const satisfies Record<string, Part>;

/** Whether the machine would take this event now. Agrees with `snapshot.can(event)`; a test holds them together. */
export function possible(snapshot: LessonView, event: LessonEvent): Possibility {
  const { context } = snapshot;
  const now = phase(snapshot);
  const here = stepAt(context.lesson, context.stepIndex);
  const within = (...phases: Phase[]) => when(phases.includes(now), FIRST[now]);
  const both = (place: Possibility, then: () => Possibility) => (place.possible ? then() : place);
  switch (event.type) {
    case 'step.begin':
      return within('brief');
    case 'prediction.set':
      return both(within('predict'), () => when(mayPredict(here, event), 'lesson.reason.off-scale'));
    case 'prediction.lock':
      return both(within('predict'), () =>
        when(
          currentRecord(snapshot).prediction !== undefined,
          isTaught(here) && guessesFlow(here.predict)
            ? 'lesson.reason.predict-first'
            : 'lesson.reason.choose-first',
        ),
      );
    case 'reveal.play':
      return within('locked');
    case 'reveal.end':
      return within('reveal');
    case 'phase.replay':
      return both(within('observe', 'explain', 'again', 'settled'), () =>
        when(mayReplay(here), 'lesson.reason.nothing-moved'),
      );
    case 'observation.answer':
    case 'explanation.answer':
    case 'again.answer': {
      const part = PARTS[event.type];
      return both(within(part), () =>
        when(questionOf(here, part)?.options.includes(event.option) ?? false, 'lesson.reason.not-offered'),
      );
    }
    case 'entry.answer':
      return both(within('asking'), () =>
        when(mayAnswerEntry(here, currentRecord(snapshot), event), 'lesson.reason.not-offered'),
      );
    case 'step.leap':
      return both(within('settled'), () =>
        when(mayLeap(here, currentRecord(snapshot)), 'lesson.reason.not-all-right'),
      );
    case 'step.next':
      // The entry check may be passed by.
      if (here.kind === 'entry') return YES;
      return both(within('settled', 'mending'), () => {
        const last = context.stepIndex === context.lesson.steps.length - 1;
        if (last) return no('lesson.reason.last-step');
        return when(mayGoOn(context.lesson, context), 'lesson.reason.mend-first');
      });
    case 'step.back':
      return when(mayVisit(context, context.stepIndex - 1), 'lesson.reason.first-step');
    case 'step.visit':
      return when(mayVisit(context, event.index), 'lesson.reason.not-reached');
    case 'repair.make':
      return both(within('mending'), () =>
        when(mayRepair(context.lesson, context, event.stepId), 'lesson.reason.already-mended'),
      );
    case 'repair.undo':
      return both(within('mending'), () =>
        when(
          mayUndo(context.lesson, context, event.stepId),
          context.repairs.includes(event.stepId) ? 'lesson.reason.gone-on' : 'lesson.reason.not-mended',
        ),
      );
    case 'lesson.finish':
      return both(within('settled', 'mending'), () => {
        if (here.kind === 'mend' && !allRepaired(context.lesson, here, context))
          return no('lesson.reason.mend-first');
        return when(mayFinish(context.lesson, context), 'lesson.reason.more-steps');
      });
    case 'lesson.restart':
      return YES;
  }
}
