/**
 * What surrounds the flow itself: traverse depths, noise laws, hanging curves. Where the engine has no law
 * of its own (sound power of a bend), it is worked here from the published constants.
 */
import { fanNoise, flattenedArea, grilleNoise, powerProfile, sagShape, traverseMean } from '#physics';
import type { Check } from '../types.ts';
import { SAME_FORMULA } from '../engine.ts';

const RULES = ['log-linear', 'log-Tchebycheff'] as const;
const traverses = ([6, 8] as const).flatMap((points) =>
  RULES.map((method): Check => {
    const name = `${points} points, ${method}`;
    return {
      id: `traverse-${name.replace(/\W+/g, '-').toLowerCase()}`,
      source: 'iso-5802',
      where: `tables 2 and 3, ${name}`,
      mark: 'published',
      quantity: 'mean over greatest speed of a one-seventh power profile',
      unit: '',
      // Averaged over the area: 2 n^2 / ((n + 1)(2 n + 1)), n = 7.
      published: 98 / 120,
      ours: () => traverseMean(method, points, powerProfile),
      allowed: { kind: 'relative', by: 0.005, why: 'a few points for a whole profile' },
    };
  }),
);

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
