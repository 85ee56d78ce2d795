/** The lesson before a class: letters that reach the last row, the rim kept free, and a clicker that never answers. */
import { expect, test } from 'vitest';
import type { Page } from 'playwright-core';
import { loadLessons } from '#lesson-load';
import * as main from './support/lesson.ts';
import { answer, begin, click, lock } from './support/mouse.ts';
import { page, problemsOf } from './support/page.ts';
import { play } from './support/play.ts';
import { wordsInSight } from './support/words.ts';

const BEAMER = { width: 1920, height: 1080 };
const SQUARER = { width: 1024, height: 768 };

/** Words in sight that are set smaller than 3.3 % of the height, by the pixels they are drawn in. */
async function smallWords(reader: Page): Promise<string[]> {
  const seen = await wordsInSight(reader, 'h1');
  expect(seen.length).toBeGreaterThan(5);
  return seen
    .filter(({ size }) => size < BEAMER.height * 0.033)
    .map(({ words, size }) => `${words.slice(0, 30)} ${size.toFixed(1)}`);
}

async function expectForClass(reader: Page, where: string): Promise<void> {
  for (const tab of ['Drawing', 'The crossing', 'The ledger', 'Pressure walk']) {
    await reader.getByRole('button', { name: tab, exact: true }).click();
    await reader.waitForTimeout(150);
    expect.soft(await smallWords(reader), `${where}, ${tab}`).toEqual([]);
    const rim = await reader.evaluate(() => {
      const box = document.querySelector('main')!.getBoundingClientRect();
      const { scrollWidth, scrollHeight } = document.documentElement;
      return {
        left: box.left / innerWidth,
        bottom: 1 - box.bottom / innerHeight,
        over: [scrollWidth - innerWidth, scrollHeight - innerHeight],
      };
    });
    expect.soft(rim.left, where).toBeGreaterThanOrEqual(0.0499);
    expect.soft(rim.bottom, where).toBeGreaterThanOrEqual(0.0499);
    expect.soft(rim.over, `${where}, ${tab}`).toEqual([0, 0]);
  }
}

test('every letter is a thirtieth of the height at least, through the phases of a step', async () => {
  const step = main.steps[0]!;
  const reader = await page({ path: `${main.PATH}?view=class`, viewport: BEAMER, reducedMotion: 'reduce' });
  await main.alive(reader);
  await expectForClass(reader, 'opening');
  await begin(reader);
  await expectForClass(reader, 'predict');
  await lock(reader, 20);
  await expectForClass(reader, 'locked');
  await reader.locator('#panel').getByRole('button', { name: 'Put the fault in', exact: true }).click();
  await main.waitForPhase(reader, 'observe');
  await expectForClass(reader, 'observe');
  await answer(reader, step.observe);
  await expectForClass(reader, 'explain');
  await answer(reader, step.explain);
  await expectForClass(reader, 'settled');
  expect(problemsOf(reader)).toEqual([]);
  await reader.context().close();
});

const everywhere = [
  ...loadLessons().map(({ lesson }) => ({ lesson, base: '', viewport: BEAMER })),
  { lesson: main.lesson, base: '/de', viewport: BEAMER },
  { lesson: main.lesson, base: '', viewport: SQUARER },
];
test.each(everywhere)(
  'whatever a class is asked, every answer is in sight: $base $lesson.slug, $viewport.width wide',
  async ({ lesson, base, viewport }) => {
    const path = `${base}/lessons/${lesson.slug}?view=class`;
    const reader = await page({ path, viewport, reducedMotion: 'reduce' });
    await main.alive(reader);
    let asked = 0;
    await play(reader, lesson, false, 0, async (where) => {
      const [offered, hidden] = await reader.evaluate(() => {
        // What there is to press next stands over the panel's foot.
        const panel = document.querySelector('#panel')!.getBoundingClientRect();
        const bar = document.querySelector('#panel .act')?.getBoundingClientRect();
        const foot = Math.min(panel.bottom, bar?.height ? bar.top : Infinity);
        const all = [
          ...document.querySelectorAll('#panel ul > li:has(button), #panel fieldset label'),
        ].filter((each) => each.checkVisibility() && !each.closest('details'));
        const under = all.filter((each) => each.getBoundingClientRect().bottom > foot + 1);
        return [all.length, under.map((each) => each.textContent!.trim())] as const;
      });
      expect.soft(hidden, where).toEqual([]);
      if (offered > 1) asked += 1;
    });
    expect(asked).toBeGreaterThan(8);
    await reader.context().close();
  },
);

