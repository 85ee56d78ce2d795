/** Room: on a desk the whole lesson stands on one page, and on a phone no words run over the side. */
import { describe, expect, test } from 'vitest';
import type { Page } from 'playwright-core';
import * as main from './support/lesson.ts';
import { answer, begin, click, lock, playTo } from './support/mouse.ts';
import { page, problemsOf } from './support/page.ts';
import { play } from './support/play.ts';
import { wordsInSight } from './support/words.ts';

const DESKS = [
  { width: 1440, height: 900 },
  { width: 1920, height: 1080 },
];
const PHONES = [
  { width: 320, height: 640 },
  { width: 390, height: 844 },
];

/** Calls `look` in every phase of the main lesson a reader can rest in. */
async function everyPhase(reader: Page, look: (where: string) => Promise<void>): Promise<void> {
  const [step] = main.steps;
  await look('opening');
  await click(reader, 'Begin the lesson');
  await look('entry check');
  await click(reader, 'Skip the questions');
  await look('brief');
  await begin(reader);
  await look('predict');
  await lock(reader, 20);
  await look('locked');
  await click(reader, 'Put the fault in');
  await main.waitForPhase(reader, 'observe');
  await look('observe');
  await answer(
    reader,
    step!.observe,
    step!.observe.options.find((id) => id !== step!.observe.right)!,
  );
  await look('observe, after a wrong answer');
  await answer(reader, step!.observe);
  await look('explain');
  await answer(reader, step!.explain);
  await look('settled');
  await click(reader, 'Next fault');
  await playTo(reader, 'mending', 1);
  await look('mending');
  for (const { id } of main.steps) await click(reader, `Mend ${main.titleOf(id)}`);
  await look('mending, all mended');
  await click(reader, 'Next step');
  await look('another house');
  await play(reader, main.lesson, false, main.indexOf('two-roofs'));
  await look('finished');
}

/** The page's own size over the window's, and whether the big number is in it; the pictures are given time to settle. */
async function room(reader: Page, onePage: boolean) {
  const measure = () =>
    reader.evaluate(() => {
      const { scrollWidth, scrollHeight } = document.documentElement;
      const flow = document.querySelector('[data-testid=flow]')!.getBoundingClientRect();
      return {
        over: { across: scrollWidth - innerWidth, down: scrollHeight - innerHeight },
        number: flow.height > 0 && flow.top >= 0 && flow.bottom <= innerHeight && flow.right <= innerWidth,
      };
    });
  let seen = await measure();
  for (let i = 0; i < 30 && (seen.over.across > 0 || (onePage && seen.over.down > 0)); i += 1) {
    await reader.waitForTimeout(100);
    seen = await measure();
  }
  return seen;
}

/** Words in sight that reach over either side of the window, or of a box that cuts off what it cannot hold. */
async function cut(reader: Page): Promise<string[]> {
  const edge = await reader.evaluate(() => document.documentElement.clientWidth);
  const over = (await wordsInSight(reader, '.skip')).filter(
    ({ left, right }) => left < -1 || right > edge + 1,
  );
  // A box with words in it that would have to be scrolled sideways.
  const boxes = await reader.evaluate(() =>
    [...document.querySelectorAll('#panel, #panel *, header, header *')]
      .filter((element) => ['auto', 'scroll'].includes(getComputedStyle(element).overflowX))
      .filter((element) => element.scrollWidth > element.clientWidth + 1 && !element.matches('.unseen'))
      .map(
        ({ tagName, scrollWidth, clientWidth }) =>
          `${tagName} scrolls sideways: ${scrollWidth} in ${clientWidth}`,
      ),
  );
  return [
    ...over.map(
      ({ words, left, right }) => `${words.slice(0, 40)} ${left.toFixed(0)} to ${right.toFixed(0)}`,
    ),
    ...boxes,
  ];
}

describe.each(DESKS)('at $width x $height', (viewport) => {
  test('every phase stands on one page with its number in view', async () => {
    const reader = await page({ path: main.PATH, viewport, reducedMotion: 'reduce' });
    await main.alive(reader);
    await everyPhase(reader, async (where) => {
      expect.soft(await room(reader, true), where).toEqual({ over: { across: 0, down: 0 }, number: true });
      expect.soft(await cut(reader), where).toEqual([]);
    });
    expect(problemsOf(reader)).toEqual([]);
    await reader.context().close();
  });
});

describe.each(PHONES)('at $width x $height', (viewport) => {
  async function expectRoom(reader: Page, where: string): Promise<void> {
    expect.soft((await room(reader, false)).over.across, where).toBe(0);
    expect.soft(await cut(reader), where).toEqual([]);
  }

  test('no words run over the side in any phase', async () => {
    const reader = await page({ path: main.PATH, viewport, reducedMotion: 'reduce' });
    await main.alive(reader);
    await everyPhase(reader, (where) => expectRoom(reader, where));
    expect(problemsOf(reader)).toEqual([]);
    await reader.context().close();
  });

  test('nor in a lesson with an entry check and cards', async () => {
    const reader = await page({ path: '/lessons/fan-meets-duct', viewport, reducedMotion: 'reduce' });
    await main.alive(reader);
    const panel = reader.locator('#panel');
    let cards = 0;
    for (let presses = 0; presses < 150 && (await main.phaseOf(reader)) !== 'finished'; presses += 1) {
      const phase = await main.phaseOf(reader);
      await expectRoom(reader, `${await panel.locator('h2').innerText()} (${phase})`);
      const before = await panel.textContent();
      const open = panel.locator('ul > li > button');
      if (phase === 'predict') {
        const typed = panel.locator('.typed input');
        const card = panel.locator('fieldset input[type=radio]').first();
        if (await typed.count()) {
          await typed.fill('20');
          await typed.press('Tab');
        } else {
          await card.check({ force: true });
          cards += 1;
          await expectRoom(reader, 'a card chosen');
        }
        await panel.locator('.act .press').first().click();
      } else if (phase === 'mending') {
        await panel.locator('li .press').first().waitFor();
        for (const repair of await panel.locator('li .press').all()) await repair.click();
        await expectRoom(reader, 'all mended');
        await panel.locator('.act .press').first().click();
      } else if (['asking', 'observe', 'explain', 'again'].includes(phase) && (await open.count()))
        await open.last().click();
      else await panel.locator('.act .press').first().click();
      await expect.poll(() => panel.textContent(), { timeout: 10_000 }).not.toBe(before);
    }
    expect(await main.phaseOf(reader)).toBe('finished');
    expect(cards).toBeGreaterThan(0);
    expect(problemsOf(reader)).toEqual([]);
    await reader.context().close();
  });
});
