/** A reveal in motion: one change, and everything on the screen that shows it moves with it. */
import { describe, expect, test } from 'vitest';
import type { Page } from 'playwright-core';
import { press, typeGuess } from './support/keyboard.ts';
import * as main from './support/lesson.ts';
import { page, problemsOf } from './support/page.ts';

const { flowAfter, shownFlow } = main;

interface Frame {
  big: string;
  closing: string;
  /** Place of the operating point across the chart, px. */
  marker: string;
  curve: string;
  air: string;
}

/** Notes what stands in number, account, chart and drawing at every frame from now on; returns the first. */
function recordFrames(reader: Page): Promise<Frame> {
  return reader.evaluate(() => {
    const part = (selector: string, name: string) =>
      document.querySelector(selector)?.getAttribute(name) ?? '';
    const words = (selector: string) =>
      [...document.querySelectorAll(selector)].at(-1)?.textContent?.trim() ?? '';
    const note = (): Frame => ({
      big: words('[data-testid=flow]'),
      closing: words('.ledger text.amount'),
      marker: part('.crossing circle.dot', 'cx'),
      curve: part('.crossing path.curve.present', 'd'),
      air: part('.drawing path.ribbon', 'd'),
    });
    const frames: Frame[] = [];
    Object.assign(window, { frames });
    const next = (): void => {
      frames.push(note());
      requestAnimationFrame(next);
    };
    requestAnimationFrame(next);
    return note();
  });
}

const recordedFrames = (reader: Page): Promise<Frame[]> =>
  reader.evaluate(() => (window as unknown as { frames: Frame[] }).frames);

describe('a reveal', () => {
  test('number, account, chart and drawing move together and come to rest on the engine’s values', async () => {
    const reader = await page({ path: main.PATH });
    await main.alive(reader);
    await press(reader, 'Start');
    await press(reader, 'Skip the questions');
    await press(reader, 'Make a prediction');
    await typeGuess(reader, '30');
    await press(reader, 'Lock it in');
    await main.waitForPhase(reader, 'locked');
    const resting = await recordFrames(reader);
    await press(reader, 'Put the fault in');
    await main.waitForPhase(reader, 'observe');
    const frames = [resting, ...(await recordedFrames(reader))];
    const distinct = frames.filter((frame, i) => i === 0 || frame.big !== frames[i - 1]!.big);
    const between = distinct.slice(1, -1).map(({ big }) => Number(big));
    const [before, after] = [flowAfter(0), flowAfter(1)];
    expect(between.length).toBeGreaterThanOrEqual(5);
    expect(between).toEqual([...between].sort((a, b) => b - a));
    expect(Math.max(...between)).toBeLessThan(before);
    expect(Math.min(...between)).toBeGreaterThan(after);
    for (const frame of frames) expect(frame.closing).toBe(frame.big);
    // Wherever the number has moved on, so have the marker and the ribbon of air, and the curve with them.
    for (const part of ['marker', 'curve', 'air'] as const) {
      expect(new Set(distinct.map((frame) => frame[part])).size, part).toBeGreaterThan(distinct.length * 0.9);
    }
    // Across the chart the marker is where the number says, all the way.
    const scale = (frame: Frame) =>
      (Number(frame.marker) - Number(resting.marker)) / (Number(frame.big) - before);
    const last = frames.at(-1)!;
    for (const frame of distinct.filter(({ big }) => before - Number(big) > 2)) {
      expect(Math.abs(scale(frame) / scale(last) - 1)).toBeLessThan(0.06);
    }
    expect(last.big).toBe(shownFlow(after));
    main.expectEngine(await main.read(reader), main.entriesAfter(1));
    expect(problemsOf(reader)).toEqual([]);
    await reader.context().close();
  });
});
