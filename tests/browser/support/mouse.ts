/** A reader with a mouse, quick through the lesson to where a test begins. */
import type { Page } from 'playwright-core';
import type { FaultStep } from '#lesson';
import { phaseOf, steps, waitForPhase } from './lesson.ts';

export const click = (page: Page, name: string): Promise<void> =>
  page.locator('#panel').getByRole('button', { name, exact: true }).click();

/** Past the words of a step to its prediction. */
export async function begin(page: Page): Promise<void> {
  for (const name of ['Begin the lesson', 'Skip the questions']) {
    const first = page.locator('#panel').getByRole('button', { name, exact: true });
    if (await first.count()) await first.click();
  }
  await click(page, 'Make a prediction');
  await waitForPhase(page, 'predict');
}

export async function lock(page: Page, flow: number): Promise<void> {
  await page.fill('#panel .typed input', String(flow));
  await page.press('#panel .typed input', 'Enter');
  await click(page, 'Lock it in');
  await waitForPhase(page, 'locked');
}

/** Presses an answer by its place on the cards; the right one unless told. */
export async function answer(
  page: Page,
  { options, right }: FaultStep['observe'] | FaultStep['explain'],
  option = right,
): Promise<void> {
  const was = await phaseOf(page);
  await page.locator('#panel ul > li').nth(options.indexOf(option)).getByRole('button').click();
  if (option === right) await page.waitForSelector(`main:not(.phase-${was})`);
}

/** Plays from the words of step `from` on until step `to` (or the mending half) stands in `phase`. */
export async function playTo(page: Page, phase: string, from = 0, to = steps.length): Promise<void> {
  for (let i = from; ; i += 1) {
    const step = steps[i];
    const there = async () => i === to && (await phaseOf(page)) === phase;
    if (!step || (await there())) return;
    await begin(page);
    if (await there()) return;
    await lock(page, 20);
    if (await there()) return;
    await click(page, 'Put the fault in');
    await waitForPhase(page, 'observe');
    if (await there()) return;
    await answer(page, step.observe);
    if (await there()) return;
    await answer(page, step.explain);
    if (await there()) return;
    await click(page, i + 1 < steps.length ? 'Next fault' : 'Now put it right');
    await waitForPhase(page, i + 1 < steps.length ? 'brief' : 'mending');
  }
}
