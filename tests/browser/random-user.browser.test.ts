/** A user who presses anything in any order, the same each time for one seed; what must always hold is checked after each. */
import { describe, expect, test } from 'vitest';
import type { Page } from 'playwright-core';
import type { UnitChoice } from '#units';
import * as main from './support/lesson.ts';
import { page, problemsOf } from './support/page.ts';

const PRESSES = 250;

/** A small repeatable generator (mulberry32): numbers from 0 up to, not including, 1. */
function chance(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
}

interface Place {
  flow: UnitChoice['flow'];
  locked: Record<string, number>;
  step: number;
}

/** Unit on show, and what the browser keeps of the journey. */
const place = (reader: Page): Promise<Place> =>
  reader.evaluate((key) => {
    const saved = JSON.parse(localStorage.getItem(key) ?? 'null') as {
      snapshot: {
        journey: { stepIndex: number; records: Record<string, { lockedPrediction?: { flow_L_s: number } }> };
      };
    } | null;
    const records = Object.entries(saved?.snapshot.journey.records ?? {});
    return {
      flow: document.querySelector<HTMLInputElement>('input[name=flow]:checked')!.value as UnitChoice['flow'],
      locked: Object.fromEntries(
        records.flatMap(([id, { lockedPrediction }]) =>
          lockedPrediction ? [[id, lockedPrediction.flow_L_s]] : [],
        ),
      ),
      step: saved?.snapshot.journey.stepIndex ?? 0,
    };
  }, main.SAVED);

const KEYS = [
  'Tab',
  'Tab',
  'Shift+Tab',
  'Enter',
  'Space',
  'ArrowRight',
  'ArrowLeft',
  'ArrowUp',
  'Escape',
  'Home',
  '7',
  '.',
  '-',
  'e',
];

/** One press: a key, the browser's own buttons, or some control on the page, those of the question most of all. */
async function pressAnything(reader: Page, next: () => number): Promise<string> {
  const roll = next();
  if (roll < 0.25) {
    const key = KEYS[Math.floor(next() * KEYS.length)]!;
    // Enter on the link home would leave the lesson, which is another test's business.
    const home = await reader.evaluate(() => document.activeElement?.matches('a') ?? false);
    if (home && key === 'Enter') return 'nothing';
    await reader.keyboard.press(key);
    return key;
  }
  if (roll < 0.29) {
    const index = await reader.evaluate(() => document.querySelectorAll('header nav button').length);
    if (index < 2) return 'nothing';
    await reader.goBack({ timeout: 2000 }).catch(() => null);
    if (reader.url().endsWith(main.PATH)) return 'back';
    // Back past the first step leaves the lesson, as it should; forward must find everything as it was.
    await reader.goForward();
    await main.alive(reader);
    return 'back and forward';
  }
  const within = roll < 0.8 ? '#panel' : 'body';
  const pressed = await reader.evaluate(
    ([selector, share]) => {
      const all = [
        ...document.querySelectorAll<HTMLElement>(`${selector} :is(button, summary, input[type=radio])`),
      ].filter((element) => element.checkVisibility());
      const element = all[Math.floor(Number(share) * all.length)];
      // As a finger or mouse would: what was being typed is left first.
      element?.focus();
      element?.click();
      return element?.textContent?.trim() || element?.getAttribute('value') || 'nothing';
    },
    [within, next()],
  );
  const field = reader.locator('#panel .typed input');
  if (roll < 0.4 && (await field.count())) {
    await field.fill(String(Math.round(next() * 1400) / 10));
    await field.press('Enter');
  }
  return pressed.replace(/\s+/g, ' ');
}

describe('a random user', () => {
  test.each([20260, 7])('seed %i: never breaks what must always hold', async (seed) => {
    const next = chance(seed);
    const reader = await page({ path: main.PATH, reducedMotion: 'reduce' });
    await main.alive(reader);
    const engine = new Set<string>();
    let locked: Record<string, number> = {};
    let furthest = 0;
    const done: string[] = [];
    for (let i = 0; i < PRESSES; i += 1) {
      done.push(await pressAnything(reader, next));
      const trail = `seed ${seed}, press ${i}: ${done.slice(-12).join(' > ')}`;
      const [seen, now] = [await main.read(reader), await place(reader)];
      expect(problemsOf(reader), trail).toEqual([]);
      expect(main.numberOf(seen.big), trail).toBe(Number(seen.live.flow));
      expect(seen.amounts.at(-1), trail).toBe(seen.big);
      main.expectBalance(seen);
      engine.add(`${now.flow} ${seen.big}`);
      const again = done.at(-1)!.startsWith('Begin the lesson');
      if (!again) {
        for (const [id, flow] of Object.entries(locked)) {
          // Start over may also be pressed by key; then all of them are gone at once, never one changed.
          if (Object.keys(now.locked).length > 0) expect(now.locked[id], trail).toBe(flow);
        }
      }
      const step = main.lesson.steps[now.step]!;
      if (step.kind === 'fault' && ['observe', 'explain', 'again', 'settled'].includes(seen.phase)) {
        expect(now.locked[step.id], trail).toBeTypeOf('number');
      }
      locked = now.locked;
      furthest = Math.max(furthest, now.step);
    }
    // The walk has to get somewhere to be worth anything, and every number on it has to be a stage of the engine.
    expect(furthest).toBeGreaterThan(1);
    const stages = new Set(
      main.stages().flatMap((flow) =>
        (['L/s', 'm3/h', 'cfm'] as const).map((unit) => {
          const choice = { flow: unit, pressure: 'Pa' } as const;
          return `${unit} ${main.shownFlow(flow, choice)}`;
        }),
      ),
    );
    expect([...engine].filter((shown) => !stages.has(shown))).toEqual([]);
    await reader.context().close();
  });
});
