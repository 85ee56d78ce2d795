/** Necks, faces, elbows, mitres, bends and terminals against published tables and forms. */
import {
  bendLoss,
  elbowLoss,
  frictionFactor,
  mitreLoss,
  roundedNeck,
  thickNeck,
  thinNeck,
  type Terminal,
} from '#physics';
import type { SourceId } from '../sources.ts';
import type { Allowed, Check, CheckMark } from '../types.ts';
import { only, PRINTED, ROUND_AIR, runLoss, SAME_FORMULA, straight } from '../engine.ts';

type Line = readonly [id: string, where: string, quantity: string, published: number, ours: () => number];

/** Loss coefficients of one source, all with the same allowance. */
const group = (source: SourceId, mark: CheckMark, allowed: Allowed, lines: readonly Line[]): Check[] =>
  lines.map(([id, where, quantity, published, ours]) => ({
    id,
    source,
    where,
    mark,
    quantity,
    unit: '',
    published,
    ours,
    allowed,
  }));

const rounding = (by: number, why: string = PRINTED): Allowed => ({ kind: 'absolute', by, why });
const within = (by: number, why: string): Allowed => ({ kind: 'relative', by, why });

/** A smooth bend with the friction of its own arc, as the published methods state it. */
const wholeBend = (radius: number) =>
  bendLoss(90, radius, 5.636e4, 0) + (frictionFactor(5.636e4, 0.0006) * Math.PI * radius) / 2;

/** K of a terminal less that of a bare end, as the run is charged for it. */
function beyondExit(form: Terminal['form']): number {
  const loss = (which: Terminal['form']) =>
    runLoss(only({ id: 'end', kind: 'terminal', form: which, diameter_mm: 150 }), 90);
  return (loss(form) - loss('open-end')) / straight(150, 90, 0.09, ROUND_AIR).velocityPressure;
}

export const lossChecks: readonly Check[] = [
  ...group('idelchik', 'computed independently', rounding(0.0006, SAME_FORMULA), [
    [
      'neck-thick-75',
      'diagrams 4-12, 4-15, thick edge',
      'neck open 0.75, loss coefficient',
      0.701,
      () => thickNeck(0.75),
    ],
    [
      'neck-thick-50',
      'diagrams 4-12, 4-15, thick edge',
      'neck open 0.50, loss coefficient',
      3.736,
      () => thickNeck(0.5),
    ],
    [
      'neck-thick-36',
      'diagrams 4-12, 4-15, thick edge',
      'neck open 0.36, loss coefficient',
      10.08,
      () => thickNeck(0.36),
    ],
    [
      'neck-round-64',
      'diagram 4-13 from memory, edge radius 0.08',
      'neck open 0.64, loss coefficient',
      0.934,
      () => roundedNeck(0.64, 0.08),
    ],
  ]),
  ...group(
    'iso-5167',
    'computed independently',
    within(
      0.13,
      'a plate in fully developed flow against a general formula; three routes lie 4 to 12 % apart',
    ),
    [
      [
        'orifice-50',
        'bore ratio 0.50',
        'thin ring open 0.25, loss coefficient',
        29.585,
        () => thinNeck(0.25),
      ],
      [
        'orifice-60',
        'bore ratio 0.60',
        'thin ring open 0.36, loss coefficient',
        11.167,
        () => thinNeck(0.36),
      ],
      ['orifice-70', 'bore ratio 0.70', 'thin ring open 0.49, loss coefficient', 4.254, () => thinNeck(0.49)],
      [
        'orifice-75',
        'bore ratio 0.75',
        'thin ring open 0.56, loss coefficient',
        2.57,
        () => thinNeck(0.5625),
      ],
    ],
  ),
  ...group(
    'blevins',
    'published',
    within(0.16, 'screens with square edges against a single hole of the same share'),
    [
      ['face-30', 'free area 0.30', 'slotted face, loss coefficient', 17, () => thinNeck(0.3)],
      ['face-50', 'free area 0.50', 'slotted face, loss coefficient', 3.8, () => thinNeck(0.5)],
      ['face-70', 'free area 0.70', 'slotted face, loss coefficient', 1.1, () => thinNeck(0.7)],
    ],
  ),
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
  ...group('cory', 'published', rounding(0.06, 'stated to one figure'), [
    [
      'cap-low',
      'low weather cap',
      'loss beyond the bare end, in velocity pressures',
      1,
      () => beyondExit('rain-cap'),
    ],
    [
      'cap-high',
      'high weather cap',
      'loss beyond the bare end, in velocity pressures',
      0.2,
      () => beyondExit('high-rain-cap'),
    ],
  ]),
];
