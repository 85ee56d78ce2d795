/**
 * Loss of bends on the bore's velocity pressure, the friction of their own arc not included.
 * Idelchik's diagram 6-1 form, K = kD kRe A1 B1 (read in an open component library that cites the 2006
 * edition), with the steps between its ranges blended over a narrow band so that the loss is
 * continuous in every argument (model assumption).
 */
import { frictionFactor, type ByReynolds } from './friction.ts';

/** Angle factor A1: 0.9 sin(angle) to 70 degrees, 1 at 90, 0.7 + 0.35 angle/90 from 100. */
export function angleFactor(angle_deg: number): number {
  const sine = (deg: number) => 0.9 * Math.sin((deg * Math.PI) / 180);
  const wide = (deg: number) => 0.7 + (0.35 * deg) / 90;
  if (angle_deg <= 70) return sine(angle_deg);
  if (angle_deg <= 90) return mix(sine(70), 1, (angle_deg - 70) / 20);
  if (angle_deg <= 100) return mix(1, wide(100), (angle_deg - 90) / 10);
  return wide(angle_deg);
}

/** Radius factor B1 for centreline radius over bore; below 0.5 the duct is kinked and the value is held. */
export function radiusFactor(radiusRatio: number): number {
  const r = Math.max(radiusRatio, 0.5);
  return r <= 1 ? 0.21 * r ** -2.5 : 0.21 * r ** -0.5;
}

/** Where the ranges of the diagram meet: from kinked to tight round r/D 0.55, from tight to gentle round 0.7. */
const tightShare = (radiusRatio: number) => between(0.53, 0.57, radiusRatio);
const gentleShare = (radiusRatio: number) => between(0.68, 0.72, radiusRatio);

/** Reynolds factor kRe, never below 1. Published for Re 4e4 to 3e5; held below Re 1e4. */
export function reynoldsFactor(radiusRatio: number, reynolds: number): number {
  return reynoldsFactorOf(tightShare(radiusRatio), gentleShare(radiusRatio), Math.max(reynolds, 1e4));
}

/** Powers are worked out only for the ranges that count. */
function reynoldsFactorOf(tight: number, gentle: number, re: number): number {
  let factor = tight < 1 ? 1 + 4400 / re : 1;
  if (tight > 0 && gentle < 1) factor = mix(factor, Math.max(1, 5.45 * re ** -0.131), tight);
  if (gentle > 0) factor = mix(factor, Math.max(1, 11.5 * re ** -0.19), gentle);
  return factor;
}

/**
 * A bend as its local loss coefficient against Re and relative roughness; angle in degrees, 0 to 180.
 *
 * Roughness factor kD: rough over smooth friction factor, between 1 and 2 (up to 1.5 when kinked). The
 * source steps at Re 4e4; the ratio is used at all Re instead, which is continuous.
 */
export function bendOf(angle_deg: number, radiusRatio: number, friction: ByReynolds = frictionFactor): ByReynolds {
  if (angle_deg <= 0) return () => 0;
  const shape = angleFactor(Math.min(angle_deg, 180)) * radiusFactor(radiusRatio);
  const tight = tightShare(radiusRatio);
  const gentle = gentleShare(radiusRatio);
  return (reynolds, relativeRoughness) => {
    const re = Math.max(reynolds, 1e4);
    let rough = Math.min(1.5, 1 + 500 * relativeRoughness);
    if (tight > 0) {
      const ratio = friction(re, relativeRoughness) / friction(re, 0);
      rough = mix(rough, Math.min(2, Math.max(1, ratio)), tight);
    }
    return shape * reynoldsFactorOf(tight, gentle, re) * rough;
  };
}

/** Local loss coefficient of one bend. Angle in degrees, 0 to 180. */
export function bendLoss(angle_deg: number, radiusRatio: number, reynolds: number, relativeRoughness: number): number {
  return bendOf(angle_deg, radiusRatio)(reynolds, relativeRoughness);
}

/** Mitred elbow without vanes (Rennels and Hudson, read through the open `fluids` library): 1.2021 at 90 degrees. */
export function mitreLoss(angle_deg: number): number {
  const half = Math.sin((angle_deg * Math.PI) / 360);
  return 0.42 * half + 2.56 * half ** 3;
}

function mix(a: number, b: number, t: number): number {
  return a + (b - a) * t;
}

/** 0 below `low`, 1 above `high`, smooth between. */
function between(low: number, high: number, value: number): number {
  const t = Math.min(1, Math.max(0, (value - low) / (high - low)));
  return t * t * (3 - 2 * t);
}