/** Things to press in the head that lie on one another. */
const crowded = (reader: Page): Promise<string[]> =>
  reader.evaluate(() => {
    const boxes = [...document.querySelectorAll('header li, header button, header a')]
      .filter(
        (element) => element.checkVisibility() && !element.closest('li')?.contains(element.parentElement),
      )
      .map((element) => ({ words: element.textContent!.trim(), box: element.getBoundingClientRect() }));
    return boxes.flatMap(({ words, box }, k) =>
      boxes
        .slice(k + 1)
        .filter(
          (other) =>
            box.left < other.box.right - 1 &&
            other.box.left < box.right - 1 &&
            box.top < other.box.bottom - 1 &&
            other.box.top < box.bottom - 1,
        )
        .map((other) => `${words} on ${other.words}`),
    );
  });

test.each(['', '/de'])('the head of %s/lessons has room for all it offers', async (base) => {
  for (const viewport of [BEAMER, { width: 1280, height: 720 }, SQUARER]) {
    const reader = await page({ path: `${base}${main.PATH}?view=class`, viewport });
    await main.alive(reader);
    expect.soft(await crowded(reader), `${viewport.width} wide`).toEqual([]);
    expect(await reader.locator('header .tabs button').count()).toBe(4);
    await reader.context().close();
  }
});

test('a clicker leads on, stops where a number or an answer is wanted, and Esc leaves', async () => {
  const reader = await page({ path: `${main.PATH}?view=class`, viewport: BEAMER, reducedMotion: 'reduce' });
  await main.alive(reader);
  const on = async (phase: string) => {
    for (let i = 0; i < 8 && (await main.phaseOf(reader)) !== phase; i += 1) {
      await reader.keyboard.press('PageDown');
      await reader.waitForTimeout(120);
    }
    expect(await main.phaseOf(reader)).toBe(phase);
  };
  // The entry check is the class's to answer, or its teacher's to pass by.
  await click(reader, 'Begin the lesson');
  await click(reader, 'Skip the questions');
  await on('predict');
  // A class that has gone past the entry check and looks back is led on again, not asked.
  for (let i = 0; i < 8 && !(await reader.locator('#panel h2').textContent())?.includes('know'); i += 1)
    await reader.keyboard.press('PageUp');
  expect(await reader.locator('#panel h2').textContent()).toContain('know');
  await reader.keyboard.press('PageDown');
  await reader.locator('#panel h2', { hasNotText: 'know' }).waitFor();
  await on('predict');
  // No number yet: the clicker goes to where one is set, and no further.
  for (let i = 0; i < 6; i += 1) await reader.keyboard.press('PageDown');
  expect(await main.phaseOf(reader)).toBe('predict');
  // What was typed is taken and locked in by one press.
  await reader.fill('#panel .typed input', '30');
  await reader.keyboard.press('PageDown');
  await main.waitForPhase(reader, 'locked');
  await on('observe');
  for (let i = 0; i < 6; i += 1) await reader.keyboard.press('PageDown');
  expect(await main.phaseOf(reader)).toBe('observe');
  expect(await reader.evaluate(() => document.activeElement?.closest('#panel ul') !== null)).toBe(true);
  await reader.keyboard.press('Escape');
  await reader.waitForFunction(
    () => !location.search.includes('view') && !document.querySelector('main.front'),
  );
  expect(problemsOf(reader)).toEqual([]);
  await reader.context().close();
});
