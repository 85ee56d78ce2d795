/** Elbows, mitres and bends against published tables and forms, alone and close before a fan. */
import { bendEffectLeft, bendLoss, COEFFICIENTS, elbowLoss, frictionFactor, mitreLoss } from '#physics';
import type { Check } from '../types.ts';
import { group, rounding, within } from './group.ts';

/** A smooth bend with the friction of its own arc, as the published methods state it. */
const wholeBend = (radius: number) =>
  bendLoss(90, radius, 5.636e4, 0) + (frictionFactor(5.636e4, 0.0006) * Math.PI * radius) / 2;

/** A gored elbow of r/D 1 and 150 mm so many bores before the fan, with what it costs the fan. */
const elbowAtFan = (bores: number) =>
  elbowLoss('gored', 150, 90, 1) + COEFFICIENTS.fanBend.value * bendEffectLeft(0.15 * bores, 0.15);

export const bendChecks: readonly Check[] = [
  ...group('ashrae-2009', 'transcribed', rounding(0.006), [
    [
      'cd3-1-100',
      'CD3-1, die-stamped, r/D 1.5',
      'elbow 100 mm, 90°, loss coefficient',
      0.21,
      () => elbowLoss('pressed', 100, 90),
    ],
    [
      'cd3-1-150',
      'CD3-1, die-stamped, r/D 1.5',
      'elbow 150 mm, 90°, loss coefficient',
      0.14,
      () => elbowLoss('pressed', 150, 90),
    ],
    [
      'cd3-1-230',
      'CD3-1, die-stamped, r/D 1.5',
      'elbow 230 mm, 90°, loss coefficient',
      0.11,
      () => elbowLoss('pressed', 230, 90),
    ],
    [
      'cd3-9-75',
      'CD3-9, five gores, r/D 1.5',
      'elbow 75 mm, 90°, loss coefficient',
      0.51,
      () => elbowLoss('gored', 75, 90, 1.5),
    ],
    [
      'cd3-12-075',
      'CD3-12, three gores, r/D 0.75',
      'elbow 150 mm, 90°, loss coefficient',
      0.54,
      () => elbowLoss('gored', 150, 90, 0.75),
    ],
    [
      'cd3-12-100',
      'CD3-12, three gores, r/D 1',
      'elbow 150 mm, 90°, loss coefficient',
      0.42,
      () => elbowLoss('gored', 150, 90, 1),
    ],
    [
      'cd3-12-150',
      'CD3-12, three gores, r/D 1.5',
      'elbow 150 mm, 90°, loss coefficient',
      0.34,
      () => elbowLoss('gored', 150, 90, 1.5),
    ],
  ]),
  ...group('ashrae-2009', 'transcribed', within(0.25, 'other angles are taken in proportion to 90°'), [
    [
      'cd3-3-100',
      'CD3-3, die-stamped 45°',
      'elbow 100 mm, 45°, loss coefficient',
      0.13,
      () => elbowLoss('pressed', 100, 45),
    ],
    [
      'cd3-3-150',
      'CD3-3, die-stamped 45°',
      'elbow 150 mm, 45°, loss coefficient',
      0.08,
      () => elbowLoss('pressed', 150, 45),
    ],
  ]),
  ...group(
    'ashrae-2009',
    'transcribed',
    within(0.3, 'pleated metal is the nearest published thing to a bend in flexible duct'),
    [
      [
        'cd3-5-100',
        'CD3-5, pleated, r/D 1.5',
        'flexible bend 100 mm at 6 m/s, loss coefficient',
        0.57,
        () => bendLoss(90, 1.5, 66.4 * 100 * 6, 0.009),
      ],
      [
        'cd3-5-150',
        'CD3-5, pleated, r/D 1.5',
        'flexible bend 150 mm at 6 m/s, loss coefficient',
        0.43,
        () => bendLoss(90, 1.5, 66.4 * 150 * 6, 0.006),
      ],
      [
        'cd3-5-250',
        'CD3-5, pleated, r/D 1.5',
        'flexible bend 250 mm at 6 m/s, loss coefficient',
        0.28,
        () => bendLoss(90, 1.5, 66.4 * 250 * 6, 0.0036),
      ],
    ],
  ),
  ...group('rennels', 'published', rounding(0.00006), [
    ['mitre-45', 'mitre, closed form', 'mitre of 45°, loss coefficient', 0.3042, () => mitreLoss(45)],
    ['mitre-90', 'mitre, closed form', 'mitre of 90°, loss coefficient', 1.2021, () => mitreLoss(90)],
    ['mitre-150', 'mitre, closed form', 'mitre of 150°, loss coefficient', 2.7128, () => mitreLoss(150)],
  ]),
  ...(['rennels', 'miller', 'ito'] as const).flatMap((source, i) =>
    group(source, 'published', within(0.2, 'published methods lie 20 % either side of one another'), [
      [
        `bend-${source}`,
        'smooth bend, 90°, r/D 1, Re 56 360',
        'loss coefficient, friction included',
        [0.3733, 0.3953, 0.3244][i]!,
        () => wholeBend(1),
      ],
    ]),
  ),
  ...group(
    'ashrae-2021',
    'transcribed',
    within(0.4, 'a handbook elbow of four gores and a smooth rule for how its effect fades'),
    [
      [
        'fan-elbow-0',
        'table 7, ED7-2, r/D 1, on the fan',
        'elbow with its cost to the fan, loss coefficient',
        1.2,
        () => elbowAtFan(0),
      ],
      [
        'fan-elbow-2',
        'table 7, ED7-2, r/D 1, 2 bores off',
        'elbow with its cost to the fan, loss coefficient',
        0.67,
        () => elbowAtFan(2),
      ],
      [
        'fan-elbow-5',
        'table 7, ED7-2, r/D 1, 5 bores off',
        'elbow with its cost to the fan, loss coefficient',
        0.33,
        () => elbowAtFan(5),
      ],
    ],
  ),
];
