/** The pictures of a lesson by name, and the one a class is shown in each phase until another is called up. */
import { guessesFlow, isTaught, type CheckName, type Phase, type Step } from '#lesson';

export type Picture = 'scene' | 'crossing' | 'ledger' | 'walk';

const USUAL: Readonly<Record<Phase, Picture>> = {
  brief: 'scene',
  // Beside a chart all answers are in sight at once, and all that can be mended; under the drawing they are not.
  asking: 'crossing',
  predict: 'scene',
  locked: 'scene',
  reveal: 'scene',
  // What the system curve did is asked of the chart it is drawn in.
  observe: 'crossing',
  explain: 'crossing',
  again: 'crossing',
  settled: 'ledger',
  mending: 'ledger',
  finished: 'ledger',
};

/** The picture a class is shown of a step; a prediction made on cards needs their room too. */
export const usualPicture = (step: Step, phase: Phase): Picture =>
  phase === 'predict' && isTaught(step) && step.predict && !guessesFlow(step.predict)
    ? 'crossing'
    : USUAL[phase];

/** What is read off a chart of efforts rather than the crossing. */
const OF_EFFORT: readonly CheckName[] = ['fan-power', 'litres-per-watt', 'clear-time'];

/** Whether what a step asks of the eye in a phase stands on the chart it hangs up. */
export const asksEffort = (step: Step, phase: Phase): boolean =>
  phase === 'observe' && isTaught(step) && OF_EFFORT.some((name) => name === step.observe?.check);
