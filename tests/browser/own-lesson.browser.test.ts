/** A lesson of the reader's own: dropped in, checked, kept, played, taken out; never at the cost of anything else. */
import { Buffer } from 'node:buffer';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import type { Page } from 'playwright-core';
import { loadExample, loadGuide } from '#lesson-load';
import * as main from './support/lesson.ts';
import { begin, lock } from './support/mouse.ts';
import { page, problemsOf, site } from './support/page.ts';

const example = loadExample();
const OWN = '/lessons/own';
const SLUG = 'one-small-fault';

interface Files {
  structure?: string;
  words?: string;
}
const chosen = ({ structure, words }: Files) => [
  ...(structure === undefined
    ? []
    : [{ name: 'lesson.json', mimeType: 'application/json', buffer: Buffer.from(structure) }]),
  ...(words === undefined
    ? []
    : [{ name: 'text.en.md', mimeType: 'text/markdown', buffer: Buffer.from(words) }]),
];
const good = { structure: example.structure.content, words: example.words.content };

async function open(options: Parameters<typeof page>[0] = {}): Promise<Page> {
  const reader = await page({ path: OWN, reducedMotion: 'reduce', ...options });
  await reader.waitForSelector('main[data-alive]');
  return reader;
}
const told = (reader: Page, hasText: string) => reader.locator('.take [role=status]', { hasText }).waitFor();
const take = (reader: Page, files: Files) =>
  reader.locator('input[type=file]').first().setInputFiles(chosen(files));
async function taken(reader: Page, files: Files = good): Promise<void> {
  await take(reader, files);
  await told(reader, 'is taken in and kept');
}
async function start(reader: Page, title = 'One small fault'): Promise<void> {
  await reader.getByRole('link', { name: `Play ${title}` }).click();
  await main.alive(reader);
}
const stored = (reader: Page) =>
  reader.evaluate(() => Object.fromEntries(Object.entries(localStorage).sort()) as Record<string, string>);
const phase = (reader: Page, name: string) => reader.waitForSelector(`main.phase-${name}`);
const press = (reader: Page, name: string | RegExp) =>
  reader.locator('#panel').getByRole('button', { name }).first().click();

const recorded = (reader: Page) =>
  reader.waitForFunction(() => localStorage.getItem('lost-litres.practice') !== null);

/** From the first words of the example to its end, the first explanation wrong. */
async function playThrough(reader: Page): Promise<void> {
  await press(reader, 'Put the first fault in');
  await press(reader, 'Make a prediction');
  await lock(reader, 30);
  await press(reader, 'Put the fault in');
  await phase(reader, 'observe');
  await press(reader, /It climbs faster/);
  await phase(reader, 'explain');
  await press(reader, /climb out of every belly/);
  await press(reader, /must turn in every belly/);
  await phase(reader, 'again');
  await press(reader, /More than this one/);
  await phase(reader, 'settled');
  await press(reader, 'Now put it right');
  await phase(reader, 'mending');
  await press(reader, /^Mend/);
  await press(reader, 'Finish');
  await phase(reader, 'finished');
}

test('is played from its two files to its end, and its place comes back', async () => {
  const reader = await open();
  await taken(reader);
  expect(await reader.locator('.list').textContent()).toContain('version 1, about 8 minutes');
  await start(reader);
  // The same engine: the healthy run of the main lesson's rig, and in time its likely band.
  main.expectEngine(await main.read(reader), [{ label: 'Healthy run', faults: [] }]);
  await reader.getByTestId('likely').waitFor();
  await press(reader, 'Put the first fault in');
  await press(reader, 'Make a prediction');
  await lock(reader, 30);
  await reader.reload();
  await main.alive(reader);
  await phase(reader, 'locked');
  await press(reader, 'Put the fault in');
  await phase(reader, 'observe');
  const { fault } = JSON.parse(good.structure).steps[0];
  expect((await main.read(reader)).big).toBe(main.shownFlow(main.flowWith([fault])));
  await reader.getByRole('button', { name: 'Units and paper' }).click();
  await reader.getByRole('button', { name: 'Start over' }).click();
  await phase(reader, 'brief');
  await playThrough(reader);
  await recorded(reader);
  const kept = await stored(reader);
  expect(Object.keys(kept).filter((key) => key.includes('progress'))).toEqual([
    `lost-litres.progress.own:${SLUG}`,
  ]);
  expect(JSON.parse(kept['lost-litres.practice']!).lessons[`own:${SLUG}`].aims).toHaveLength(2);
  await reader.goto('/practice');
  await reader.getByRole('heading', { name: 'One small fault' }).waitFor();
  expect(await reader.textContent('main')).toContain('You can say which way the flow goes');
  // The wrong answer is kept beside the last one; its idea was changed by the second question.
  expect(await reader.locator('tbody').textContent()).toContain('The air has to climb out of every belly');
  expect(await reader.textContent('main')).not.toContain('The uphill idea');
  expect(problemsOf(reader)).toEqual([]);
  await reader.context().close();
});

