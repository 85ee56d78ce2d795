/** Coming back: by reload, by the browser's own buttons, with spoilt storage and with none. */
import { describe, expect, test } from 'vitest';
import type { Page } from 'playwright-core';
import { loadLessons } from '#lesson-load';
import * as main from './support/lesson.ts';
import { answer, begin, click, lock, playTo } from './support/mouse.ts';
import { page, problemsOf } from './support/page.ts';
import { play } from './support/play.ts';

const open = async (options: Parameters<typeof page>[0] = {}): Promise<Page> => {
  const reader = await page({ path: main.PATH, reducedMotion: 'reduce', ...options });
  await main.alive(reader);
  return reader;
};

async function reload(reader: Page): Promise<main.Shown> {
  await reader.reload();
  await main.alive(reader);
  return main.read(reader);
}

/** The locked predictions as kept in the browser. */
const lockedIn = (reader: Page): Promise<Record<string, number>> =>
  reader.evaluate((key) => {
    const { records } = JSON.parse(localStorage.getItem(key) ?? '{"snapshot":{"journey":{}}}').snapshot
      .journey;
    const locked = Object.entries(records ?? {}).flatMap(([id, record]) => {
      const flow = (record as { lockedPrediction?: { flow_L_s: number } }).lockedPrediction?.flow_L_s;
      return flow === undefined ? [] : [[id, flow]];
    });
    return Object.fromEntries(locked) as Record<string, number>;
  }, main.SAVED);

async function expectReloadKeeps(reader: Page, phase: string, locked: Record<string, number>): Promise<void> {
  const before = await main.read(reader);
  expect(before.phase).toBe(phase);
  const after = await reload(reader);
  expect(after.phase).toBe(phase);
  expect([after.big, after.amounts, after.heading]).toEqual([before.big, before.amounts, before.heading]);
  expect(await lockedIn(reader)).toEqual(locked);
  expect(await reader.locator('[role=alert]').count()).toBe(0);
}

describe('reload', () => {
  test('comes back to the same step and phase, the locked prediction intact', async () => {
    const reader = await open();
    const [first, second] = main.steps;
    await begin(reader);
    await expectReloadKeeps(reader, 'predict', {});
    await reader.fill('#panel .typed input', '31.5');
    await reader.press('#panel .typed input', 'Enter');
    await reload(reader);
    expect(await reader.inputValue('#panel .typed input')).toBe('31.5');
    await click(reader, 'Lock it in');
    const locked = { [first!.id]: 31.5 };
    await expectReloadKeeps(reader, 'locked', locked);
    await click(reader, 'Put the fault in');
    await main.waitForPhase(reader, 'observe');
    await expectReloadKeeps(reader, 'observe', locked);
    await answer(
      reader,
      first!.observe,
      first!.observe.options.find((id) => id !== first!.observe.right)!,
    );
    const reason = await reader.textContent('#panel [role=status]');
    await expectReloadKeeps(reader, 'observe', locked);
    expect(await reader.textContent('#panel [role=status]')).toBe(reason);
    await answer(reader, first!.observe);
    await expectReloadKeeps(reader, 'explain', locked);
    await answer(reader, first!.explain);
    await expectReloadKeeps(reader, 'settled', locked);
    await click(reader, 'Next fault');
    await expectReloadKeeps(reader, 'brief', locked);
    await playTo(reader, 'mending', 1);
    const all = { ...Object.fromEntries(main.steps.map(({ id }) => [id, 20])), ...locked };
    expect(Object.keys(all)).toContain(second!.id);
    await expectReloadKeeps(reader, 'mending', all);
    for (const { id } of main.steps) {
      await click(reader, `Mend ${main.titleOf(id)}`);
      if (id === second!.id) await expectReloadKeeps(reader, 'mending', all);
    }
    await click(reader, 'Next step');
    await play(reader, main.lesson, false, main.indexOf('two-roofs'));
    await expectReloadKeeps(reader, 'finished', { ...all, shop: 20 });
    expect(problemsOf(reader)).toEqual([]);
    await reader.context().close();
  });

  test('in the middle of a reveal comes back with the fault in', async () => {
    const reader = await open({ reducedMotion: 'no-preference' });
    await begin(reader);
    await lock(reader, 31.5);
    await click(reader, 'Put the fault in');
    await main.waitForPhase(reader, 'reveal');
    const seen = await reload(reader);
    expect(seen.phase).toBe('observe');
    main.expectEngine(seen, main.entriesAfter(1));
    expect(await lockedIn(reader)).toEqual({ sag: 31.5 });
    await reader.context().close();
  });
});

