/**
 * Sagging duct. Geometry is exact; the losses are a model assumption (no direct measurement was found),
 * so their table, computed apart from this engine, checks the working and not nature.
 */
import { describe, expect, test } from 'vitest';
import { sagShape } from '#physics';
import { ductLoss, expectPrinted, expectWithin } from './support.ts';

// depth over span, extra length %, slope at the support, turn in a span, least radius over span
const GEOMETRY = [
  [0.02, '0.1066', '4.57', '9.15', '6.25'],
  [0.0417, '0.4618', '9.47', '18.94', '2.998'],
  [0.075, '1.480', '16.70', '33.40', '1.667'],
  [0.1, '2.606', '21.80', '43.60', '1.250'],
  [0.15, '5.712', '30.96', '61.93', '0.833'],
  [0.2, '9.823', '38.66', '77.32', '0.625'],
  [0.25, '14.78', '45.00', '90.00', '0.500'],
] as const;

// depth over span; friction; turning over supports of 2, 1 and 0.5 bores; total for 1
const LOSSES = [
  [0.02, 25.9, [2.5, 3.2, 4.1], 29.1],
  [0.0417, 26, [7.4, 9.3, 12], 35.3],
  [0.075, 26.3, [16.8, 21.1, 34.5], 47.3],
  [0.1, 26.6, [24.2, 30.2, 71], 56.8],
  [0.15, 27.4, [37.2, 51.8, 132], 79.2],
  [0.2, 28.4, [47.9, 92.7, 153], 121],
] as const;

/** Strap widths that spread the turn over 2, 1 and 0.5 bores of 150 mm: 0.5 D and the strap. */
const WIDTHS = [225, 75, 0];

function sagging(ratio: number, width_mm: number, fullLength_m = 6): number {
  const duct = {
    material: 'flexible',
    diameter_mm: 150,
    path_m: 6,
    fullLength_m,
    supports: { spacing_m: 1.2, width_mm },
  };
  return ductLoss(100, duct, undefined, [{ kind: 'sag', amount: ratio / 0.25 }]);
}

describe('sag', () => {
  test.each(GEOMETRY)('parabola of depth %d of its span', (ratio, extra, slope, turn, radius) => {
    const shape = sagShape(ratio);
    expectPrinted(100 * (shape.lengthRatio - 1), extra, 'extra length');
    expectPrinted(shape.turn_deg / 2, slope, 'slope');
    expectPrinted(shape.turn_deg, turn, 'turn');
    expectPrinted(shape.radiusOverSpan, radius, 'radius');
  });

  test('arc length agrees with a fine polyline', () => {
    const ratio = 0.2;
    let length = 0;
    const steps = 20000;
    const y = (x: number) => 4 * ratio * x * (1 - x);
    for (let i = 0; i < steps; i++) length += Math.hypot(1 / steps, y((i + 1) / steps) - y(i / steps));
    expectWithin(length, sagShape(ratio).lengthRatio, 1e-8);
  });

  test.each(LOSSES)(
    'taut, 150 mm, 6 m in five spans, 100 L/s, depth %d of the span',
    (ratio, friction, turning, total) => {
      turning.forEach((expected, i) => {
        const loss = sagging(ratio, WIDTHS[i]!) - friction;
        expectWithin(loss, expected, 0.03, `turning, strap ${WIDTHS[i]} mm`);
      });
      expectWithin(sagging(ratio, 75), total, 0.01, 'total');
    },
  );

  test('15 % more duct than the path: sag uses slack up, yet still costs more than straight slack', () => {
    const expected = [
      [0, 118.9],
      [0.0417, 125.9],
      [0.1, 135.7],
      [0.15, 140.1],
      [0.2, 156.4],
    ] as const;
    for (const [ratio, loss] of expected) expectWithin(sagging(ratio, 75, 6.9), loss, 0.01, `depth ${ratio}`);
    expect(sagging(0.2, 75, 6.9) / sagging(0, 75, 6.9)).toBeLessThan(1.35);
  });
});
