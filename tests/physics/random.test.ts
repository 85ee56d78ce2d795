/** The generator against its authors' output, and the moments of what is drawn from it. */
import { describe, expect, test } from 'vitest';
import { randomFrom, seedFor, words } from '#physics';

const draws = (count: number, next: () => number) => Array.from({ length: count }, next);
const mean = (list: number[]) => list.reduce((sum, x) => sum + x, 0) / list.length;
const deviation = (list: number[]) => {
  const middle = mean(list);
  return Math.sqrt(mean(list.map((x) => (x - middle) ** 2)));
};

describe('random', () => {
  test('xoshiro128** 1.1 from state 1, 2, 3, 4: the words its reference implementation gives', () => {
    expect(draws(10, words([1, 2, 3, 4]))).toEqual([
      11520, 0, 5927040, 70819200, 2031721883, 1637235492, 1287239034, 3734860849, 3729100597, 4258142804,
    ]);
  });

  test('the same seed gives the same numbers, another seed others', () => {
    const first = randomFrom(7);
    const again = randomFrom(7);
    const other = randomFrom(8);
    const list = draws(50, first.normal);
    expect(draws(50, again.normal)).toEqual(list);
    expect(draws(50, other.normal)).not.toEqual(list);
  });

  test('a named stream has its own seed', () => {
    const names = ['bend', 'compression', 'fan pressure', 'roughness flexible', ''];
    const seeds = names.map((name) => seedFor(1, name));
    expect(new Set(seeds).size).toBe(names.length);
    expect(seedFor(1, 'bend')).not.toBe(seedFor(2, 'bend'));
  });

  // 100 000 draws: the mean lies within 4 of its own standard errors.
  test('even: in [0, 1), mean 1/2, standard deviation 1/sqrt(12)', () => {
    const list = draws(100_000, randomFrom(1).even);
    expect(list.every((x) => x >= 0 && x < 1)).toBe(true);
    expect(Math.abs(mean(list) - 0.5)).toBeLessThan((4 * 0.2887) / Math.sqrt(100_000));
    expect(deviation(list)).toBeCloseTo(Math.sqrt(1 / 12), 2);
  });

  test('normal: mean 0, standard deviation 1, 95 % within 1.96', () => {
    const list = draws(100_000, randomFrom(2).normal);
    expect(Math.abs(mean(list))).toBeLessThan(4 / Math.sqrt(100_000));
    expect(deviation(list)).toBeCloseTo(1, 2);
    const inside = list.filter((x) => Math.abs(x) < 1.959964).length / list.length;
    expect(Math.abs(inside - 0.95)).toBeLessThan(4 * Math.sqrt((0.95 * 0.05) / 100_000));
  });

  test('triangular 1, 2, 5: inside its ends, mean 8/3, variance 13/18', () => {
    const random = randomFrom(3);
    const list = draws(100_000, () => random.triangular(1, 2, 5));
    expect(Math.min(...list.slice(0, 50_000))).toBeGreaterThanOrEqual(1);
    expect(Math.max(...list.slice(0, 50_000))).toBeLessThanOrEqual(5);
    expect(Math.abs(mean(list) - 8 / 3)).toBeLessThan((4 * Math.sqrt(13 / 18)) / Math.sqrt(100_000));
    expect(deviation(list) ** 2).toBeCloseTo(13 / 18, 1);
    expect(random.triangular(3, 3, 3)).toBe(3);
  });
});
