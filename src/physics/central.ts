/**
 * The central value of every coefficient of the engine that is not a law. What each one is, the range it may lie in
 * and where it comes from stand in `coefficients.ts`, which a reader of a lesson need not be sent.
 */
export const CENTRAL = {
  compression: 1,
  bend: 1,
  sagTurning: 1,
  crimpNeck: 1,
  systemEffect: 1,
  tieEdge: 0.08,
  relaxation: 0.15,
  loopTurns: 2,
  grilleEntry: 0.5,
  bareEntry: 1,
  makeUpDischarge: 0.6,
  openEnd: 1,
  wallCowl: 2.5,
  rainCap: 2,
  highRainCap: 1.2,
  louvre: 6.25,
  reducer: 1,
  fanBend: 0.8,
  outletBend: 0.25,
  flapOpening: 5,
  flapOpen: 0.6,
  stuckFlap: 1,
  gapDischarge: 0.6,
  wallLeakage: 1,
  crushedNeck: 1,
  dent: 1,
  screen: 1,
} as const;

export type CoefficientName = keyof typeof CENTRAL;
export type Coefficients = Readonly<Record<CoefficientName, number>>;