test('the browser’s Back and Forward walk the steps and erase nothing', async () => {
  const reader = await open();
  const count = () => reader.textContent('#panel .count');
  await playTo(reader, 'brief', 0, 2);
  await begin(reader);
  const saved = await lockedIn(reader);
  expect(Object.keys(saved)).toHaveLength(2);
  expect(await count()).toContain('3 of 5');
  for (const [number, phase] of [
    [2, 'settled'],
    [1, 'settled'],
  ] as const) {
    await reader.goBack();
    await main.waitForPhase(reader, phase);
    await reader.waitForFunction(
      (words) => document.querySelector('#panel .count')?.textContent?.includes(words),
      `${number} of 5`,
    );
    main.expectEngine(await settledRead(reader), main.entriesAfter(number));
    expect(await lockedIn(reader)).toEqual(saved);
  }
  await reader.goForward();
  await reader.goForward();
  await main.waitForPhase(reader, 'predict');
  expect(await count()).toContain('3 of 5');
  expect(await lockedIn(reader)).toEqual(saved);
  expect(problemsOf(reader)).toEqual([]);
  await reader.context().close();
});

/** Read once the picture stands still. */
async function settledRead(reader: Page): Promise<main.Shown> {
  await reader.waitForTimeout(100);
  return main.read(reader);
}

describe('saved progress that cannot be used', () => {
  const good = { begun: true, revealed: false, observations: [], explanations: [] };
  const journey = { stepIndex: 1, furthest: 1, records: { sag: good }, repairs: [], finished: false };
  const save = (changed: object, snapshot: object = { phase: 'predict', journey }) =>
    JSON.stringify({ format: 1, slug: main.SLUG, lessonVersion: main.lesson.version, snapshot, ...changed });
  const cases: [string, string, RegExp][] = [
    ['cut short', save({}).slice(0, 60), /could not be read/],
    ['of another version', save({ lessonVersion: 999 }), /another version/],
    [
      'revealed without a locked prediction',
      save({}, { phase: 'observe', journey: { ...journey, records: { sag: { ...good, revealed: true } } } }),
      /does not fit/,
    ],
    [
      'four steps ahead',
      save({}, { phase: 'brief', journey: { ...journey, stepIndex: 5, furthest: 5 } }),
      /does not fit/,
    ],
  ];

  test('is set aside, said so, and the lesson starts at its first step', async () => {
    const reader = await open();
    for (const [i, [name, text, words]] of cases.entries()) {
      await reader.evaluate(([key, value]) => localStorage.setItem(key!, value!), [main.SAVED, text]);
      const seen = await reload(reader);
      const notice = await reader.textContent('[role=alert]');
      expect(notice, name).toMatch(words);
      expect(notice).toContain('set aside');
      expect(seen.phase).toBe('brief');
      expect(await reader.textContent('#panel')).toContain(main.titleOf('intro'));
      main.expectEngine(seen, main.entriesAfter(0));
      const kept = await reader.evaluate(
        (keys) => keys.map((key) => localStorage.getItem(key)),
        [main.SAVED, `${main.SAVED}.set-aside.${i + 1}`],
      );
      expect(kept, name).toEqual([null, text]);
    }
    await reader.getByRole('button', { name: 'Understood' }).click();
    expect(await reader.locator('[role=alert]').count()).toBe(0);
    await begin(reader);
    expect(problemsOf(reader)).toEqual([]);
    await reader.context().close();
  });
});

