/** A lesson played through its screen, whatever it is made of: one press a turn, all right or as wrong as can be. */
import { expect } from 'vitest';
import type { Page } from 'playwright-core';
import { guessesFlow, isTaught, type Lesson, type Question, type Step } from '#lesson';
import { phaseOf } from './lesson.ts';

/** The first thing to press that leads on. */
export const act = (reader: Page) => reader.locator('#panel .act .press').first();

/** Presses it by key, so that the browser shows where the focus goes. */
const goOn = (reader: Page) => act(reader).press('Enter');

/** Presses the card of an option; one already tried is no button any more. */
async function card(reader: Page, { options }: Question, option: string): Promise<void> {
  await reader.locator('#panel ul > li').nth(options.indexOf(option)).getByRole('button').click();
}

async function answer(reader: Page, question: Question, wrongly: boolean): Promise<void> {
  const wrong = question.options.filter((option) => option !== question.right);
  if (wrongly)
    for (const option of wrong) {
      await card(reader, question, option);
      await expect.poll(() => reader.locator('#panel .reason').count()).toBe(1);
    }
  await card(reader, question, question.right);
}

async function predict(reader: Page, step: Step, wrongly: boolean): Promise<void> {
  if (!isTaught(step) || !step.predict) throw new Error(`${step.id} predicts nothing`);
  if (guessesFlow(step.predict)) {
    const typed = reader.locator('#panel .typed input');
    await typed.fill(String(wrongly ? step.predict.high_L_s : step.predict.low_L_s + 20));
    await typed.press('Tab');
  } else {
    const { options, right } = step.predict;
    const said = wrongly ? options.find((option) => option !== right)! : right;
    await reader.locator('#panel input[type=radio]').nth(options.indexOf(said)).check({ force: true });
  }
  await goOn(reader);
}

/** One press, by the phase the screen is in; gives the phase it was. */
export async function turn(reader: Page, step: Step, wrongly: boolean): Promise<string> {
  const phase = await phaseOf(reader);
  if (phase === 'predict') await predict(reader, step, wrongly);
  else if (phase === 'asking' && step.kind === 'entry') {
    for (const item of step.questions) {
      const option = wrongly ? item.options.find((each) => each !== item.right)! : item.right;
      await expect.poll(() => reader.locator('#panel ul > li').count()).toBe(item.options.length);
      await card(reader, item, option);
    }
  } else if (['observe', 'explain', 'again'].includes(phase) && isTaught(step))
    await answer(reader, step[phase as 'observe' | 'explain' | 'again']!, wrongly);
  else if (phase === 'mending') {
    // The repairs are fetched; pressed before they stand, "go on" would only say what is missing.
    await reader.locator('#panel li .press').first().waitFor();
    for (const button of await reader.locator('#panel li .press').all()) await button.click();
    await goOn(reader);
  } else if (phase !== 'reveal') await goOn(reader);
  return phase;
}

/**
 * Plays from the step at `from` to the lesson's end; gives every step and phase on the way. `look` is called before
 * each press.
 */
export async function play(
  reader: Page,
  lesson: Lesson,
  wrongly: boolean,
  from = 0,
  look?: (where: string) => Promise<void>,
): Promise<string[]> {
  const seen: string[] = [];
  let index = from;
  for (let presses = 0; presses < 40 * lesson.steps.length; presses++) {
    const step = lesson.steps[index]!;
    await look?.(`${step.id} ${await phaseOf(reader)}`);
    const before = await reader.locator('#panel').textContent();
    const phase = await turn(reader, step, wrongly);
    seen.push(`${step.id} ${phase}`);
    await expect.poll(() => reader.locator('#panel').textContent(), { timeout: 10_000 }).not.toBe(before);
    if ((await phaseOf(reader)) === 'finished') return seen;
    if (phase !== 'settled' && phase !== 'mending') continue;
    await expect.poll(() => phaseOf(reader), { timeout: 10_000 }).not.toBe(phase);
    index += 1;
  }
  throw new Error(`never ended: ${seen.slice(-5).join(', ')}`);
}
