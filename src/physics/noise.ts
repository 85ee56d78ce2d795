/**
 * How noise changes between two states of a run, as two mechanisms that may go opposite ways: the fan, which
 * follows its speed and its trouble, and the rush of air at the grille, which follows the flow. Changes in dB
 * of sound power; the two are not added, because the run damps only one of them.
 */
import type { Coefficient } from './coefficients.ts';
import type { Solution } from './types.ts';

export const NOISE = {
  /** dB per tenfold speed at one relative duty. */
  fanSpeed: {
    value: 50,
    low: 50,
    high: 60,
    mark: 'memory',
    source:
      'fan sound law (AMCA, ASHRAE), 50; fifth to sixth power of tip speed in lecture notes on fan noise',
  },
  /** dB per tenfold rotor diameter. */
  fanSize: { value: 70, low: 70, high: 70, mark: 'memory', source: 'fan sound law (AMCA, ASHRAE)' },
  /** dB per tenfold density. */
  fanDensity: { value: 20, low: 20, high: 20, mark: 'memory', source: 'fan sound law (AMCA, ASHRAE)' },
  /** dB per tenfold flow through the same grille. */
  grilleFlow: {
    value: 60,
    low: 50,
    high: 60,
    mark: 'published',
    source:
      'CIBSE Guide B fitting noise, 60 log10 V; fifth to sixth power for grilles in lecture notes on flow noise',
  },
} as const satisfies Record<string, Coefficient>;

export interface NoiseChange {
  readonly change_dB: number;
  readonly low_dB: number;
  readonly high_dB: number;
}

function change({ value, low, high }: Coefficient, ratio: number): NoiseChange {
  const tens = Math.log10(ratio);
  const ends = [low * tens, high * tens] as const;
  return { change_dB: value * tens, low_dB: Math.min(...ends), high_dB: Math.max(...ends) };
}

/** Change in dB of a fan at one relative duty, by the ratios new over old of speed, size and density; null unless all are above 0. */
export function fanNoise(speedRatio: number, sizeRatio = 1, densityRatio = 1): NoiseChange | null {
  if (!(speedRatio > 0 && sizeRatio > 0 && densityRatio > 0)) return null;
  const speed = change(NOISE.fanSpeed, speedRatio);
  const rest = change(NOISE.fanSize, sizeRatio).change_dB + change(NOISE.fanDensity, densityRatio).change_dB;
  return { change_dB: speed.change_dB + rest, low_dB: speed.low_dB + rest, high_dB: speed.high_dB + rest };
}

/** Air rush at a grille, new over old flow; null unless the ratio is above 0: no air, no rush to compare. */
export function grilleNoise(flowRatio: number): NoiseChange | null {
  return flowRatio > 0 ? change(NOISE.grilleFlow, flowRatio) : null;
}

export interface NoiseChanges {
  readonly fan: NoiseChange | null;
  /**
   * `fan-works-harder`: the same speed at more pressure. The law above sees none of it; 80 tested bath fans got
   * three quarters louder on average from 25 to 62.5 Pa (published survey of fan labels).
   */
  readonly note: 'fan-works-harder' | null;
  /** New over old fan pressure. */
  readonly pressureRatio: number;
  readonly grille: NoiseChange | null;
}

/** Pressure must rise by this share before it is worth a note (model assumption). */
const HARDER = 0.05;

/** From one solved state of a rig to another with the same fan and grille. */
export function noiseChange(before: Solution, after: Solution): NoiseChanges {
  const speedRatio = after.fan.speed / before.fan.speed;
  const pressureRatio = before.fan.pressure_Pa > 0 ? after.fan.pressure_Pa / before.fan.pressure_Pa : 1;
  const sameSpeed = Math.abs(speedRatio - 1) < 1e-9;
  return {
    fan: fanNoise(speedRatio, 1, after.air.density_kg_m3 / before.air.density_kg_m3),
    note: sameSpeed && pressureRatio > 1 + HARDER ? 'fan-works-harder' : null,
    pressureRatio,
    grille: before.flow_L_s.room > 0 ? grilleNoise(after.flow_L_s.room / before.flow_L_s.room) : null,
  };
}
