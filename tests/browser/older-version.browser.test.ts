/** A lesson changes under its learner: what was shown stays with the aims, and the learner is told what was kept. */
import { Buffer } from 'node:buffer';
import { expect, test } from 'vitest';
import type { Page } from 'playwright-core';
import { loadExample } from '#lesson-load';
import * as main from './support/lesson.ts';
import { answer, begin, click, lock } from './support/mouse.ts';
import { page, problemsOf } from './support/page.ts';

const { structure, words } = loadExample();
const file = (name: string, content: string) => ({
  name,
  mimeType: 'text/plain',
  buffer: Buffer.from(content),
});

async function take(reader: Page, json: string, text: string, told: string): Promise<void> {
  await reader.goto('/lessons/own');
  await reader.waitForSelector('main[data-alive]');
  const files = [file('lesson.json', json), file('text.en.md', text)];
  await reader.locator('input[type=file]').first().setInputFiles(files);
  await reader.locator('.take [role=status]', { hasText: told }).waitFor();
  await reader.getByRole('link', { name: 'Play One small fault' }).click();
  await main.alive(reader);
}
const press = (reader: Page, name: string | RegExp) =>
  reader.locator('#panel').getByRole('button', { name }).first().click();

test('a newer version keeps what was shown by aim, says so, and shows the rest as from the older one', async () => {
  const reader = await page({ reducedMotion: 'reduce' });
  // The first version teaches two aims: one with the sag, one with a question after the mending.
  const first = JSON.parse(structure.content);
  const asked = {
    id: 'after',
    kind: 'case',
    role: 'case',
    aim: 'why',
    explain: { options: ['left', 'spent', 'none'], right: 'spent' },
  };
  const question = `
## after: After the mending

### brief

Look back.

### explain: Where was the push?

#### left: Left in the fan

**The stored-push idea.** It seems that push can wait. It cannot. It is made and spent at once.

#### spent: Spent in the bellies

It was spent where the air was turned.

#### none: There was none

**The weak-fan idea.** Little air came out, so the fan seems to give nothing. It gave more than before.

## end`;
  const one = JSON.stringify({ ...first, steps: [asked, ...first.steps] });
  await take(reader, one, words.content.replace('\n## end', question), 'is taken in');
  await press(reader, 'Begin the lesson');
  await reader.locator('#panel .act button').first().click();
  await press(reader, /Left in the fan/);
  await press(reader, /Spent in the bellies/);
  await reader.waitForSelector('main.phase-settled');
  await reader.locator('#panel .act button').first().click();
  await press(reader, 'Make a prediction');
  await lock(reader, 36);
  await press(reader, 'Put the fault in');
  await reader.waitForSelector('main.phase-observe');
  await press(reader, /It slid across/);
  await press(reader, /It climbs faster/);
  await reader.waitForSelector('main.phase-explain');

  // The second has only the sag, and no longer the second aim.
  const two = JSON.stringify({ ...first, version: 2, aims: ['predict'] });
  const less = words.content.replace('### why: You can say where the push was spent\n', '');
  await take(reader, two, less, 'takes the place of version 1');
  const alert = (await reader.textContent('[role=alert]'))!;
  expect(alert).toMatch(/another version of this lesson: 1, and this is 2.*starts at its first step/);
  expect(alert).toMatch(/this aim is kept: “You can say which way the flow goes before a fault goes in”/);
  expect(alert).toMatch(/no longer has this aim: “You can say where the push was spent”.*version 1/);
  expect(await main.phaseOf(reader)).toBe('brief');

  await reader.goto('/practice');
  await reader.getByRole('heading', { name: 'One small fault' }).waitFor();
  const record = () => reader.locator('section', { hasText: 'One small fault' }).first();
  const text = (await record().textContent())!.replace(/\s+/g, ' ');
  expect(text).toContain('not done yet in this one');
  expect(text).toMatch(/before a fault goes in: 1 of 2 \(version 1\)/);
  expect(text).toMatch(
    /From version 1: aims the lesson no longer has\s*You can say where the push was spent: 0 of 1/,
  );
  expect(text).toContain('The fixed-toll idea (version 1)');
  await reader.getByText('Answers in version 1, first and last').click();
  const rows = await record().locator('tbody tr').allTextContents();
  expect(rows.map((row) => row.replace(/\s+/g, ' ').trim())).toContain(
    'What did the dashed line do?It slid acrossIt climbs faster, from the same corner',
  );

  // Until everything is deleted.
  await reader.getByRole('button', { name: 'Delete everything' }).click();
  await reader.getByRole('button', { name: 'Yes, delete everything' }).click();
  await reader.getByText('Everything is deleted.').waitFor();
  expect(await reader.evaluate(() => Object.keys(localStorage))).toEqual([]);
  expect(await reader.getByRole('heading', { name: 'One small fault' }).count()).toBe(0);
  expect(problemsOf(reader)).toEqual([]);
  await reader.context().close();
});

test('a built-in lesson reads a place of an older version by its steps, and loses nothing of it', async () => {
  const reader = await page({ path: main.PATH, reducedMotion: 'reduce' });
  await main.alive(reader);
  const [step] = main.steps;
  await begin(reader);
  await lock(reader, 31.5);
  await click(reader, 'Put the fault in');
  await main.waitForPhase(reader, 'observe');
  await answer(reader, step!.observe);
  const older = await reader.evaluate(
    ([key, version]) => {
      const saved = JSON.parse(localStorage.getItem(key as string)!);
      saved.lessonVersion = version;
      delete saved.account;
      const text = JSON.stringify(saved);
      localStorage.setItem(key as string, text);
      return text;
    },
    [main.SAVED, main.lesson.version + 7] as const,
  );
  await reader.reload();
  await main.alive(reader);
  expect(await reader.textContent('[role=alert]')).toMatch(
    /What you showed for this aim is kept: .*You can say which way the flow goes.* It was read off the steps/,
  );
  expect(await main.phaseOf(reader)).toBe('brief');
  expect(await reader.evaluate((key) => localStorage.getItem(`${key}.set-aside.1`), main.SAVED)).toBe(older);
  await reader.reload();
  await main.alive(reader);
  expect(await reader.locator('[role=alert]').count()).toBe(0);
  await reader.goto('/practice');
  await reader.getByText(`Answers in version ${main.lesson.version + 7}, first and last`).click();
  const right = main.text.sections[`${step!.id}/observe/${step!.observe.right}`]!.title;
  expect(await reader.locator('tbody').textContent()).toContain(right);
  expect(problemsOf(reader)).toEqual([]);
  await reader.context().close();
});
