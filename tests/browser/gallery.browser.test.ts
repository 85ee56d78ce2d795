/** The gallery in a real browser: every state is drawn, in every paper, and what has the focus can be seen to. */
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { expect, test } from 'vitest';
import type { AxeResults } from 'axe-core';
import type { Page } from 'playwright-core';
import { groups } from '../../src/routes/gallery/states.ts';
import { page, problemsOf } from './support/page.ts';

const axe = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');
const states = groups.flatMap((group) => group.states);
const THEMES = ['paper', 'blueprint', 'contrast'];

/** What axe finds in one part of the page; the drawings alone would keep it busy for minutes. */
async function findings(reader: Page, selector: string): Promise<string[]> {
  await reader.evaluate(`window.axe ?? (() => { ${axe} })()`);
  const { violations } = await reader.evaluate(
    (where) =>
      (window as unknown as { axe: { run(at: string, options: object): Promise<AxeResults> } }).axe.run(
        where,
        {
          // Nowhere but here does one control stand on a page in all its states.
          rules: { 'landmark-unique': { enabled: false } },
        },
      ),
    selector,
  );
  return violations.map(
    ({ id, nodes }) => `${id}: ${nodes.map(({ target }) => target.join(' ')).join(', ')}`,
  );
}

async function gallery(theme: string, viewport = { width: 1440, height: 900 }): Promise<Page> {
  const reader = await page({ viewport, reducedMotion: 'reduce' });
  await reader.addInitScript((name) => {
    localStorage.setItem('lost-litres.settings', JSON.stringify({ theme: name }));
  }, theme);
  await reader.goto('/gallery', { waitUntil: 'load' });
  return reader;
}

for (const theme of THEMES)
  test(`every state is drawn on ${theme}, and axe finds nothing in controls and charts`, async () => {
    const reader = await gallery(theme);
    const empty = await reader.evaluate(
      (ids) =>
        ids.filter((id) => {
          const body = document.getElementById(id)?.querySelector('.body');
          const drawn = body?.querySelector('svg, button, input, nav, li');
          return !drawn || drawn.getBoundingClientRect().height === 0;
        }),
      states.map(({ id }) => id),
    );
    expect(empty).toEqual([]);
    expect.soft(await findings(reader, '#controls'), 'controls').toEqual([]);
    expect.soft(await findings(reader, '#crossing-all, #ledger-all, #walk-compared'), 'charts').toEqual([]);
    for (const { id } of states.filter((state) => state.focus)) {
      await reader.keyboard.press('Tab');
      await reader.evaluate((hash) => (location.hash = hash), id);
      await reader.waitForFunction(
        (place) => document.getElementById(place)?.contains(document.activeElement),
        id,
      );
      const marked = await reader.evaluate(() => {
        const seen = (element: Element | null): boolean => {
          if (!element) return false;
          const { outlineStyle, outlineWidth } = getComputedStyle(element);
          return outlineStyle !== 'none' && parseFloat(outlineWidth) >= 2;
        };
        return seen(document.activeElement) || seen(document.activeElement?.closest('label') ?? null);
      });
      expect.soft(marked, `${id} shows its focus`).toBe(true);
    }
    expect(problemsOf(reader)).toEqual([]);
    await reader.context().close();
  });

test('the gallery fits a narrow phone', async () => {
  const reader = await gallery('paper', { width: 320, height: 800 });
  const over = () =>
    reader.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
  for (let i = 0; i < 30 && (await over()) !== 0; i += 1) await reader.waitForTimeout(100);
  expect(await over()).toBe(0);
  await reader.context().close();
});

test('one fault can be dragged through its range on the fullest rig', async () => {
  const reader = await page({ path: '/gallery/bench' });
  const slider = reader.locator('main input[type=range]').first();
  await reader.waitForLoadState('networkidle');
  const flow = () => reader.locator('main strong').first().innerText();
  await slider.fill('0');
  const healthy = await flow();
  await slider.fill('1');
  await reader.waitForFunction((was) => document.querySelector('main strong')?.textContent !== was, healthy);
  expect(parseFloat(await flow())).toBeLessThan(parseFloat(healthy));
  expect(problemsOf(reader)).toEqual([]);
  await reader.context().close();
});