test('stands before a class like any other', async () => {
  const reader = await open();
  await taken(reader);
  await start(reader);
  await reader.getByRole('button', { name: 'Front of class' }).click();
  await reader.waitForSelector('main[data-picture=scene]');
  expect(new URL(reader.url()).search).toBe(`?lesson=${SLUG}&view=class`);
  await reader.reload();
  await main.alive(reader);
  await reader.waitForSelector('main[data-picture=scene]');
  await reader.keyboard.press('Escape');
  await reader.waitForSelector('main:not([data-picture])');
  expect(problemsOf(reader)).toEqual([]);
  await reader.context().close();
});

describe('a lesson that does not hold', () => {
  test('is told of by file, place and remedy, and harms nothing', async () => {
    const reader = await page({ path: main.PATH, reducedMotion: 'reduce' });
    await main.alive(reader);
    await begin(reader);
    await lock(reader, 31.5);
    await reader.goto(OWN);
    await reader.waitForSelector('main[data-alive]');
    await taken(reader);
    const before = await stored(reader);
    expect(Object.keys(before)).toContain(main.SAVED);
    const same = JSON.stringify({ ...JSON.parse(good.structure), slug: main.SLUG, minutes: 'ten' });
    const cases: [string, Files, RegExp][] = [
      [
        'cut short',
        { ...good, structure: good.structure.slice(0, 300) },
        /lesson\.json, line \d+, column \d+: found .+; allowed is .+/,
      ],
      [
        'a slug of ours, broken',
        { ...good, structure: same },
        /lesson\.json, minutes: found "ten"; allowed is a number/,
      ],
      [
        'a scale without the answer on it',
        { ...good, structure: good.structure.replace('"low_L_s": 0', '"low_L_s": 38') },
        /lesson\.json, steps\[0\]\.predict: found 38 to 60; allowed is a scale with 36\.5 on it/,
      ],
      [
        'missing feedback',
        { ...good, words: good.words.replace(/#### shifted[^#]*/, '') },
        /text\.en\.md, sag\/observe\/shifted, line \d+: found nothing; allowed is a section/,
      ],
      ['not a lesson at all', { structure: '[]', words: '\u0001' }, /lesson\.json, .*found nothing/],
      [
        'in another encoding',
        { ...good, words: '\u0000#\u0000 \u0000A' },
        /line 1: .*save the file again as UTF-8/,
      ],
    ];
    for (const [name, files, words] of cases) {
      await take(reader, files);
      await told(reader, 'not taken in');
      expect(await reader.locator('.lines').textContent(), name).toMatch(words);
      expect(await stored(reader), name).toEqual(before);
    }
    await reader
      .locator('input[type=file]')
      .first()
      .setInputFiles([
        { name: 'lesson.json', mimeType: 'application/json', buffer: Buffer.alloc(400_000, 32) },
        ...chosen({ words: good.words }),
      ]);
    await told(reader, 'larger than 300 kB');
    expect(await stored(reader)).toEqual(before);
    await reader.goto(main.PATH);
    await main.alive(reader);
    expect(await main.phaseOf(reader)).toBe('locked');
    expect(problemsOf(reader)).toEqual([]);
    await reader.context().close();
  });

  test('has no words that run', async () => {
    const reader = await open();
    await reader.evaluate(() =>
      Object.assign(window, { ran: 0, alert: () => ((window as never as { ran: number }).ran += 1) }),
    );
    const ways = [
      '<script>alert(1)</script>',
      '<img src=x onerror=alert(1)>',
      '| a |\n| - |\n| <img src=x onerror=alert(1)> |',
      '[press](javascript:alert(1))',
      '[press](data:text/html,<script>alert(1)</script>)',
      '![a](https://example.org/a.png)',
    ];
    for (const way of ways) {
      await take(reader, {
        ...good,
        words: good.words.replace('A bathroom sits', `${way}\n\nA bathroom sits`),
      });
      await told(reader, 'not taken in');
      expect(await reader.locator('.lines').textContent(), way).toContain('text.en.md, intro');
    }
    const heading = good.words.replace('It slid across', 'It <img src=x onerror=alert(1)> slid');
    await take(reader, { ...good, words: heading });
    await reader.locator('.lines', { hasText: 'sag/observe/shifted' }).waitFor();
    expect(await reader.evaluate(() => (window as never as { ran: number }).ran)).toBe(0);
    expect(await stored(reader)).toEqual({});
    expect(problemsOf(reader)).toEqual([]);

    // Words that only look like tags are shown as they stand, on cards as well.
    const looks = good.words
      .replace('It slid across', 'Less &lt; <')
      .replace('A bathroom sits', '`<b>` A bathroom sits');
    await taken(reader, { ...good, words: looks });
    await start(reader);
    expect(await reader.textContent('#panel code')).toBe('<b>');
    await reader.context().close();
  });

  test('kept behind the page’s back is checked again before it is played', async () => {
    const reader = await open();
    await taken(reader);
    await reader.evaluate((key) => {
      const kept = JSON.parse(localStorage.getItem(key)!);
      kept.words.content = kept.words.content.replace(
        'A bathroom',
        '<img src=x onerror=alert(1)> A bathroom',
      );
      localStorage.setItem(key, JSON.stringify(kept));
    }, `lost-litres.own.${SLUG}`);
    await reader.goto(`${OWN}/play?lesson=${SLUG}`);
    await reader.getByText('text.en.md, intro, line 3: found').waitFor();
    expect(await reader.locator('main img').count()).toBe(0);
    await reader.goto(`${OWN}/play?lesson=nothing`);
    await reader.getByText('not kept in this browser').waitFor();
    expect(problemsOf(reader)).toEqual([]);
    await reader.context().close();
  });
});

test('with the slug of a built-in lesson it shares nothing with it', async () => {
  const reader = await page({ path: main.PATH, reducedMotion: 'reduce' });
  await main.alive(reader);
  await begin(reader);
  await lock(reader, 31.5);
  const before = await stored(reader);
  await reader.goto(OWN);
  await reader.waitForSelector('main[data-alive]');
  await taken(reader, { ...good, structure: good.structure.replace(SLUG, main.SLUG) });
  await start(reader);
  expect(await main.phaseOf(reader)).toBe('brief');
  await playThrough(reader);
  await recorded(reader);
  const after = await stored(reader);
  expect(after[main.SAVED]).toBe(before[main.SAVED]);
  expect(Object.keys(JSON.parse(after['lost-litres.practice']!).lessons)).toEqual([`own:${main.SLUG}`]);
  await reader.goto(main.PATH);
  await main.alive(reader);
  expect(await main.phaseOf(reader)).toBe('locked');
  await reader.context().close();
});

test('one file after the other, a newer version, a rival, removing and putting back', async () => {
  const reader = await open();
  await take(reader, { words: good.words });
  await told(reader, 'Now choose what happens, lesson.json');
  await taken(reader, { structure: good.structure });
  await take(reader, { ...good, structure: good.structure.replace('"version": 1', '"version": 2') });
  await told(reader, 'version 2, takes the place of version 1');
  const rival = { ...good, words: good.words.replace('# One small fault', '# Another lesson') };
  await take(reader, rival);
  await told(reader, 'has the same slug');
  await reader.getByRole('button', { name: 'Leave it as it was' }).click();
  expect(await reader.locator('.list').textContent()).toContain('version 2');
  await take(reader, rival);
  await reader.getByRole('button', { name: 'Put it in its place' }).click();
  expect(await reader.locator('.list strong').allTextContents()).toEqual(['Another lesson']);
  await reader.getByRole('button', { name: 'Remove Another lesson' }).click();
  expect(await reader.locator('.list').textContent()).toContain('None yet.');
  expect(Object.keys(await stored(reader))).toEqual([]);
  await reader.getByRole('button', { name: 'Put it back' }).click();
  expect(await reader.locator('.list strong').allTextContents()).toEqual(['Another lesson']);
  expect(problemsOf(reader)).toEqual([]);
  await reader.context().close();
});

test('can be dropped anywhere on the page, and chosen by keyboard', async () => {
  const reader = await open();
  // Well before the key: the browser's own dialog is held back only once this has got through to it.
  const asked = reader.waitForEvent('filechooser');
  await reader.evaluate(({ structure, words }) => {
    const transfer = new DataTransfer();
    transfer.items.add(new File([structure], 'lesson.json'));
    transfer.items.add(new File([words], 'text.en.md'));
    const at = { bubbles: true, cancelable: true, dataTransfer: transfer };
    const over = new DragEvent('dragover', at);
    document.querySelector('h1')!.dispatchEvent(over);
    if (!over.defaultPrevented) throw new Error('the browser would open the file instead');
    document.querySelector('h1')!.dispatchEvent(new DragEvent('drop', at));
  }, good);
  await told(reader, 'is taken in and kept');
  await reader.getByLabel('Choose the two files').focus();
  await reader.keyboard.press('Enter');
  const chooser = await asked;
  expect(chooser.isMultiple()).toBe(true);
  await chooser.setFiles(chosen(good));
  await told(reader, 'is taken in and kept');
  await reader.getByRole('link', { name: 'Play One small fault' }).focus();
  await reader.keyboard.press('Enter');
  await main.alive(reader);
  expect(problemsOf(reader)).toEqual([]);
  await reader.context().close();
});

test('with storage switched off it is played for the visit, and said so', async () => {
  const reader = await page({ reducedMotion: 'reduce' });
  await reader.addInitScript(() => {
    const closed = () => {
      throw new DOMException('closed', 'SecurityError');
    };
    Object.defineProperty(window, 'localStorage', { get: closed });
  });
  await reader.goto(OWN);
  await reader.waitForSelector('main[data-alive]');
  await take(reader, good);
  await told(reader, 'until you close this page');
  await start(reader);
  await playThrough(reader);
  expect(problemsOf(reader)).toEqual([]);
  await reader.context().close();
});

test('everything works without a network after one visit', async () => {
  const reader = await page({ path: main.PATH, reducedMotion: 'reduce' });
  await reader.evaluate(async () => void (await navigator.serviceWorker.ready));
  await reader.waitForFunction(() => navigator.serviceWorker.controller !== null);
  await reader.context().setOffline(true);
  await reader.goto('/');
  await reader.getByRole('link', { name: /Have you written a lesson/ }).click();
  await reader.waitForSelector('main[data-alive]');
  const saved: string[] = [];
  for (const name of ['lesson.json', 'text.en.md', 'README.md']) {
    const [download] = await Promise.all([
      reader.waitForEvent('download'),
      reader.getByRole('link', { name, exact: true }).click(),
    ]);
    expect(download.suggestedFilename()).toBe(name);
    saved.push(readFileSync((await download.path())!, 'utf8'));
  }
  expect(saved).toEqual([good.structure, good.words, loadGuide()]);
  // A typed number is warned of, and taken in; the file chosen after it takes its place.
  await taken(reader, { ...good, words: good.words.replace('It was {before}.', 'It was 39.8 L/s.') });
  await reader.locator('.lines', { hasText: 'Warning: text.en.md, sag/predict, line' }).waitFor();
  await taken(reader, { structure: saved[0]!, words: saved[1]! });
  await start(reader);
  await reader.getByTestId('likely').waitFor();
  await reader.reload();
  await main.alive(reader);
  await playThrough(reader);
  await reader.context().close();
});

test('no page carries the Markdown reader or the checker before a lesson is checked', async () => {
  const { folder } = site();
  const reader = await open();
  const seen: string[] = [];
  reader.on('request', (request) => seen.push(new URL(request.url()).pathname));
  await taken(reader);
  const late = seen.filter((path) => path.endsWith('.js'));
  const carries = (path: string) => {
    const script = readFileSync(join(folder, path), 'utf8');
    // A sentence of the Markdown reader, and one of the checker.
    return script.includes('Infinite loop on byte') || script.includes('what the engine shows');
  };
  expect(late.filter(carries)).toHaveLength(1);
  for (const path of ['/', main.PATH, '/practice', OWN, '/glossary']) {
    const other = await page();
    const scripts: string[] = [];
    other.on('response', (answer) => {
      if (answer.url().endsWith('.js')) scripts.push(new URL(answer.url()).pathname);
    });
    await other.goto(path, { waitUntil: 'networkidle' });
    expect(scripts.filter(carries), path).toEqual([]);
    await other.context().close();
  }
  await reader.context().close();
});
