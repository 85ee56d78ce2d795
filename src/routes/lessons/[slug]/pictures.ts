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

/** What an observation is read off. What is not named here is read off the crossing. */
const READ_OFF: Readonly<Partial<Record<CheckName, Picture>>> = {
  'which-piece': 'walk',
  'biggest-loss': 'walk',
  // A chart of efforts hangs where the ledger does.
  'fan-power': 'ledger',
  'litres-per-watt': 'ledger',
  'clear-time': 'ledger',
  // These are asked of the gap in the drawing and of the big number under it.
  'roof-leak': 'scene',
  'outlet-flow': 'scene',
  'share-lost': 'scene',
  'share-gained': 'scene',
};

/** The picture the words of a step are about in a phase, where they are about one. */
export function askedPicture(step: Step, phase: Phase): Picture | undefined {
  if (!isTaught(step)) return undefined;
  // A step with a chart of its own says what it shows before anything is asked of it.
  if (phase === 'brief') return step.chart && 'ledger';
  const { observe } = step;
  if (!observe || (phase !== 'observe' && phase !== 'explain')) return undefined;
  const read = observe.check && (READ_OFF[observe.check] ?? 'crossing');
  return read === 'ledger' && !step.chart ? 'crossing' : read;
}

/** Phases a picture that was called up stays through: what is watched is then asked about. */
const WATCHED: readonly Phase[] = ['locked', 'reveal', 'observe', 'explain', 'again'];
export const stretchOf = (phase: Phase): string => (WATCHED.includes(phase) ? 'watched' : phase);

/** The picture a class is shown of a step; a prediction made on cards needs their room too. */
export function usualPicture(step: Step, phase: Phase): Picture {
  if (phase === 'predict' && isTaught(step) && step.predict && !guessesFlow(step.predict)) return 'crossing';
  // Where nothing moves, the step's own chart is what is explained.
  const still = isTaught(step) && !step.predict && step.chart;
  if (still && (phase === 'brief' || phase === 'explain')) return 'ledger';
  const asked = phase === 'observe' ? askedPicture(step, phase) : undefined;
  return asked && asked !== 'scene' ? asked : USUAL[phase];
}
