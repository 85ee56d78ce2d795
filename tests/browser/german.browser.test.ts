/** The main lesson in German: begun in English, taken up in German, and nothing cut, laid over or pushed aside. */
import { expect, test } from 'vitest';
import type { Page } from 'playwright-core';
import { alive, indexOf, lesson, PATH, phaseOf } from './support/lesson.ts';
import { page, problemsOf } from './support/page.ts';
import { turn } from './support/play.ts';

const GERMAN = `/de${PATH}`;

/** Words of the drawing and the walk that lie on one another or stick out of their picture. */
function crowded(reader: Page): Promise<string[]> {
  return reader.evaluate(() => {
    const found: string[] = [];
    for (const picture of document.querySelectorAll('main svg')) {
      if (!picture.checkVisibility()) continue;
      const frame = picture.getBoundingClientRect();
      const words = [...picture.querySelectorAll('text')]
        .filter((text) => text.checkVisibility() && text.textContent?.trim())
        .map((text) => ({ text: text.textContent!.trim(), box: text.getBoundingClientRect() }));
      words.forEach(({ text, box }, i) => {
        if (box.left < frame.left - 2 || box.right > frame.right + 2) found.push(`cut: ${text}`);
        for (const other of words.slice(i + 1)) {
          const across = Math.min(box.right, other.box.right) - Math.max(box.left, other.box.left);
          const down = Math.min(box.bottom, other.box.bottom) - Math.max(box.top, other.box.top);
          // Boxes of letters reach over and under what is drawn of them.
          if (across > 2 && down > box.height / 2) found.push(`${text} on ${other.text}`);
        }
      });
    }
    return found;
  });
}

async function expectRoom(reader: Page): Promise<void> {
  expect(await reader.evaluate(() => document.documentElement.scrollWidth - innerWidth)).toBeLessThanOrEqual(
    0,
  );
  expect(await crowded(reader)).toEqual([]);
}

/** Plays on until the step is in the phase, looking at the picture of every phase on the way. */
async function playTo(reader: Page, id: string, phase: string, look: boolean): Promise<void> {
  const step = lesson.steps[indexOf(id)]!;
  for (let presses = 0; presses < 12; presses++) {
    const now = await phaseOf(reader);
    if (now === phase) return;
    if (look && now !== 'reveal') await expectRoom(reader);
    await turn(reader, step, false);
    await expect.poll(() => phaseOf(reader), { timeout: 10_000 }).not.toBe(now);
  }
  throw new Error(`${id} never came to ${phase}`);
}

/** Past the introduction and the entry check, to the first fault. */
async function toFirstFault(reader: Page): Promise<void> {
  await reader.locator('#panel .act .press').first().click();
  await reader.locator('#panel .act .press').nth(1).click();
}

test('a step begun in English goes on in German from where it stood', async () => {
  const reader = await page({ path: PATH, reducedMotion: 'reduce' });
  await alive(reader);
  expect(await reader.getAttribute('html', 'lang')).toBe('en');
  await toFirstFault(reader);
  await playTo(reader, 'sag', 'locked', false);
  await reader.getByRole('link', { name: 'Deutsch' }).click();
  await reader.waitForURL(`**${GERMAN}`);
  await alive(reader);
  expect(await phaseOf(reader)).toBe('locked');
  expect(await reader.getAttribute('html', 'lang')).toBe('de');
  await playTo(reader, 'sag', 'settled', true);
  expect(await reader.getByTestId('flow').textContent()).toBe('36,5');
  expect(await reader.textContent('#panel')).toMatch(/\d,\d\sl\/s/);
  expect(await reader.textContent('main')).not.toMatch(/\d\.\d\s(?:L\/s|l\/s|m)\b/);
  await reader.getByRole('link', { name: 'English' }).click();
  await reader.waitForURL(`**${PATH}`);
  await alive(reader);
  expect(await phaseOf(reader)).toBe('settled');
  expect(await reader.getByTestId('flow').textContent()).toBe('36.5');
  expect(problemsOf(reader)).toEqual([]);
  await reader.context().close();
});

test.each([
  [1440, 900],
  [1920, 1080],
  [390, 844],
  [320, 700],
])('German words find room at %i x %i', async (width, height) => {
  const reader = await page({ path: GERMAN, viewport: { width, height }, reducedMotion: 'reduce' });
  await alive(reader);
  await expectRoom(reader);
  await toFirstFault(reader);
  await playTo(reader, 'sag', 'settled', true);
  await expectRoom(reader);
  expect(problemsOf(reader)).toEqual([]);
  await reader.context().close();
});

test('what is not in German is linked to in English and says so', async () => {
  const reader = await page({ path: '/de' });
  // Its files are named from within the folder.
  expect(new URL(reader.url()).pathname).toBe('/de/');
  const english = reader.locator('ol a[hreflang=en]');
  expect(await english.count()).toBeGreaterThan(0);
  for (const link of await english.all()) expect(await link.getAttribute('lang')).toBe('en');
  await english.first().click();
  expect(await reader.getAttribute('html', 'lang')).toBe('en');
  expect(problemsOf(reader)).toEqual([]);
  await reader.context().close();
});
