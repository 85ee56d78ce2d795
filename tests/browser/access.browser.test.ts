/** The lesson for everybody: rules of access by axe, room on every screen, focus, targets, and words without script. */
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { describe, expect, test } from 'vitest';
import type { AxeResults } from 'axe-core';
import type { Page } from 'playwright-core';
import * as main from './support/lesson.ts';
import { answer, click, playTo } from './support/mouse.ts';
import { page, problemsOf } from './support/page.ts';
import { play } from './support/play.ts';

const axe = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');
const DESK = { width: 1440, height: 900 };
const PHONE = { width: 390, height: 844 };

/** What axe finds wrong, as rule and places. */
async function findings(reader: Page): Promise<string[]> {
  await reader.evaluate(`window.axe ?? (() => { ${axe} })()`);
  const { violations } = await reader.evaluate(() =>
    (window as unknown as { axe: { run(): Promise<AxeResults> } }).axe.run(),
  );
  return violations.map(
    ({ id, nodes }) => `${id}: ${nodes.map(({ target }) => target.join(' ')).join(', ')}`,
  );
}

/** Controls drawn smaller than 24 px in either direction, slider thumbs and inline links in text left out. A file is chosen by its label. */
const smallTargets = (reader: Page): Promise<string[]> =>
  reader.evaluate(() =>
    [
      ...document.querySelectorAll(
        'button, summary, a, label:has(input), input:not([type=radio], [type=file])',
      ),
    ]
      .map((element) => ({ element, box: element.getBoundingClientRect() }))
      .filter(({ element, box }) => element.checkVisibility() && box.width > 0 && !element.matches('.skip'))
      .filter(({ box }) => box.width < 24 || box.height < 24)
      .map(({ element, box }) => `${element.outerHTML.slice(0, 80)} ${box.width}x${box.height}`),
  );

/** Px over the side, once the pictures have taken up the new width. */
async function overflow(reader: Page): Promise<number> {
  const over = () =>
    reader.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
  for (let i = 0; i < 30 && (await over()) !== 0; i += 1) await reader.waitForTimeout(100);
  return over();
}

/** Paper and high contrast on the desk and blueprint on the phone, or with `all` each of the first two on both. */
async function expectOpenToAll(reader: Page, where: string, all = false): Promise<void> {
  for (const viewport of [PHONE, DESK]) {
    await reader.setViewportSize(viewport);
    const own = viewport === DESK ? 'light' : 'dark';
    for (const colorScheme of ['dark', 'light'] as const) {
      if (!all && colorScheme !== own) continue;
      await reader.emulateMedia({ colorScheme });
      expect.soft(await findings(reader), `${where}, ${colorScheme}, ${viewport.width} wide`).toEqual([]);
    }
    if (viewport === DESK) {
      const theme = (name: string | null) =>
        reader.evaluate((wanted) => {
          if (wanted === null) delete document.documentElement.dataset.theme;
          else document.documentElement.dataset.theme = wanted;
        }, name);
      await theme('contrast');
      expect.soft(await findings(reader), `${where}, high contrast`).toEqual([]);
      await theme(null);
    }
    expect.soft(await smallTargets(reader), `${where}, ${viewport.width} wide`).toEqual([]);
  }
  for (const width of [320, 390, 768, 1920, 1440]) {
    await reader.setViewportSize({ width, height: 900 });
    expect.soft(await overflow(reader), `${where}: over the side at ${width} wide`).toBe(0);
  }
}

/** The heading of the new phase has the focus, and it can be seen. */
async function expectFocusOnHeading(reader: Page, where: string): Promise<void> {
  const focus = await reader.evaluate(() => {
    const { tagName, textContent } = document.activeElement!;
    const { outlineStyle, outlineWidth } = getComputedStyle(document.activeElement!);
    return {
      tagName,
      words: textContent?.trim(),
      outlined: outlineStyle !== 'none' && outlineWidth !== '0px',
    };
  });
  expect
    .soft(focus, where)
    .toEqual({ tagName: 'H2', words: (await main.read(reader)).heading, outlined: true });
}

/** Presses with the keyboard, so that the browser shows where the focus goes. */
async function key(reader: Page, name: string): Promise<void> {
  await reader.locator('#panel').getByRole('button', { name, exact: true }).press('Enter');
}

