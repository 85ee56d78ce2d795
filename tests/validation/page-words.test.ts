/** The page "How we know" has words for everything the engine hands it. */
import { describe, expect, test } from 'vitest';
import { has } from '#i18n';
import { ASSUMPTIONS, COEFFICIENTS } from '#physics';
import { runChecks } from '#validation';
import { MARKS, slug } from '../../src/routes/how-we-know/words.ts';

describe('words', () => {
  test.each(Object.keys(ASSUMPTIONS))('assumption %s', (code) =>
    expect(has(`assumption.${code}`)).toBe(true),
  );

  test.each(Object.keys(COEFFICIENTS))('coefficient %s', (name) => {
    expect(has(`know.coefficient.${name}`)).toBe(true);
  });

  test('every mark in use is explained', () => {
    const used = [
      ...runChecks().map((row) => row.mark),
      ...Object.values(ASSUMPTIONS),
      ...Object.values(COEFFICIENTS).map(({ mark }) => mark),
    ];
    for (const mark of used) {
      expect(MARKS).toContain(mark);
      expect(has(`know.mark.${slug(mark)}`), mark).toBe(true);
    }
  });
});
