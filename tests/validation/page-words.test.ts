/** The page "How we know" has words for everything the engine hands it. */
import { describe, expect, test } from 'vitest';
import { has } from '#i18n';
import * as physics from '#physics';
import { account, COEFFICIENT_TABLES, runChecks } from '#validation';
import { MARKS, slug } from '../../src/routes/how-we-know/words.ts';

describe('words', () => {
  test.each(account().assumptions)('assumption $code', ({ code }) =>
    expect(has(`assumption.${code}`)).toBe(true),
  );

  test.each(Object.values(COEFFICIENT_TABLES).flat())('coefficient $name', ({ name }) => {
    expect(has(`know.coefficient.${name}`)).toBe(true);
  });

  test.each(account().labour)('time to put right: $kind', ({ kind }) => {
    expect(has(`fault.${kind}`) || has(`know.labour.${kind}`)).toBe(true);
  });

  test('every mark in use is explained', () => {
    const { assumptions, labour, materials, rates } = account();
    const used = [
      ...[...runChecks(), ...assumptions, ...labour, ...materials].map(({ mark }) => mark),
      ...Object.values(COEFFICIENT_TABLES).flatMap((table) => table.map(({ mark }) => mark)),
      ...rates.flatMap(({ intermittentMark, continuousMark }) => [intermittentMark, continuousMark]),
    ];
    for (const mark of used) {
      expect(MARKS).toContain(mark);
      expect(has(`know.mark.${slug(mark)}`), mark).toBe(true);
    }
  });
});

/** Whether a value is a coefficient: a number with a range, a mark and a source. */
const isCoefficient = (value: unknown): value is physics.Coefficient =>
  typeof value === 'object' &&
  value !== null &&
  ['value', 'low', 'high', 'mark', 'source'].every((key) => key in value);

test('every coefficient the engine hands out is on the page', () => {
  const handedOut = Object.entries(physics).flatMap(([name, value]) => {
    if (isCoefficient(value)) return [[name, value] as const];
    if (typeof value !== 'object' || value === null) return [];
    return Object.entries(value)
      .filter(([, inner]) => isCoefficient(inner))
      .map(([key, inner]) => [`${name}.${key}`, inner as physics.Coefficient] as const);
  });
  expect(handedOut.length).toBeGreaterThan(40);
  const printed = Object.values(COEFFICIENT_TABLES).flat();
  const missing = handedOut.filter(
    ([, { value, source, mark }]) =>
      !printed.some((one) => one.value === value && one.source === source && one.mark === mark),
  );
  expect(missing.map(([name]) => name)).toEqual([]);
});
