/** The lesson on paper: from either view, at every phase, one or two sheets with the whole picture and nothing to press. */
import { describe, expect, test } from 'vitest';
import type { Page } from 'playwright-core';
import { stagesOf, type CaseStep } from '#lesson';
import * as main from './support/lesson.ts';
import { answer, begin, click, lock, playTo } from './support/mouse.ts';
import { page, problemsOf } from './support/page.ts';
import { play } from './support/play.ts';

/** A4 less its margins of 12 mm, in px of CSS. */
const WIDE = (186 / 25.4) * 96;

interface Sheet {
  /** Width and height of drawing, walk, crossing and ledger, as drawn. */
  pictures: Record<string, [number, number]>;
  big: string;
  heading: string;
  /** Controls, and screens' pictures beside the sheet's own, that would be printed too. */
  stray: string[];
}

const sheetOf = (reader: Page): Promise<Sheet> =>
  reader.evaluate(() => {
    const seen = (element: Element) => {
      const { width, height } = element.getBoundingClientRect();
      return element.checkVisibility({ visibilityProperty: true }) && width > 0 && height > 0;
    };
    const size = (selector: string): [number, number] => {
      const element = document.querySelector(`.sheet ${selector}`);
      if (!element || !seen(element)) return [0, 0];
      const { width, height } = element.getBoundingClientRect();
      return [width, height];
    };
    const words = (selector: string) =>
      [...document.querySelectorAll<HTMLElement>(selector)]
        .filter(seen)
        .map((element) => element.innerText.trim())
        .join(' | ');
    return {
      pictures: {
        drawing: size('.scene > svg'),
        walk: size('.drawing figure svg'),
        crossing: size('.chart svg[width="100%"]'),
        ledger: size('.account svg'),
      },
      big: words('[data-testid=flow]'),
      heading: words('#panel h2'),
      stray: [...document.querySelectorAll('button, input, nav, .tabs, .desk figure, .lesson > .drawing')]
        .filter(seen)
        .map((element) => element.outerHTML.slice(0, 80)),
    };
  });

/** What is there when the sheet is laid out, since a browser may print without another look at the page. */
async function printed(reader: Page): Promise<{ pages: number; atOnce: string }> {
  await reader.evaluate(() => {
    addEventListener(
      'beforeprint',
      () => {
        const at = (selector: string) => document.querySelector(selector)?.getBoundingClientRect().width ?? 0;
        const widths = ['.scene > svg', '.chart svg[width="100%"]', '.account'];
        document.body.dataset.atOnce = widths.map((each) => Math.round(at(`.sheet ${each}`))).join(' ');
      },
      { once: true },
    );
  });
  const file = (await reader.pdf({ format: 'A4' })).toString('latin1');
  const atOnce = (await reader.evaluate(() => document.body.dataset.atOnce)) ?? '';
  return { pages: file.match(/\/Type\s*\/Page\b/g)?.length ?? 0, atOnce };
}

async function expectPaper(reader: Page, flow_L_s: number, where: string): Promise<void> {
  const { pages, atOnce } = await printed(reader);
  expect.soft(pages, where).toBeGreaterThanOrEqual(1);
  expect.soft(pages, where).toBeLessThanOrEqual(2);
  const heading = await reader.locator('#panel h2').innerText();
  await reader.emulateMedia({ media: 'print' });
  await reader.waitForSelector('main.printing .sheet .account svg');
  const { pictures, ...sheet } = await sheetOf(reader);
  const widths = [pictures.drawing![0], pictures.crossing![0]].map(Math.round);
  expect.soft(atOnce.split(' ').slice(0, 2).map(Number), where).toEqual(widths);
  expect.soft(pictures.drawing![0], where).toBeCloseTo(WIDE, -1);
  for (const [name, [width, height]] of Object.entries(pictures)) {
    expect.soft(height, `${where}: ${name}`).toBeGreaterThan(60);
    expect.soft(width, `${where}: ${name}`).toBeGreaterThan(height / 1.6);
    expect.soft(width, `${where}: ${name}`).toBeLessThan(WIDE + 1);
  }
  expect.soft(sheet, where).toEqual({ big: main.shownFlow(flow_L_s), heading, stray: [] });
  await reader.emulateMedia({ media: null });
  await reader.waitForSelector('main:not(.printing)');
}

describe.each([
  ['the desk', ''],
  ['Front of class', '?view=class'],
])('from %s', (_name, query) => {
  test('prints the whole picture at every phase', { timeout: 240_000 }, async () => {
    const [step] = main.steps;
    const [healthy, first, last] = [0, 1, main.steps.length].map(main.flowAfter);
    const reader = await page({ path: main.PATH + query, reducedMotion: 'reduce' });
    await main.alive(reader);
    await expectPaper(reader, healthy!, 'opening');
    await click(reader, 'Begin the lesson');
    await click(reader, 'Skip the questions');
    await expectPaper(reader, healthy!, 'brief');
    await begin(reader);
    await expectPaper(reader, healthy!, 'predict');
    await lock(reader, 20);
    await expectPaper(reader, healthy!, 'locked');
    await click(reader, 'Put the fault in');
    await main.waitForPhase(reader, 'observe');
    await expectPaper(reader, first!, 'observe');
    await answer(reader, step!.observe);
    await expectPaper(reader, first!, 'explain');
    await answer(reader, step!.explain);
    await expectPaper(reader, first!, 'settled');
    await click(reader, 'Next fault');
    await playTo(reader, 'mending', 1);
    await expectPaper(reader, last!, 'mending');
    for (const { id } of main.steps) await click(reader, `Mend ${main.titleOf(id)}`);
    await click(reader, 'Next step');
    await play(reader, main.lesson, false, main.indexOf('two-roofs'));
    const { to } = stagesOf(main.lesson, main.lesson.steps.at(-1) as CaseStep);
    await expectPaper(reader, main.flowAt(to), 'finished');
    expect(problemsOf(reader)).toEqual([]);
    await reader.context().close();
  });
});

test('without script the drawing, the number and the words are still on the paper', async () => {
  const reader = await page({ path: main.PATH, context: { javaScriptEnabled: false } });
  await reader.emulateMedia({ media: 'print' });
  await reader.setViewportSize({ width: Math.round(WIDE), height: 1000 });
  const drawing = await reader.locator('.scene > svg').boundingBox();
  expect(drawing?.width).toBeCloseTo(WIDE, -1);
  expect(await reader.locator('[data-testid=flow]').innerText()).toBe(main.shownFlow(main.flowAfter(0)));
  const number = await reader.locator('[data-testid=flow]').boundingBox();
  expect(number!.x + number!.width).toBeLessThanOrEqual(WIDE + 1);
  await reader.context().close();
});
