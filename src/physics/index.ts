/** The engine's one door. Nothing outside imports past it. */
export type * from './types.ts';
export { solve, systemCurve, fanCurveOf } from './solve.ts';
export { FAULTS, addFault, applyFaults, type FaultDefinition, type FaultMeasure } from './faults/index.ts';
export { CENTRAL, type CoefficientName, type Coefficients } from './central.ts';
export { COEFFICIENTS, type Coefficient } from './coefficients.ts';
export { ASSUMPTIONS, WARNINGS, type AssumptionCode, type WarningCode } from './notes.ts';
export { airState, airDensity, dynamicViscosity, saturationPressure, type AirState } from './air.ts';
export { colebrook, churchill, swameeJain, frictionFactor } from './friction.ts';
export { pressureDropCorrection, compressionOf } from './compression.ts';
export { bendLoss, mitreLoss, angleFactor, radiusFactor } from './bends.ts';
export { thinNeck, thickNeck, roundedNeck, flattenedArea, crimpSystemEffect } from './constriction.ts';
export { sagShape } from './sag.ts';
export { monotoneCubic } from './interpolate.ts';
export { bracketedRoot } from './root.ts';
export { fanCurve, type FanCurve } from './fan.ts';
export { elbowLoss } from './fittings/elbow.ts';
export { screenLoss } from './fittings/terminal.ts';
export { stuckFlapLoss } from './fittings/damper.ts';
export { bendEffectLeft } from './fittings/fan.ts';
export { suddenExpansion, suddenContraction, conicalContraction, conicalDiffuser } from './bore-changes.ts';
export { LEAK_CLASSES, SEAM_EXPONENT, hole, leakFlow, type LeakPath } from './leakage.ts';
// Chance and the likely band.
export { randomFrom, seedFor, words, type Random } from './random.ts';
export { drawer, moments, type Input } from './distribution.ts';
export {
  band,
  bands,
  DRAWS,
  type Band,
  type BandOptions,
  type Estimate,
  type Model,
  type Sensitivity,
  type Values,
} from './uncertainty.ts';
export {
  dropBands,
  FAN_PRESSURE,
  rigBands,
  uncertainInputs,
  type DropBands,
  type RigBands,
} from './rig-band.ts';
export { REFUSALS, type Refusal, type RefusalCode } from './refusal.ts';
export { MOST_FAULTS, solveSubsets, type FlowName, type SubsetOptions, type Subsets } from './subsets.ts';
export { fairShares, shapley, sharesOf, type FairShares, type Share } from './shares.ts';
export {
  bestOrder,
  LABOUR,
  OTHER_LABOUR,
  putRight,
  putRightOf,
  type Labour,
  type PutRight,
  type Repair,
  type RepairOptions,
} from './repairs.ts';
export { fanNoise, grilleNoise, NOISE, noiseChange, type NoiseChange, type NoiseChanges } from './noise.ts';
export {
  atSpeed,
  LOWEST_SPEED,
  speedForFlow,
  speedRange,
  speedWhere,
  withFan,
  withSpeed,
  type Answer,
  type AtSpeed,
  type SpeedOptions,
} from './speed.ts';
export {
  atSameFlow,
  atSameWatts,
  litresPerWatt,
  speedForWatts,
  wattsPerLitre,
  type Contender,
} from './watts.ts';
// What it does to room, roof and bill, and how it is judged.
export {
  absoluteHumidity,
  dewPoint,
  dewPointMagnus,
  humidityRatio,
  relativeHumidityOf,
  saturationHumidity,
  vapourPressure,
} from './psychrometrics.ts';
export {
  airChanges_per_h,
  clearTime_min,
  condensesOn,
  filmDryAt_min,
  humidityAfter,
  MOISTURE,
  roofWater,
  saturationTime_min,
  showerStory,
  timeConstant_min,
  type Moment,
  type RoofWater,
  type RoomAir,
  type Shower,
} from './moisture.ts';
export { HOUSEHOLD, type HouseholdName } from './household.ts';
export { escapedWater, escapes, type Escape, type EscapedWater } from './roof-water.ts';
export {
  CONSEQUENCE_LIMITS,
  consequences,
  WATCHED_MIN,
  type Assumed,
  type ConsequenceLimit,
  type ConsequenceOptions,
  type Consequences,
  type Living,
  type LivingName,
  type Tariffs,
} from './consequences.ts';
export { fanEnergy_kWh, heatCost, heatEnergy_kWh, heatRate_W, wattHoursToMove } from './energy.ts';
export {
  judge,
  VERDICT_REASONS,
  type Judgement,
  type RateMark,
  type Rule,
  type VerdictReason,
} from './verdict.ts';
export * from './instruments/index.ts';
export * from './readings/index.ts';
