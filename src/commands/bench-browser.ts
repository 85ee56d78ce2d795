/**
 * `npm run -s bench:browser`: drags a fault's slider through its range in a real Chromium, on the fullest rig
 * of the catalogue, with picture, walk, crossing and account live, at full speed and with the processor
 * throttled. Prints what a frame costs, where it goes, and what a bare canvas needs for the same geometry.
 */
import { chromium, type Browser } from 'playwright-core';
import { buildBenchPages } from './bench-browser/pages.ts';
import { drag, openBench, record, redraw, sampled, type Bench } from './bench-browser/drag.ts';
import { attribute } from './bench-browser/profile.ts';
import { account, table, verdict, writes, type Measured } from './bench-browser/report.ts';
import { getChromium } from './chromium.ts';
import { serve } from './serve.ts';

const THROTTLES = [1, 4];
/** A first drag, not counted, lets the browser compile what it will run. */
const WARM_UP = 60;
const MOVES = 160;
const REDRAWN = 80;

async function measure(bench: Bench, throttle: number): Promise<Measured> {
  await bench.throttle(throttle);
  const dragged = await drag(bench, MOVES);
  await bench.throttle(1);
  await record(bench, REDRAWN);
  await bench.throttle(throttle);
  return { throttle, ...dragged, bare: await redraw(bench) };
}

async function main(browser: Browser, address: string, folder: string): Promise<string> {
  const bench = await openBench(browser, address);
  await drag(bench, WARM_UP);
  const measured: Measured[] = [];
  for (const throttle of THROTTLES) measured.push(await measure(bench, throttle));
  await bench.throttle(1);
  const script_ms = measured[0]!.stages
    .filter(({ name }) => name === 'script' || name === 'collecting garbage')
    .reduce((sum, { ms }) => sum + ms, 0);
  const spent = attribute(await sampled(bench, MOVES), folder, script_ms);
  return [
    `Fullest seed rig, ${bench.about}; Chromium ${browser.version()}, ${MOVES} moves of the mouse.`,
    table(measured),
    writes(await record(bench, REDRAWN)),
    account(spent),
    verdict(measured),
    '',
  ].join('\n');
}

console.error('Building the pages ...');
const folder = await buildBenchPages();
const { address, close } = await serve(folder, 0);
const browser = await chromium.launch({
  executablePath: getChromium(),
  args: [
    // Chromium refuses its sandbox to root; the rest keeps it quiet on a machine with no screen.
    ...(process.getuid?.() === 0 ? ['--no-sandbox'] : []),
    ...['--disable-gpu', '--disable-quic', '--no-first-run', '--disable-background-networking'],
  ],
});
try {
  process.stdout.write(await main(browser, address, folder));
} finally {
  await browser.close();
  await close();
}
