/**
 * What surrounds the flow itself: traverse depths, noise laws, hanging curves. Where the engine has no law
 * of its own (depths, sound power of a bend), the law is worked here from the published constants.
 */
import { fanNoise, flattenedArea, grilleNoise, sagShape } from '#physics';
import type { Check } from '../types.ts';
import { SAME_FORMULA } from '../engine.ts';

/** Depths from the wall as a share of the bore. */
const DEPTHS = {
  '6 points, log-linear': [0.032, 0.135, 0.321, 0.679, 0.865, 0.968],
  '6 points, log-Tchebycheff': [0.032, 0.137, 0.312, 0.688, 0.863, 0.968],
  '8 points, log-linear': [0.021, 0.117, 0.184, 0.345, 0.655, 0.816, 0.883, 0.979],
  '8 points, log-Tchebycheff': [0.024, 0.1, 0.194, 0.334, 0.666, 0.806, 0.9, 0.976],
} as const;

/** Mean of a one-seventh power profile read at those depths, over its greatest speed. */
const meanAt = (depths: readonly number[]) =>
  depths.reduce((sum, depth) => sum + (2 * Math.min(depth, 1 - depth)) ** (1 / 7), 0) / depths.length;
/** The same profile averaged over the area: 2 n^2 / ((n + 1)(2 n + 1)), n = 7. */
const TRUE_MEAN = 98 / 120;

const traverses = Object.entries(DEPTHS).map(([name, depths]): Check => ({
  id: `traverse-${name.replace(/\W+/g, '-').toLowerCase()}`,
  source: 'iso-5802',
  where: `tables 2 and 3, ${name}`,
  mark: 'published',
  quantity: 'mean over greatest speed of a one-seventh power profile',
  unit: '',
  published: TRUE_MEAN,
  ours: () => meanAt(depths),
  allowed: { kind: 'relative', by: 0.005, why: 'a few points for a whole profile' },
}));

/** dB in the band-free form K + 10 log A + 60 log V, for a bend with a radius (K 0). */
const bendNoise = (bore_m: number, velocity: number) =>
  10 * Math.log10((Math.PI / 4) * bore_m ** 2) + 60 * Math.log10(velocity);

export const aroundChecks: readonly Check[] = [
  ...traverses,
  {
    id: 'noise-fan-speed',
    source: 'fan-noise',
    where: '50 log of the speed ratio',
    mark: 'memory',
    quantity: 'change in fan noise at 80 % speed',
    unit: 'dB',
    published: -4.85,
    ours: () => fanNoise(0.8)!.change_dB,
    allowed: { kind: 'absolute', by: 0.006, why: SAME_FORMULA },
  },
  {
    id: 'noise-doubling',
    source: 'flow-noise',
    where: 'sixth power of speed: 18 dB for each doubling',
    mark: 'published',
    quantity: 'change in noise at a grille at twice the flow',
    unit: 'dB',
    published: 18,
    ours: () => grilleNoise(2)!.change_dB,
    allowed: { kind: 'absolute', by: 0.5, why: 'stated in whole decibels' },
  },
  {
    id: 'noise-bend',
    source: 'cibse-b',
    where: 'bend with a radius, 150 mm at 5 m/s',
    mark: 'computed independently',
    quantity: 'sound power before the band term',
    unit: 'dB',
    published: 24.41,
    ours: () => bendNoise(0.15, 5),
    allowed: { kind: 'absolute', by: 0.006, why: SAME_FORMULA },
  },
  {
    id: 'hanging-length',
    source: 'geometry',
    where: 'catenary with a sag of a tenth of its span',
    mark: 'computed independently',
    quantity: 'extra length over the span',
    unit: '%',
    published: 2.619,
    ours: () => 100 * (sagShape(0.1).lengthRatio - 1),
    allowed: { kind: 'relative', by: 0.01, why: 'ours hangs as a parabola' },
  },
  {
    id: 'hanging-turn',
    source: 'geometry',
    where: 'sag at the limit of half an inch a foot, 41.7 mm a metre',
    mark: 'computed independently',
    quantity: 'turn within one span',
    unit: '°',
    published: 18.94,
    ours: () => sagShape(0.0417).turn_deg,
    allowed: { kind: 'absolute', by: 0.02, why: SAME_FORMULA },
  },
  {
    id: 'flattened-ellipse',
    source: 'geometry',
    where: 'ellipse of the same perimeter, half as high',
    mark: 'computed independently',
    quantity: 'open share of a duct pressed to half its height',
    unit: '',
    published: 0.6966,
    ours: () => flattenedArea(0.5),
    allowed: { kind: 'relative', by: 0.08, why: 'ours takes a flat oval, the gentler of the two shapes' },
  },
];
