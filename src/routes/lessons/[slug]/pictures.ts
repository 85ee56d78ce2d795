/** The pictures of a lesson by name, and the one a class is shown in each phase until another is called up. */
import type { Phase } from '#lesson';

export type Picture = 'scene' | 'crossing' | 'ledger' | 'walk';

export const usualPicture: Readonly<Record<Phase, Picture>> = {
  brief: 'scene',
  asking: 'scene',
  predict: 'scene',
  locked: 'scene',
  reveal: 'scene',
  // What the system curve did is asked of the chart it is drawn in.
  observe: 'crossing',
  explain: 'scene',
  again: 'scene',
  settled: 'ledger',
  mending: 'scene',
  finished: 'ledger',
};