test('units and paper are remembered', async () => {
  const reader = await open();
  const settings = reader.getByRole('button', { name: 'Units and paper' });
  await settings.click();
  await reader.getByRole('radio', { name: 'cubic metres an hour' }).check();
  await reader.getByRole('radio', { name: 'inches water gauge' }).check();
  await reader.getByRole('radio', { name: 'blueprint' }).check();
  const dark = () => reader.evaluate(() => getComputedStyle(document.body).backgroundColor);
  const colour = await dark();
  const seen = await reload(reader);
  main.expectEngine(seen, main.entriesAfter(0), { flow: 'm3/h', pressure: 'in w.g.' });
  await settings.click();
  for (const name of ['cubic metres an hour', 'inches water gauge', 'blueprint']) {
    expect(await reader.getByRole('radio', { name }).isChecked(), name).toBe(true);
  }
  expect(await dark()).toBe(colour);
  await reader.getByRole('radio', { name: 'paper', exact: true }).check();
  expect(await dark()).not.toBe(colour);
  await reader.context().close();
});

test('with storage switched off the lesson runs, and says it cannot keep the place', async () => {
  const reader = await page({ reducedMotion: 'reduce' });
  await reader.addInitScript(() => {
    const closed = () => {
      throw new DOMException('closed', 'SecurityError');
    };
    Object.defineProperty(window, 'localStorage', { get: closed });
  });
  await reader.goto(main.PATH);
  await main.alive(reader);
  expect(await reader.textContent('[role=alert]')).toMatch(/does not let us keep your place/);
  await playTo(reader, 'settled', 0, 0);
  main.expectEngine(await main.read(reader), main.entriesAfter(1));
  await reader.getByRole('button', { name: 'Units and paper' }).click();
  await reader.getByRole('radio', { name: 'cubic feet a minute' }).check();
  main.expectEngine(await main.read(reader), main.entriesAfter(1), { flow: 'cfm', pressure: 'Pa' });
  expect(problemsOf(reader)).toEqual([]);
  await reader.context().close();
});

test('starting over can be taken back, with everything that was said', async () => {
  const reader = await open();
  await begin(reader);
  await lock(reader, 31.5);
  const kept = await lockedIn(reader);
  await click(reader, 'Put the fault in');
  await main.waitForPhase(reader, 'observe');
  const before = await main.read(reader);
  await reader.getByRole('button', { name: 'Units and paper' }).click();
  await reader.getByRole('button', { name: 'Start over' }).click();
  await main.waitForPhase(reader, 'brief');
  expect(await lockedIn(reader)).toEqual({});
  await reader.getByRole('button', { name: 'Put it back' }).click();
  await main.waitForPhase(reader, 'observe');
  const after = await main.read(reader);
  expect([after.big, after.amounts, after.heading]).toEqual([before.big, before.amounts, before.heading]);
  expect(await reader.locator('[role=alert]').count()).toBe(0);
  expect(await lockedIn(reader)).toEqual(kept);
  expect((await reload(reader)).heading).toBe(before.heading);
  expect(problemsOf(reader)).toEqual([]);
  await reader.context().close();
});

test('the end of a lesson leads on to the next, the last to all of them', async () => {
  const lessons = loadLessons().map(({ lesson, text }) => ({ lesson, title: text.title }));
  const last = lessons.at(-1)!;
  for (const { lesson } of [lessons[0]!, last]) {
    const reader = await page({ path: `/lessons/${lesson.slug}`, reducedMotion: 'reduce' });
    await main.alive(reader);
    await play(reader, lesson, false);
    const on = reader.locator('#panel :is(.act, .again) a');
    await on.first().waitFor();
    const links = await on.evaluateAll((all) =>
      all.map((each) => [each.textContent, each.getAttribute('href')]),
    );
    expect(links.map(([words]) => words?.trim())).toEqual(
      lesson === last.lesson ? ['All lessons'] : [`Next lesson: ${lessons[1]!.title}`, 'All lessons'],
    );
    await on.first().click();
    await reader.waitForURL(
      (url) => url.pathname === (lesson === last.lesson ? '/' : `/lessons/${lessons[1]!.lesson.slug}`),
    );
    expect(problemsOf(reader)).toEqual([]);
    await reader.context().close();
  }
});
