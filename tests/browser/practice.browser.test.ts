/** The practice record goes from one browser to another as a file; no file, however broken, harms what is there. */
import { Buffer } from 'node:buffer';
import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import type { Page } from 'playwright-core';
import { NO_PRACTICE, withFinished } from '#lesson-practice';
import * as main from './support/lesson.ts';
import { page, problemsOf } from './support/page.ts';

const KEY = 'lost-litres.practice';
const aims = main.lesson.aims.map((aim) => ({ aim, asked: 2, right: 1 }));
const shown = { version: main.lesson.version, aims, ideas: [], answers: [] };
const record = (place: string, day: string) =>
  withFinished(NO_PRACTICE, place, shown, new Date(`${day}T09:00:00.000Z`));

async function open(practice?: object): Promise<Page> {
  const reader = await page({ path: '/practice' });
  if (practice) {
    await reader.evaluate(
      ([key, text]) => localStorage.setItem(key!, text!),
      [KEY, JSON.stringify(practice)],
    );
    await reader.reload();
  }
  await reader.waitForSelector('main[data-alive]');
  return reader;
}
const kept = (reader: Page) => reader.evaluate((key) => localStorage.getItem(key), KEY);
const load = (reader: Page, name: string, content: string | Buffer) =>
  reader
    .getByLabel('Take in a file')
    .setInputFiles({ name, mimeType: 'application/json', buffer: Buffer.from(content) });

test('is saved as a file and taken in elsewhere, with what is there', async () => {
  const here = await open(record(main.SLUG, '2026-03-01'));
  const [download] = await Promise.all([
    here.waitForEvent('download'),
    here.getByRole('button', { name: 'Save as a file' }).click(),
  ]);
  expect(download.suggestedFilename()).toMatch(/^lost-litres-practice-\d{4}-\d\d-\d\d\.json$/);
  const content = readFileSync((await download.path())!, 'utf8');
  expect(JSON.parse(content)).toEqual(record(main.SLUG, '2026-03-01'));
  await here.context().close();

  const there = await open(record('hang-it-straight', '2026-04-01'));
  await load(there, 'mine.json', content);
  await there.getByText('mine.json is taken in').waitFor();
  expect(Object.keys(JSON.parse((await kept(there))!).lessons).sort()).toEqual([
    main.SLUG,
    'hang-it-straight',
  ]);
  await there.getByRole('heading', { name: main.text.title }).waitFor();
  await there.reload();
  await there.getByRole('heading', { name: main.text.title }).waitFor();
  expect(problemsOf(there)).toEqual([]);
  await there.context().close();
});

test('is not harmed by any file', async () => {
  const mine = record(main.SLUG, '2026-03-01');
  const reader = await open(mine);
  const before = await kept(reader);
  const spoilt = (change: object) => JSON.stringify({ ...mine, ...change });
  const files: [string, string | Buffer, RegExp][] = [
    ['empty.json', '', /cannot be read as JSON/],
    ['cut.json', JSON.stringify(mine).slice(0, 80), /cannot be read as JSON/],
    ['picture.json', Buffer.from([0x89, 0x50, 0x4e, 0x47, 0, 1, 2, 3]), /cannot be read as JSON/],
    ['rig.json', '{"name":"a rig","run":[]}', /not a practice record of ours/],
    ['null.json', 'null', /not a practice record of ours/],
    ['half.json', spoilt({ lessons: { [main.SLUG]: { finished: 'yesterday' } } }), /not a practice record/],
    ['older.json', spoilt({ older: { a: [{ version: 'one' }] } }), /not a practice record/],
    ['newer.json', spoilt({ format: 9 }), /newer version/],
    ['large.json', Buffer.alloc(2_500_000, 32), /larger than 2,?000 kB/],
  ];
  for (const [name, content, words] of files) {
    await load(reader, name, content);
    await reader.locator('[role=status]', { hasText: name }).waitFor();
    const told = await reader.textContent('[role=status]');
    expect(told, name).toMatch(words);
    expect(told, name).toContain('Nothing was changed.');
    expect(await kept(reader), name).toBe(before);
    expect(await reader.getByRole('heading', { name: main.text.title }).count(), name).toBe(1);
  }
  // A mended one is taken in right after, under the same name.
  await load(reader, 'large.json', JSON.stringify(record('hang-it-straight', '2026-04-01')));
  await reader.getByText('large.json is taken in').waitFor();
  expect(problemsOf(reader)).toEqual([]);
  await reader.context().close();
});

test('is printed without the buttons', async () => {
  const reader = await open(record(main.SLUG, '2026-03-01'));
  await reader.emulateMedia({ media: 'print' });
  expect(await reader.getByRole('heading', { name: main.text.title }).isVisible()).toBe(true);
  expect(await reader.getByText('Save as a file').isVisible()).toBe(false);
  expect(await reader.getByText('Delete everything').isVisible()).toBe(false);
  await reader.context().close();
});
