/** Necks, faces, changes of bore and terminals against published tables and forms. */
import {
  conicalContraction,
  conicalDiffuser,
  roundedNeck,
  screenLoss,
  suddenContraction,
  suddenExpansion,
  thickNeck,
  thinNeck,
  type Terminal,
} from '#physics';
import type { Check } from '../types.ts';
import { only, ROUND_AIR, runLoss, SAME_FORMULA, straight } from '../engine.ts';
import { group, rounding, within } from './group.ts';

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
  ...group('borda', 'published', rounding(1e-9, 'the same law'), [
    [
      'step-2',
      'area doubled',
      'step up, loss coefficient on the larger bore',
      1,
      () => 4 * suddenExpansion(1 / 2),
    ],
    [
      'step-3',
      'area trebled',
      'step up, loss coefficient on the larger bore',
      4,
      () => 9 * suddenExpansion(1 / 3),
    ],
  ]),
  ...group(
    'rennels',
    'published',
    within(0.2, 'ours takes Idelchik’s form for a step; published methods differ by a fifth'),
    [
      [
        'step-down',
        'sharp step down to 0.4 of the bore',
        'loss coefficient on the smaller bore',
        0.5301,
        () => suddenContraction(0.16),
      ],
    ],
  ),
  ...group('rennels', 'computed independently', rounding(0.00006, SAME_FORMULA), [
    [
      'cone-in-30',
      'cone of 30°, 150 to 100 mm, friction 0.02',
      'loss coefficient on the smaller bore',
      0.0415,
      () => conicalContraction(30, 100 / 150, 0.02),
    ],
    [
      'cone-in-60',
      'cone of 60°, 150 to 125 mm, friction 0.02',
      'loss coefficient on the smaller bore',
      0.0487,
      () => conicalContraction(60, 125 / 150, 0.02),
    ],
    [
      'cone-out-14',
      'cone of 14°, 100 to 150 mm, friction 0.02',
      'loss coefficient on the smaller bore',
      0.0817,
      () => conicalDiffuser(14, 100 / 150, 0.02),
    ],
    [
      'cone-out-60',
      'cone of 60°, 100 to 150 mm, friction 0.02',
      'loss coefficient on the smaller bore',
      0.3731,
      () => conicalDiffuser(60, 100 / 150, 0.02),
    ],
  ]),
  ...group('idelchik', 'memory', rounding(0.006, SAME_FORMULA), [
    ['mesh-50', 'diagram 8-6, free area 0.5', 'wire mesh, loss coefficient', 1.65, () => screenLoss(0.5)],
    ['mesh-30', 'diagram 8-6, free area 0.3', 'wire mesh, loss coefficient', 6.354, () => screenLoss(0.3)],
  ]),
];
