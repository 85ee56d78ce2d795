/** Numbers in the signs and unit words of each language, out of the same values. */
import { expect, it, vi } from 'vitest';
import type { Language } from '#i18n';

async function unitsIn(language: Language) {
  vi.resetModules();
  vi.doMock('#language', () => import(`../../src/i18n/${language}.ts`));
  return { ...(await import('#units')), ...(await import('#i18n')) };
}

it('shows English numbers with a point and German ones with a comma', async () => {
  const en = await unitsIn('en');
  expect(en.show('flow', 39.84, en.defaults).text).toBe('39.8 L/s');
  expect(en.show('efficacy', 1.5, en.defaults).text).toBe('1.50 L/s per W');
  const de = await unitsIn('de');
  expect(de.language).toBe('de');
  expect(de.show('flow', 39.84, de.defaults).text).toBe('39,8 l/s');
  expect(de.show('flow', -3.29, de.defaults).number).toBe('−3,3');
  expect(de.show('flow', 25, de.defaults, { brief: true }).number).toBe('25');
  expect(de.show('flow', 25.5, de.defaults, { brief: true }).number).toBe('25,5');
  expect(de.show('efficacy', 1.5, de.defaults).text).toBe('1,50 l/s je W');
  // What is reckoned with stays a number.
  expect(de.rounded('flow', 39.84, de.defaults)).toBe(39.8);
});
