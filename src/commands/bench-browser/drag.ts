/** The mouse on the slider, and the browser's own trace around it. */
import type { Browser, CDPSession, Page } from 'playwright-core';
import { watch, type ProbeWindow } from './probe.ts';
import type { CpuProfile } from './profile.ts';
import { CATEGORIES, framesOf, type Frames, type TraceEvent } from './trace.ts';

const PATH = '/gallery/bench';

export interface Bench {
  readonly browser: Browser;
  readonly page: Page;
  readonly session: CDPSession;
  readonly about: string;
  throttle(rate: number): Promise<void>;
}

export interface Dragged extends Frames {
  /** From the move of the mouse to the frame painted, by the clock. */
  readonly frames_ms: readonly number[];
  readonly gaps_ms: readonly number[];
  readonly long_ms: readonly number[];
}

/** How often an update changes a kind of thing on the page. */
export interface Written {
  readonly name: string;
  readonly times: number;
}

const slider = (page: Page) => page.locator('main input[type=range]').first();

export async function openBench(browser: Browser, address: string): Promise<Bench> {
  const context = await browser.newContext({ viewport: { width: 1440, height: 900 } });
  const page = await context.newPage();
  // The loader that runs commands wraps every named function in a helper of its own.
  await page.addInitScript('globalThis.__name = (each) => each');
  page.on('pageerror', (error) => console.error(`The page says: ${error.message}`));
  await page.goto(`${address}${PATH}`, { waitUntil: 'networkidle' });
  const session = await context.newCDPSession(page);
  const word = await slider(page).getAttribute('aria-label');
  const faults = await page.locator('main select option').count();
  return {
    browser,
    page,
    session,
    about: `${faults} faults, "${word}" dragged through its range, 1440 x 900`,
    throttle: async (rate) => {
      await session.send('Emulation.setCPUThrottlingRate', { rate });
    },
  };
}

/**
 * To the right end and back, one move of the mouse at a time, each answered before the next. Sent by hand: the
 * test library's own mouse runs script of its own in the page at each move of a drag.
 */
async function sweep({ page, session }: Bench, moves: number): Promise<void> {
  const box = (await slider(page).boundingBox())!;
  const y = box.y + box.height / 2;
  const send = (type: 'mousePressed' | 'mouseMoved' | 'mouseReleased', share: number) =>
    session.send('Input.dispatchMouseEvent', {
      type,
      x: box.x + 9 + share * (box.width - 18),
      y,
      button: 'left',
      buttons: type === 'mouseReleased' ? 0 : 1,
      clickCount: type === 'mouseMoved' ? 0 : 1,
    });
  await send('mousePressed', 0);
  for (let i = 1; i <= moves; i += 1) await send('mouseMoved', Math.min(2 * i, 2 * (moves - i)) / moves);
  await send('mouseReleased', 0);
}

async function traced(bench: Bench, work: () => Promise<void>): Promise<Frames> {
  await bench.browser.startTracing(bench.page, { categories: CATEGORIES });
  await work();
  const trace = JSON.parse((await bench.browser.stopTracing()).toString('utf8')) as {
    traceEvents: TraceEvent[];
  };
  return framesOf(trace.traceEvents);
}

export async function drag(bench: Bench, moves: number): Promise<Dragged> {
  await bench.page.evaluate(watch);
  const frames = await traced(bench, () => sweep(bench, moves));
  const seen = await bench.page.evaluate(() => {
    const probe = (window as ProbeWindow).probe!;
    probe.stop();
    return { frames_ms: probe.frames_ms, gaps_ms: probe.gaps_ms, long_ms: probe.long_ms };
  });
  if (frames.cpu_ms.length < moves / 2)
    throw new Error(`The slider answered ${frames.cpu_ms.length} of ${moves} moves.`);
  return { ...frames, ...seen };
}

/** The same drag once more to record the geometry; gives how often an update changes what on the page. */
export async function record(bench: Bench, moves: number): Promise<Written[]> {
  await bench.page.evaluate(watch);
  await bench.page.evaluate(() => {
    (window as ProbeWindow).probe!.recording = true;
  });
  await sweep(bench, moves);
  const { writes, updates } = await bench.page.evaluate(() => {
    const probe = (window as ProbeWindow).probe!;
    probe.stop();
    return { writes: probe.writes, updates: probe.geometry.length };
  });
  return Object.entries(writes)
    .map(([name, count]) => ({ name, times: count / updates }))
    .sort((a, b) => b.times - a.times);
}

/** All of what was recorded drawn on a bare canvas, a frame for each move. */
export const redraw = (bench: Bench): Promise<Frames> =>
  traced(bench, async () => {
    await bench.page.evaluate(() => (window as ProbeWindow).probe!.redraw());
  });

/** The drag under the browser's own sampler. */
export async function sampled(bench: Bench, moves: number): Promise<CpuProfile> {
  const { session } = bench;
  await session.send('Profiler.enable');
  await session.send('Profiler.setSamplingInterval', { interval: 200 });
  await session.send('Profiler.start');
  await sweep(bench, moves);
  const { profile } = await session.send('Profiler.stop');
  return profile;
}
