/** The meters' door within the engine. */
export { METER_COEFFICIENTS, type MeterCoefficientName } from './coefficients.ts';
export { bagFlow_L_s, figuresOf, INSTRUMENTS } from './meters.ts';
export { errorOfMean, meter, standardOfReading, type Meter } from './meter.ts';
export { heldLoss, holdMeter } from './held.ts';
export { hoodCorrection_L_s, solveWithHood, withHood } from './insertion.ts';
export {
  powerProfile,
  powerProfileMean,
  powerProfileMeanSquare,
  speedOf,
  TRAVERSE_DEPTHS,
  traverseMean,
  traverseOf,
  type Traverse,
  type TraverseMethod,
  type TraversePoint,
} from './traverse.ts';
export { errorAt, standardAt } from './instrument.ts';
export type {
  Bench,
  InstrumentDefinition,
  InstrumentFigures,
  InstrumentKind,
  MeterErrors,
  ReadOptions,
  Reading,
} from './instrument.ts';
