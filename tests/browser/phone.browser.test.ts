/** A real phone: no page is laid out wider than the device, and what is spoken of is what is in sight. */
import { describe, expect, test } from 'vitest';
import type { Page } from 'playwright-core';
import { loadLesson } from '#lesson-load';
import * as main from './support/lesson.ts';
import { page, problemsOf } from './support/page.ts';
import { turn } from './support/play.ts';

const PHONES = [
  { width: 390, height: 844 },
  { width: 320, height: 640 },
];
const LYING = { width: 844, height: 390 };
const PLAIN = ['/', '/glossary', '/gallery', '/practice', '/lessons/own', '/how-we-know'];
const GERMAN = ['/de/', '/de/glossary', '/de/practice', '/de/lessons/own'];
const context = { isMobile: true, hasTouch: true };

/** How wide the phone takes the page to be, and how wide it is. */
const widths = (reader: Page) =>
  reader.evaluate(() => {
    const { clientWidth, scrollWidth } = document.documentElement;
    return { layout: clientWidth, window: innerWidth, page: scrollWidth };
  });
const asWideAs = (width: number) => ({ layout: width, window: width, page: width });

/** Goes there over a slow line: the page stands, and is laid out, before any script has come. */
async function slowly(reader: Page, path: string): Promise<void> {
  await reader.route('**/*.js', async (route) => {
    await new Promise((soon) => setTimeout(soon, 400));
    await route.continue();
  });
  await reader.goto(path, { waitUntil: 'load' });
}

interface Seen {
  top: number;
  bottom: number;
}
/** Upper and lower edge in the window of the first of these that is shown. */
const seen = (reader: Page, selector: string): Promise<Seen | null> =>
  reader.evaluate((selector) => {
    const shown = [...document.querySelectorAll(selector)].find((element) => element.checkVisibility());
    const box = shown?.getBoundingClientRect();
    return box ? { top: box.top, bottom: box.bottom } : null;
  }, selector);

async function expectInSight(reader: Page, selector: string, height: number, where: string): Promise<void> {
  const box = await seen(reader, selector);
  expect.soft(box?.top, `${where}: ${selector}`).toBeGreaterThanOrEqual(0);
  expect.soft(box?.bottom, `${where}: ${selector}`).toBeLessThanOrEqual(height);
}

const shownTab = (reader: Page) => reader.locator('.tabs [aria-pressed=true]').innerText();

/** Plays on until step `to` stands in `phase`; from the lesson's start, or from that step's own. */
async function playTo(reader: Page, slug: string, to: string, phase: string, there = false): Promise<void> {
  const { lesson } = loadLesson(slug);
  let at = there ? lesson.steps.findIndex(({ id }) => id === to) : 0;
  for (let turns = 0; turns < 100; turns += 1) {
    const now = await main.phaseOf(reader);
    if (lesson.steps[at]!.id === to && now === phase) return;
    const before = await reader.locator('#panel').textContent();
    const was = await turn(reader, lesson.steps[at]!, false);
    await expect.poll(() => reader.locator('#panel').textContent(), { timeout: 10_000 }).not.toBe(before);
    if (was === 'reveal') await reader.waitForSelector('main.phase-observe');
    if (was === 'settled') at += 1;
  }
  throw new Error(`${to} never stood in ${phase}`);
}

