/** A finger: everything to press on a phone is 44 px, or has that much room to itself. */
import { describe, expect, test } from 'vitest';
import type { Page } from 'playwright-core';
import * as main from './support/lesson.ts';
import { answer, begin, click, lock, playTo } from './support/mouse.ts';
import { page, problemsOf } from './support/page.ts';

const FINGER = 44;

/**
 * What can be pressed and is smaller than a finger. A link inside a sentence is as high as its line, and a
 * range laid unseen over a plot takes no finger: the plot under it does. The stations of a long lesson share one
 * row: as high as a finger, and 24 px wide at least (`phone.browser.test.ts`).
 */
const small = (reader: Page): Promise<string[]> =>
  reader.evaluate((finger) => {
    const inSentence = (element: Element) =>
      element.matches('a') && /\S/.test(element.parentElement?.firstChild?.textContent ?? '')
        ? element.parentElement!.firstChild !== element
        : false;
    return (
      [...document.querySelectorAll('button, summary, a[href], label:has(input), input, select')]
        .filter(
          (element) => element.checkVisibility({ visibilityProperty: true }) && !element.matches('.skip'),
        )
        .filter((element) => getComputedStyle(element).pointerEvents !== 'none' && !inSentence(element))
        // A radio, and a field with its unit, are pressed by the label they stand in.
        .filter(
          (element) =>
            !element.matches('label input[type=radio], label:has(input:is([type=number], [type=text]))'),
        )
        .map((element) => ({ element, box: element.getBoundingClientRect() }))
        .filter(({ box }) => box.width > 1 && box.height > 1)
        .filter(
          ({ element, box }) =>
            Math.round(box.width) < (element.matches('header nav .node') ? 24 : finger) ||
            Math.round(box.height) < finger,
        )
        .map(({ element, box }) => `${element.outerHTML.slice(0, 90)} ${box.width}x${box.height}`)
    );
  }, FINGER);

/** Things to press that lie over one another. */
const crowded = (reader: Page): Promise<string[]> =>
  reader.evaluate(() => {
    const boxes = [...document.querySelectorAll('header button, header a, header label, .tabs button')]
      .filter((element) => element.checkVisibility())
      .map((element) => ({ words: element.textContent?.trim(), box: element.getBoundingClientRect() }));
    return boxes.flatMap(({ words, box }, i) =>
      boxes
        .slice(i + 1)
        .filter(
          ({ box: other }) =>
            Math.min(box.right, other.right) - Math.max(box.left, other.left) > 1 &&
            Math.min(box.bottom, other.bottom) - Math.max(box.top, other.top) > 1,
        )
        .map((other) => `${words} under ${other.words}`),
    );
  });

async function expectForFingers(reader: Page, where: string): Promise<void> {
  for (const tab of ['The crossing', 'The ledger', 'Pressure walk']) {
    await reader.getByRole('button', { name: tab, exact: true }).click();
    expect.soft(await small(reader), `${where}, ${tab}`).toEqual([]);
  }
  expect.soft(await crowded(reader), where).toEqual([]);
  const over = await reader.evaluate(
    () => document.documentElement.scrollWidth - document.documentElement.clientWidth,
  );
  expect.soft(over, where).toBe(0);
}

describe.each([
  { width: 320, height: 640 },
  { width: 390, height: 844 },
])('a phone of $width x $height', (viewport) => {
  test('has room for a finger through the phases of a step', async () => {
    const [step] = main.steps;
    const reader = await page({
      path: main.PATH,
      viewport,
      reducedMotion: 'reduce',
      context: { hasTouch: true, isMobile: true },
    });
    await main.alive(reader);
    expect(await reader.evaluate(() => matchMedia('(pointer: coarse)').matches)).toBe(true);
    await reader.getByRole('button', { name: 'Units and paper', exact: true }).click();
    for (const summary of await reader.locator('#panel summary').all()) await summary.click();
    await expectForFingers(reader, 'opening, all unfolded');
    await begin(reader);
    await expectForFingers(reader, 'predict');
    await lock(reader, 20);
    await click(reader, 'Put the fault in');
    await main.waitForPhase(reader, 'observe');
    await expectForFingers(reader, 'observe');
    await answer(reader, step!.observe);
    await answer(reader, step!.explain);
    await expectForFingers(reader, 'settled');
    await click(reader, 'Next fault');
    await playTo(reader, 'mending', 1);
    await click(reader, `Mend ${main.titleOf('sag')}`);
    await expectForFingers(reader, 'mending');
    expect(problemsOf(reader)).toEqual([]);
    await reader.context().close();
  });
});
