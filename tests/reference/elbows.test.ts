/** Made elbows against the ASHRAE round-fitting tables in SI, as reprinted (2009 edition), not checked against the printed handbook. */
import { describe, expect, test } from 'vitest';
import { elbowLoss } from '#physics';
import { expectPrinted, expectWithin } from './support.ts';

describe('elbows', () => {
  test.each([
    [75, '0.30'],
    [100, '0.21'],
    [125, '0.16'],
    [150, '0.14'],
    [180, '0.12'],
    [200, '0.11'],
    [230, '0.11'],
    [250, '0.11'],
  ] as const)('CD3-1, die-stamped, r/D 1.5, %d mm', (bore, printed) =>
    expectPrinted(elbowLoss('pressed', bore, 90), printed),
  );

  test('CD3-1 at 200 mm is 0.11 in ASHRAE 2021 ch. 21 Example 8 (as transcribed)', () => {
    expectPrinted(elbowLoss('pressed', 200, 90), '0.11');
  });

  test.each([
    [0.75, '0.54'],
    [1, '0.42'],
    [1.5, '0.34'],
    [2, '0.33'],
  ] as const)('CD3-12, three gores, r/D %d', (radius, printed) => {
    for (const bore of [150, 200, 250])
      expectPrinted(elbowLoss('gored', bore, 90, radius), printed, `${bore} mm`);
  });

  test('CD3-9, five gores: a small three-gored elbow is not better than a five-gored one of its bore', () => {
    expectPrinted(elbowLoss('gored', 75, 90, 1.5), '0.51');
    for (const [bore, five] of [
      [75, 0.51],
      [150, 0.28],
      [230, 0.21],
    ] as const) {
      for (const radius of [0.75, 1, 1.2, 1.3, 1.5, 2]) {
        expect(elbowLoss('gored', bore, 90, radius), `${bore} mm, r/D ${radius}`).toBeGreaterThanOrEqual(
          five,
        );
      }
    }
  });

  test.each([75, 100, 125, 150])(
    'gored elbows lose less as the radius grows, with no step (%d mm)',
    (bore) => {
      let before = elbowLoss('gored', bore, 90, 0.75);
      for (let radius = 0.76; radius < 2.2; radius += 0.01) {
        const now = elbowLoss('gored', bore, 90, radius);
        expect(now, `r/D ${radius}`).toBeLessThanOrEqual(before);
        expect(before - now, `r/D ${radius}`).toBeLessThan(0.01);
        before = now;
      }
    },
  );

  test('an adjustable elbow lies between three gores at r/D 0.75 and at 1 (model assumption)', () => {
    expect(elbowLoss('adjustable', 150, 90)).toBeGreaterThan(0.42);
    expect(elbowLoss('adjustable', 150, 90)).toBeLessThan(0.54);
  });

  test.each([
    [75, 0.18],
    [100, 0.13],
    [125, 0.1],
    [150, 0.08],
    [180, 0.07],
    [200, 0.07],
  ])(
    'CD3-3: 45 degrees, taken in proportion to the angle, lies within 25 %% of the table at %d mm',
    (bore, listed) => expectWithin(elbowLoss('pressed', bore, 45), listed, 0.25),
  );
});
