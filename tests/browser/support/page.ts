/** What a browser test needs: the site's address and pages of a real Chromium. */
import { chromium, type Browser, type BrowserContextOptions, type Page } from 'playwright-core';
import { afterAll, inject } from 'vitest';
import type { Site } from './site.ts';

/** The built site; throws what kept it from being built or a browser from being found. */
export function site(): Site {
  const given = inject('site');
  if ('obstacle' in given) throw new Error(given.obstacle);
  return given;
}

/** The address without the closing slash: `${baseUrl()}/lessons/...`. */
export const baseUrl = (): string => site().address;

let opened: Promise<Browser> | undefined;

/** One browser for all tests of a file; it closes itself after the last. */
export function openBrowser(): Promise<Browser> {
  opened ??= chromium.launch({
    executablePath: site().chromium,
    args: [
      // Chromium refuses its sandbox to root.
      ...(process.getuid?.() === 0 ? ['--no-sandbox'] : []),
      // The rest keeps it quiet on a machine with no screen and a closed network.
      '--disable-gpu',
      '--disable-quic',
      '--no-first-run',
      '--disable-background-networking',
      '--disable-component-update',
      '--disable-sync',
    ],
  });
  return opened;
}

afterAll(async () => {
  await (await opened)?.close();
  opened = undefined;
});

export interface PageOptions {
  /** Goes there before the page is handed over: `/lessons/five-small-faults`. */
  path?: string;
  viewport?: { width: number; height: number };
  colorScheme?: 'light' | 'dark';
  reducedMotion?: 'reduce' | 'no-preference';
  /** Anything else Playwright knows: `hasTouch`, `locale`, `offline`, `storageState`, ... */
  context?: BrowserContextOptions;
}

const problems = new WeakMap<Page, string[]>();

/** A fresh page with nothing stored. Close it with `await page.context().close()` or leave it to the end. */
export async function page(options: PageOptions = {}): Promise<Page> {
  const { path, viewport = { width: 1440, height: 900 }, colorScheme = 'light' } = options;
  const browser = await openBrowser();
  const context = await browser.newContext({
    baseURL: baseUrl(),
    viewport,
    colorScheme,
    reducedMotion: options.reducedMotion ?? 'no-preference',
    ...options.context,
  });
  const opened = await context.newPage();
  problems.set(opened, watch(opened));
  if (path !== undefined) await opened.goto(path, { waitUntil: 'load' });
  return opened;
}

function watch(page: Page): string[] {
  const seen: string[] = [];
  page.on('pageerror', (error) => seen.push(`error: ${error.stack ?? error.message}`));
  page.on('console', (message) => {
    if (['error', 'warning'].includes(message.type())) seen.push(`console: ${message.text()}`);
  });
  page.on('response', (answer) => {
    if (answer.status() >= 400) seen.push(`${answer.status()}: ${answer.url()}`);
  });
  page.on('request', (request) => {
    const { protocol, origin } = new URL(request.url());
    if (protocol.startsWith('http') && origin !== baseUrl()) seen.push(`other origin: ${request.url()}`);
  });
  return seen;
}

/** Errors, warnings, missing files and calls to other origins since the page was opened. */
export function problemsOf(page: Page): readonly string[] {
  return problems.get(page) ?? [];
}
