/**
 * Interpolation between fan points (Fritsch and Carlson 1980 with Fritsch and Butland weights, from
 * memory; the figures agree with SciPy's PCHIP to 1e-12 Pa) and runs that a fan crosses more than once.
 */
import { describe, expect, test } from 'vitest';
import { bracketedRoot, fanCurve, monotoneCubic } from '#physics';
import { expectPrinted, stock } from './support.ts';

describe('monotone cubic', () => {
  const curve = monotoneCubic([0, 20, 40, 60, 80, 100, 115, 128], [300, 285, 262, 228, 180, 118, 62, 0]);

  test('slopes at the points of the base case', () => {
    const slopes = [
      '-0.55',
      '-0.907895',
      '-1.371930',
      '-1.990244',
      '-2.705455',
      '-3.402333',
      '-4.200363',
      '-5.250183',
    ];
    slopes.forEach((printed, i) => expectPrinted(curve.slopes[i]!, printed, `point ${i}`));
  });

  test.each([
    [10, '293.39474'],
    [30, '274.66009'],
    [50, '246.54579'],
    [70, '205.78803'],
    [90, '150.74220'],
    [107.5, '91.49631'],
    [121.5, '32.70596'],
  ] as const)('between points, at %d L/s', (flow, printed) => expectPrinted(curve.value(flow), printed));
});

// The starter catalogue's invented fans; static pressure, so the fan's own velocity pressure is taken off.
describe('invented fans between their points', () => {
  test.each([
    ['mixed-150', 22.5, 288.402],
    ['mixed-150', 67.5, 237.8146],
    ['mixed-150', 97.5, 182.2878],
    ['mixed-150', 127.5, 94.4084],
    ['axial-150', 12.75, 60.7524],
    ['axial-150', 32, 41.2603],
    ['axial-150', 38.25, 41.535],
    ['axial-150', 63.75, 31.3014],
  ])('%s at %d L/s: %d Pa static', (name, flow, pressure) => {
    const curve = fanCurve(stock.fans[name]!, 1.2, 1, 0.15);
    expect(curve.totalPressure(flow / 1000) - curve.velocityPressure(flow / 1000)).toBeCloseTo(pressure, 3);
  });
});

test('an axial fan against 41 Pa + 0.0005 Q^2: 31.317, 39.463 (unstable) and 45.257 L/s', () => {
  const points = stock.fans['axial-150']!.points;
  const fan = monotoneCubic(
    points.map((p) => p.flow_L_s),
    points.map((p) => p.pressure_Pa),
  );
  const surplus = (flow: number) => fan.value(flow) - 41 - 0.0005 * flow ** 2;
  const roots: number[] = [];
  for (let i = 0; i < 240; i++) {
    const [left, right] = [(85 * i) / 240, (85 * (i + 1)) / 240];
    if (surplus(left) * surplus(right) < 0) roots.push(bracketedRoot(surplus, left, right, 1e-10));
  }
  expect(roots).toHaveLength(3);
  ['31.317', '39.463', '45.257'].forEach((printed, i) => expectPrinted(roots[i]!, printed));
  const slope = (flow: number) => (surplus(flow + 1e-4) - surplus(flow - 1e-4)) / 2e-4;
  ['-0.408', '0.150', '-0.112'].forEach((printed, i) => expectPrinted(slope(roots[i]!), printed, 'slope'));
});