describe.each(PHONES)('a phone of $width x $height', (viewport) => {
  test.each([...PLAIN, ...GERMAN])('%s is as wide as the phone', async (path) => {
    const reader = await page({ path, viewport, context });
    await reader.waitForTimeout(300);
    expect(await widths(reader)).toEqual(asWideAs(viewport.width));
    await reader.context().close();
  });

  test.each(['', '/de'])(
    'a lesson of %s/ is set out for it from the first, on a slow line too',
    async (base) => {
      const reader = await page({ viewport, context });
      await slowly(reader, `${base}${main.PATH}`);
      expect(await widths(reader)).toEqual(asWideAs(viewport.width));
      await main.alive(reader);
      await reader.getByRole('button', { name: base ? 'Druckverlauf' : 'Pressure walk', exact: true }).tap();
      expect(await reader.locator('figure.quiet').count()).toBe(1);
      expect(await reader.locator('main > .drawing > figure').count()).toBe(0);
      expect(await widths(reader)).toEqual(asWideAs(viewport.width));
      expect(problemsOf(reader)).toEqual([]);
      await reader.context().close();
    },
  );

  test('the way through a long lesson is one row, wide enough for a finger', async () => {
    const reader = await page({ path: main.PATH, viewport, context });
    await main.alive(reader);
    const nodes = await reader.locator('header nav .node').evaluateAll((all) =>
      all.map((node) => {
        const { top, width, height } = node.getBoundingClientRect();
        return { top, width, height };
      }),
    );
    expect(nodes.length).toBe(main.lesson.steps.length);
    expect(new Set(nodes.map(({ top }) => top)).size).toBe(1);
    expect(Math.min(...nodes.map(({ width }) => width))).toBeGreaterThanOrEqual(24);
    expect(Math.min(...nodes.map(({ height }) => height))).toBeGreaterThanOrEqual(44);
    await reader.context().close();
  });

  test('the fault is seen going in, and chart and answers stand together', async () => {
    const reader = await page({ viewport, context });
    await slowly(reader, main.PATH);
    await main.alive(reader);
    await playTo(reader, main.SLUG, 'sag', 'locked');
    for (const part of ['.drawing svg', '[data-testid=flow]', '#panel .act .press'])
      await expectInSight(reader, part, viewport.height, 'locked');
    await reader.getByRole('button', { name: 'Put the fault in' }).tap();
    await main.waitForPhase(reader, 'reveal');
    for (const part of ['.drawing svg', '[data-testid=flow]'])
      await expectInSight(reader, part, viewport.height, 'reveal');
    await main.waitForPhase(reader, 'observe');
    await expectInSight(reader, '.chart.crossing svg', viewport.height, 'observe');
    const plot = await seen(reader, '.chart.crossing svg');
    const answers = await seen(reader, '#panel ul');
    expect(answers!.top).toBeGreaterThan(plot!.bottom);
    expect(answers!.bottom - plot!.top).toBeLessThan(viewport.height);
    // Nothing but a second look is on offer, so nothing lies over the answers.
    expect(await reader.locator('#panel .act').evaluate((act) => getComputedStyle(act).position)).toBe(
      'static',
    );
    expect(problemsOf(reader)).toEqual([]);
    await reader.context().close();
  });

  test('the chart named is the one shown, until another is called', async () => {
    const reader = await page({ path: main.PATH, viewport, context, reducedMotion: 'reduce' });
    await main.alive(reader);
    await playTo(reader, main.SLUG, 'swap', 'observe');
    expect(await shownTab(reader)).toBe('Pressure walk');
    expect(await reader.locator('#panel figure.quiet').count()).toBe(1);
    await reader.getByRole('button', { name: 'The crossing', exact: true }).tap();
    expect(await shownTab(reader)).toBe('The crossing');
    await reader.context().close();
  });

  test('a step with a chart of its own shows it while it is spoken of', async () => {
    const path = '/lessons/what-the-room-feels';
    const reader = await page({ path, viewport, context, reducedMotion: 'reduce' });
    await main.alive(reader);
    await playTo(reader, 'what-the-room-feels', 'half-air', 'brief');
    await reader.waitForSelector('.chart.effort.chosen');
    await playTo(reader, 'what-the-room-feels', 'half-air', 'observe', true);
    await reader.waitForSelector('#panel .chart.effort.chosen');
    await reader.context().close();
  });
});

test('a phone that lies shows the fault going in, and the chart beside the answers', async () => {
  const reader = await page({ viewport: LYING, context });
  await slowly(reader, main.PATH);
  await main.alive(reader);
  expect(await widths(reader)).toEqual(asWideAs(LYING.width));
  await playTo(reader, main.SLUG, 'sag', 'reveal');
  for (const part of ['.drawing svg', '[data-testid=flow]'])
    await expectInSight(reader, part, LYING.height, 'reveal');
  await main.waitForPhase(reader, 'observe');
  for (const part of ['.chart.crossing svg', '#panel ul'])
    await expectInSight(reader, part, LYING.height, 'observe');
  await reader.context().close();
});
