/** The meters' door within the engine. */
export { bagFlow_L_s, FACE, figuresOf, INSERTION_LOSS, INSTRUMENTS } from './meters.ts';
export { hoodCorrection_L_s, solveWithHood, withHood } from './insertion.ts';
export {
  powerProfile,
  powerProfileMean,
  TRAVERSE_DEPTHS,
  traverseMean,
  type TraverseMethod,
} from './traverse.ts';
export type {
  Bench,
  InstrumentDefinition,
  InstrumentFigures,
  InstrumentKind,
  Reading,
} from './instrument.ts';
