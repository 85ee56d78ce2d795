/** Whether a thing can be done now, and if not, why not: no control is off without a reason beside it. */
import type { MessageKey } from '#i18n';
import type { LessonEvent } from './machine.ts';
import { allRepaired, mayGoOn, mayPredict, mayRepair, mayVisit, stepAt } from './rules.ts';
import type { Phase } from './journey.ts';
import { currentRecord, phase, type LessonView } from './view.ts';

export type Possibility =
  { readonly possible: true } | { readonly possible: false; readonly reason: MessageKey };

const YES: Possibility = { possible: true };
const no = (reason: MessageKey): Possibility => ({ possible: false, reason });
const when = (condition: boolean, reason: MessageKey): Possibility => (condition ? YES : no(reason));

/** What must be done first, by the phase the step is in. */
const FIRST: Readonly<Record<Phase, MessageKey>> = {
  brief: 'lesson.reason.read-brief',
  predict: 'lesson.reason.lock-first',
  locked: 'lesson.reason.watch-first',
  reveal: 'lesson.reason.still-moving',
  observe: 'lesson.reason.look-first',
  explain: 'lesson.reason.explain-first',
  settled: 'lesson.reason.settled',
  mending: 'lesson.reason.mending',
  finished: 'lesson.reason.finished',
};

/** Whether the machine would take this event now. Agrees with `snapshot.can(event)`; a test holds them together. */
export function possible(snapshot: LessonView, event: LessonEvent): Possibility {
  const { context } = snapshot;
  const now = phase(snapshot);
  const within = (...phases: Phase[]) => when(phases.includes(now), FIRST[now]);
  const both = (place: Possibility, then: () => Possibility) => (place.possible ? then() : place);
  switch (event.type) {
    case 'step.begin':
      return within('brief');
    case 'prediction.set':
      return both(within('predict'), () =>
        when(mayPredict(stepAt(context.lesson, context.stepIndex), event), 'lesson.reason.off-scale'),
      );
    case 'prediction.lock':
      return both(within('predict'), () =>
        when(currentRecord(snapshot).prediction !== undefined, 'lesson.reason.predict-first'),
      );
    case 'reveal.play':
      return within('locked');
    case 'reveal.end':
      return within('reveal');
    case 'phase.replay':
      return within('observe', 'explain', 'settled');
    case 'observation.answer':
    case 'explanation.answer': {
      const part = event.type === 'observation.answer' ? 'observe' : 'explain';
      const step = stepAt(context.lesson, context.stepIndex);
      return both(within(part), () =>
        when(step.kind === 'fault' && step[part].options.includes(event.option), 'lesson.reason.not-offered'),
      );
    }
    case 'step.next':
      return both(within('settled'), () => when(mayGoOn(context.lesson, context), 'lesson.reason.last-step'));
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
        when(context.repairs.includes(event.stepId), 'lesson.reason.not-mended'),
      );
    case 'lesson.finish':
      return both(within('mending'), () =>
        when(allRepaired(context.lesson, context), 'lesson.reason.mend-first'),
      );
    case 'lesson.restart':
      return YES;
  }
}
