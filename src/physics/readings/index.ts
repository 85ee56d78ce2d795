/** From readings back to causes: which faults could explain them, and which coefficients. */
export {
  explain,
  EXPLAINED,
  nextReadings,
  TOLD_APART,
  type Candidate,
  type ExplainOptions,
  type NextReading,
  type PossibleReading,
  type Ranking,
} from './explain.ts';
export { fromReadings, worstOf, type Fit, type FittedInput, type Stage, type StageResidual } from './fit.ts';
export { probed, type FlowAt, type Observation, type Probe } from './probes.ts';
