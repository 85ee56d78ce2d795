/** The engine's one door. Nothing outside imports past it. */
export type * from './types.ts';
export { solve, systemCurve, fanCurveOf } from './solve.ts';
export { FAULTS, addFault, applyFaults, type FaultDefinition, type FaultMeasure } from './faults/index.ts';
export {
  COEFFICIENTS,
  CENTRAL,
  type Coefficient,
  type CoefficientName,
  type Coefficients,
} from './coefficients.ts';
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
