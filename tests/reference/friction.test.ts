/**
 * Friction factors against a table computed twice independently (own Newton and the open `fluids`
 * library 1.3.1, identical to six figures). Colebrook-White is ASHRAE Fundamentals 2021 ch. 21 eq. 19,
 * as transcribed, not checked against the printed handbook.
 */
import { describe, expect, test } from 'vitest';
import { churchill, colebrook, frictionFactor, swameeJain } from '#physics';
import { expectPrinted, expectWithin } from './support.ts';

// Re, roughness over bore, Colebrook (null in laminar flow and transition), Churchill
const TABLE = [
  [1000, 0.001, null, '0.06400'],
  [2000, 0.001, null, '0.03204'],
  [3000, 0, null, '0.04298'],
  [3000, 0.006, null, '0.04648'],
  [4000, 0.0006, '0.04051', '0.04128'],
  [1e4, 0, '0.03088', '0.03100'],
  [1e4, 0.0006, '0.03179', '0.03203'],
  [1e4, 0.006, '0.03880', '0.03957'],
  [2.5e4, 0.0006, '0.02593', '0.02603'],
  [5.6e4, 0.0006, '0.02246', '0.02256'],
  [5.6e4, 0.0008, '0.02308', '0.02321'],
  [5.6e4, 0.006, '0.03357', '0.03391'],
  [5.6e4, 0.012, '0.04130', '0.04164'],
  [1e5, 0, '0.01799', '0.01788'],
  [1e5, 0.0001, '0.01851', '0.01846'],
  [1e5, 0.001, '0.02217', '0.02234'],
  [1e5, 0.01, '0.03850', '0.03873'],
  [1e5, 0.05, '0.07178', '0.07195'],
  [2e5, 0.0006, '0.01931', '0.01944'],
  [1e6, 0.0001, '0.01344', '0.01351'],
  [1e6, 0.001, '0.01994', '0.02002'],
  [1e7, 0.01, '0.03791', '0.03790'],
] as const;

/** `count` values, evenly spaced in their logarithm. */
function logarithmic(low: number, high: number, count: number): number[] {
  return Array.from({ length: count }, (_, i) => low * (high / low) ** (i / (count - 1)));
}

describe('friction factor', () => {
  test.each(TABLE)('Re %d, roughness ratio %d', (reynolds, roughness, exact, churchills) => {
    if (exact !== null) {
      expectPrinted(colebrook(reynolds, roughness), exact, 'Colebrook');
      expectPrinted(frictionFactor(reynolds, roughness), exact, 'the engine');
    }
    expectPrinted(churchill(reynolds, roughness), churchills, 'Churchill 1977');
  });

  test.each([
    [1000, '0.06400'],
    [2000, '0.03200'],
    [2300, '0.02783'],
  ])('laminar, 64/Re, at Re %d', (reynolds, printed) => {
    expectPrinted(frictionFactor(reynolds, 0.006), printed);
  });

  test('satisfies the equation it solves, to 1e-12, over all pipes', () => {
    for (const reynolds of logarithmic(4e3, 1e8, 60)) {
      for (const roughness of [0, ...logarithmic(1e-6, 0.05, 40)]) {
        const x = 1 / Math.sqrt(colebrook(reynolds, roughness));
        expectWithin(
          -2 * Math.log10(roughness / 3.7 + (2.51 * x) / reynolds),
          x,
          1e-12,
          `Re ${reynolds}, k ${roughness}`,
        );
      }
    }
  });

  // Largest error on a 90 by 91 logarithmic grid, Re 4e3 to 5e5, roughness ratio 0 to 0.05 (computed independently).
  test.each([
    ['Swamee-Jain', swameeJain, 3.36],
    ['Churchill 1977', churchill, 3.15],
  ] as const)('%s strays from Colebrook as far as stated and no farther', (_name, formula, stated) => {
    let worst = 0;
    for (const reynolds of logarithmic(4e3, 5e5, 90)) {
      for (const roughness of [0, ...logarithmic(1e-6, 0.05, 90)]) {
        worst = Math.max(worst, Math.abs(formula(reynolds, roughness) / colebrook(reynolds, roughness) - 1));
      }
    }
    expect(100 * worst).toBeGreaterThan(stated - 0.05);
    expect(100 * worst).toBeLessThan(stated + 0.01);
  });

  test.each([0, 0.0006, 0.006, 0.02])(
    'is one curve from laminar to turbulent, pressure always rising (roughness ratio %d)',
    (roughness) => {
      let before = frictionFactor(2000, roughness);
      for (let reynolds = 2001; reynolds <= 4500; reynolds++) {
        const factor = frictionFactor(reynolds, roughness);
        expect(Math.abs(factor - before), `step at Re ${reynolds}`).toBeLessThan(5e-5);
        expect(factor * reynolds ** 2, `pressure at Re ${reynolds}`).toBeGreaterThan(
          before * (reynolds - 1) ** 2,
        );
        before = factor;
      }
    },
  );
});
