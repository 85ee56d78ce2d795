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

/** Ranges of the diagram meet at r/D 0.55 and 0.7; each pair is blended over this band. */
const KINKED_BELOW = [0.53, 0.57] as const;
const GENTLE_ABOVE = [0.68, 0.72] as const;

/**
 * A bend as its local loss coefficient against Re and relative roughness; angle in degrees, 0 to 180.
 *
 * Reynolds factor kRe, never below 1: published for Re 4e4 to 3e5, held below 1e4. Roughness factor kD:
 * rough over smooth friction factor, 1 to 2 (for kinked bends 1 to 1.5, from roughness alone); the source
 * steps at Re 4e4, the ratio is used at all Re instead.
 *
 * Taken as they stand the ranges let rough duct lose a third less at r/D 0.53 than at 0.57. A tighter
 * bend is never better here: where the tighter range starts lower, the gentler one's last value is held
 * until it is passed (model assumption).
 */
export function bendOf(
  angle_deg: number,
  radiusRatio: number,
  friction: ByReynolds = frictionFactor,
): ByReynolds {
  if (angle_deg <= 0) return () => 0;
  const angle = angleFactor(Math.min(angle_deg, 180));
  const radius = radiusFactor(radiusRatio);
  const lastTight = radiusFactor(Math.max(radiusRatio, KINKED_BELOW[1]));
  const lastGentle = radiusFactor(Math.max(radiusRatio, GENTLE_ABOVE[1]));
  const tightShare = between(...KINKED_BELOW, radiusRatio);
  const gentleShare = between(...GENTLE_ABOVE, radiusRatio);
  return (reynolds, relativeRoughness) => {
    const re = Math.max(reynolds, 1e4);
    const rough = Math.min(2, Math.max(1, friction(re, relativeRoughness) / friction(re, 0)));
    const gentle = Math.max(1, 11.5 * re ** -0.19) * rough;
    if (gentleShare === 1) return angle * radius * gentle;
    const tight = Math.max(1, 5.45 * re ** -0.131) * rough;
    const kinked = (1 + 4400 / re) * Math.min(1.5, 1 + 500 * relativeRoughness);
    const below =
      kinked >= tight
        ? radius * mix(kinked, tight, tightShare)
        : Math.max(radius * kinked, lastTight * tight);
    const whole =
      tight >= gentle ? mix(below, radius * gentle, gentleShare) : Math.max(below, lastGentle * gentle);
    return angle * whole;
  };
}

/** Local loss coefficient of one bend. Angle in degrees, 0 to 180. */
export function bendLoss(
  angle_deg: number,
  radiusRatio: number,
  reynolds: number,
  relativeRoughness: number,
): number {
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
