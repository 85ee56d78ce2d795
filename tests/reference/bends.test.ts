/**
 * Smooth and flexible bends. Idelchik diagram 6-1 as read in an open component library that cites the
 * 2006 edition; other methods through the open `fluids` library. Values computed apart from this engine.
 */
import { describe, expect, test } from 'vitest';
import { angleFactor, bendLoss, frictionFactor, mitreLoss, radiusFactor } from '#physics';
import { expectPrinted, expectWithin, straight } from './support.ts';

const REYNOLDS = 5.636e4;

// r/D; A1 B1; times kRe; with the arc's friction at roughness ratio 0.0006; Rennels, Miller, Ito (friction in)
const SMOOTH = [
  [0.5, '1.188', '1.281', '1.298', [1.044, 1.24, 0.612]],
  [0.75, '0.4311', '0.6203', '0.6467', [0.5428, 0.617, 0.4135]],
  [1, '0.2100', '0.3022', '0.3374', [0.3733, 0.3953, 0.3244]],
  [1.5, '0.1715', '0.2467', '0.2996', [0.2636, 0.3004, 0.2502]],
  [2, '0.1485', '0.2137', '0.2842', [0.2366, 0.2657, 0.2256]],
  [3, '0.1212', '0.1744', '0.2802', [0.24, 0.2554, 0.2224]],
] as const;

describe('bends', () => {
  test.each(SMOOTH)('smooth, 90 degrees, r/D %d (Idelchik)', (radius, shape, local, total, others) => {
    expectPrinted(angleFactor(90) * radiusFactor(radius), shape, 'A1 B1');
    expectPrinted(bendLoss(90, radius, REYNOLDS, 0), local, 'with kRe');
    const whole =
      bendLoss(90, radius, REYNOLDS, 0) + (frictionFactor(REYNOLDS, 0.0006) * Math.PI * radius) / 2;
    expectPrinted(whole, total, 'with friction');
    // Methods lie within 20 % of one another from r/D 1 up, and farther apart below.
    const mean = (others[0] + others[1] + others[2]) / 3;
    if (radius >= 1) expectWithin(whole, mean, 0.2, 'mean of Rennels, Miller and Ito');
  });

  test.each([
    [0.5, '1.921', '37.0'],
    [0.75, '1.023', '19.7'],
    [1, '0.498', '9.6'],
    [1.5, '0.407', '7.8'],
    [2, '0.352', '6.8'],
  ] as const)('flexible, 150 mm at 100 L/s, r/D %d', (radius, coefficient, pressure) => {
    const { reynolds, velocityPressure } = straight(150, 100, 0.9);
    expectPrinted(bendLoss(90, radius, reynolds, 0.006), coefficient);
    expectPrinted(bendLoss(90, radius, reynolds, 0.006) * velocityPressure, pressure);
  });

  test.each([
    [15, '0.116'],
    [30, '0.224'],
    [45, '0.317'],
    [60, '0.389'],
    [90, '0.498'],
    [120, '0.582'],
    [150, '0.640'],
    [180, '0.698'],
  ] as const)('flexible, r/D 1, %d degrees', (angle, coefficient) =>
    expectPrinted(bendLoss(angle, 1, straight(150, 100, 0.9).reynolds, 0.006), coefficient),
  );

  // CD3-5 pleated metal, r/D 1.5 (ASHRAE tables as reprinted): the nearest published thing to a flexible bend.
  test.each([
    [100, 0.57, -20],
    [150, 0.43, -5],
    [200, 0.34, 11],
    [250, 0.28, 26],
  ])(
    'flexible at r/D 1.5, %d mm, lies %3$d %% from a pleated elbow at 4 to 8 m/s',
    (bore, pleated, percent) => {
      const at = (velocity: number) => bendLoss(90, 1.5, 66.4 * bore * velocity, 0.9 / bore) / pleated - 1;
      const middle = (at(4) + at(8)) / 2;
      expect(Math.abs(100 * middle - percent)).toBeLessThan(2);
    },
  );

  test.each([
    [45, '0.3042'],
    [60, '0.530'],
    [90, '1.2021'],
  ] as const)('mitre of %d degrees (Rennels and Hudson, closed form)', (angle, printed) => {
    expectPrinted(mitreLoss(angle), printed);
  });

  test('mitres lie within 15 % of the SMACNA list (from memory)', () => {
    for (const [angle, listed] of [
      [45, 0.34],
      [60, 0.55],
      [75, 0.81],
      [90, 1.2],
    ] as const) {
      expectWithin(mitreLoss(angle), listed, 0.15, `${angle} degrees`);
    }
  });

  test('the loss has no step anywhere the published ranges meet', () => {
    let before = bendLoss(90, 0.5, REYNOLDS, 0.006);
    for (let radius = 0.5005; radius < 1.2; radius += 0.0005) {
      const now = bendLoss(90, radius, REYNOLDS, 0.006);
      expect(Math.abs(now / before - 1), `r/D ${radius}`).toBeLessThan(0.03);
      before = now;
    }
    for (let angle = 1; angle <= 180; angle++) {
      expect(angleFactor(angle) - angleFactor(angle - 1), `${angle} degrees`).toBeLessThan(0.017);
      expect(angleFactor(angle), `${angle} degrees`).toBeGreaterThan(angleFactor(angle - 1));
    }
  });
});
