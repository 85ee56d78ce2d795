/** The bracketed root finder on functions that mislead faster methods. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { bracketedRoot } from '#physics';
import { SEEDED } from './rigs.ts';

describe('a bracketed root', () => {
  test.each<[string, (x: number) => number, number, number, number]>([
    ['a straight line', (x) => 2 * x - 1, 0, 1, 0.5],
    ['a step', (x) => (x < Math.SQRT2 ? -1 : 1), 0, 4, Math.SQRT2],
    ['a step of unequal sides', (x) => (x < 1 / 3 ? -1e-3 : 1e9), 0, 1, 1 / 3],
    ['a pole taken for a root', (x) => 1 / (x - Math.PI), 3, 4, Math.PI],
    ['a wall after a plain', (x) => Math.exp(x) - 1e10, 0, 100, Math.log(1e10)],
    ['a root far from a steep end', (x) => x ** 9 - 1e-9, 0, 10, 0.1],
    ['an infinite slope', (x) => Math.cbrt(x - 0.7), -5, 6, 0.7],
    ['a kink', (x) => (x < 2 ? 1e-6 * (x - 2) : 1e6 * (x - 2)), 0, 10, 2],
    ['ripples on a slope', (x) => x - 5 + 0.9 * Math.sin(x), 0, 20, 5.58118],
    ['ends the wrong way round', (x) => x - 3, 10, 0, 3],
    ['a root at an end', (x) => x, 0, 1, 0],
  ])('%s', (_name, f, a, b, root) => {
    let asked = 0;
    const counted = (x: number) => {
      asked++;
      expect(x).toBeGreaterThanOrEqual(Math.min(a, b));
      expect(x).toBeLessThanOrEqual(Math.max(a, b));
      return f(x);
    };
    const found = bracketedRoot(counted, a, b, 1e-13);
    expect(found).toBeCloseTo(root, 4);
    expect(asked).toBeLessThanOrEqual(102);
  });

  test('a threefold root, flat on both sides, is met in value', () => {
    const f = (x: number) => (x - 1) ** 3;
    expect(Math.abs(f(bracketedRoot(f, -3, 4, 1e-12)))).toBeLessThanOrEqual(1e-12);
  });

  test('any rising cubic', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -50, max: 50, noNaN: true }),
        fc.double({ min: 1e-3, max: 100, noNaN: true }),
        (root, slope) => {
          const f = (x: number) => slope * (x - root) + (x - root) ** 3;
          expect(Math.abs(bracketedRoot(f, -100, 130, 1e-10) - root)).toBeLessThan(1e-6);
        },
      ),
      { ...SEEDED, numRuns: 500 },
    );
  });
});