describe('the lesson, phase by phase', () => {
  test('has nothing axe objects to, light or dark, wide or narrow, and keeps the focus in sight', async () => {
    const reader = await page({ path: main.PATH, reducedMotion: 'reduce', viewport: DESK });
    await main.alive(reader);
    const step = main.steps[0]!;
    await expectOpenToAll(reader, 'opening');
    for (const summary of await reader.locator('#panel summary').all()) await summary.click();
    await expectOpenToAll(reader, 'opening, all unfolded');
    await key(reader, 'Begin the lesson');
    await expectFocusOnHeading(reader, 'entry');
    await expectOpenToAll(reader, 'entry');
    await key(reader, 'Begin');
    await expectFocusOnHeading(reader, 'asking');
    await expectOpenToAll(reader, 'asking');
    for (const { id, options, right } of main.entry.questions) {
      expect(await reader.textContent('#panel h3')).toBe(main.titleOf(`know/${id}`));
      await reader.locator('#panel ul button').nth(options.indexOf(right)).click();
    }
    await main.waitForPhase(reader, 'settled');
    await expectOpenToAll(reader, 'entry told');
    await key(reader, 'Next step');
    await expectFocusOnHeading(reader, 'brief');
    await expectOpenToAll(reader, 'brief');
    await key(reader, 'Make a prediction');
    await expectFocusOnHeading(reader, 'predict');
    await expectOpenToAll(reader, 'predict');
    await reader.fill('#panel .typed input', '20');
    await reader.press('#panel .typed input', 'Enter');
    await key(reader, 'Lock it in');
    await expectFocusOnHeading(reader, 'locked');
    await expectOpenToAll(reader, 'locked');
    await key(reader, 'Put the fault in');
    await main.waitForPhase(reader, 'observe');
    await expectFocusOnHeading(reader, 'observe');
    await answer(
      reader,
      step.observe,
      step.observe.options.find((id) => id !== step.observe.right)!,
    );
    await expectOpenToAll(reader, 'observe, after a wrong answer');
    await answer(reader, step.observe);
    await expectOpenToAll(reader, 'explain');
    await answer(reader, step.explain);
    for (const table of await reader.getByRole('button', { name: 'Table' }).all()) await table.click();
    await expectOpenToAll(reader, 'settled, tables open', true);
    await click(reader, 'Next fault');
    await playTo(reader, 'mending', 1);
    await click(reader, `Mend ${main.titleOf('ties')}`);
    await expectOpenToAll(reader, 'mending');
    for (const { id } of main.steps.filter(({ id }) => id !== 'ties')) {
      await click(reader, `Mend ${main.titleOf(id)}`);
    }
    await key(reader, 'Next step');
    await play(reader, main.lesson, true, main.indexOf('two-roofs'));
    await main.waitForPhase(reader, 'finished');
    await expectFocusOnHeading(reader, 'finished');
    await expectOpenToAll(reader, 'finished');
    expect(problemsOf(reader)).toEqual([]);
    await reader.context().close();
  });
});

test('the opening page has nothing axe objects to', async () => {
  const reader = await page({ path: '/' });
  await expectOpenToAll(reader, '/');
  await reader.context().close();
});

test.each(['/lessons/own', '/practice'])(
  '%s has nothing axe objects to, and room on a phone',
  async (path) => {
    const reader = await page({ path, viewport: PHONE });
    await reader.waitForSelector('main[data-alive]');
    expect(await overflow(reader)).toBe(0);
    await expectOpenToAll(reader, path);
    await reader.context().close();
  },
);

test('without script there is still the run, its flow and what it is about', async () => {
  const reader = await page({ path: main.PATH, context: { javaScriptEnabled: false } });
  const words = await reader.innerText('body');
  expect(words).toContain(main.text.title);
  expect(words).toContain(main.titleOf('intro'));
  expect(words).toContain(`${main.shownFlow(main.flowAfter(0))} L/s`);
  expect(await reader.locator('[data-testid=flow]').innerText()).toBe(main.shownFlow(main.flowAfter(0)));
  expect(await reader.getByRole('img').first().getAttribute('aria-label')).toContain('bathroom');
  await reader.context().close();
});
