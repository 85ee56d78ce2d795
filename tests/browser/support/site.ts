/**
 * Runs once before the browser tests: builds the pages, serves them, finds Chromium. What goes wrong is
 * handed to the tests instead of thrown, so that it fails them and leaves the other kinds to run.
 */
import type { TestProject } from 'vitest/node';
import { buildPages } from '../../../src/commands/run.ts';
import { serve } from '../../../src/commands/serve.ts';
import { getChromium } from './chromium.ts';

export interface Site {
  address: string;
  folder: string;
  chromium: string;
}

declare module 'vitest' {
  interface ProvidedContext {
    site: Site | { obstacle: string };
  }
}

export default async function setup(project: TestProject): Promise<() => Promise<void>> {
  try {
    const chromium = getChromium();
    const folder = await buildPages();
    const { address, close } = await serve(folder, 0);
    project.provide('site', { address, folder, chromium });
    return close;
  } catch (error) {
    const obstacle = error instanceof Error ? error.message : String(error);
    // Whole words once here; each test that falls over it repeats only their first line.
    console.error(obstacle);
    project.provide('site', { obstacle: obstacle.split('\n')[0] ?? obstacle });
    return async () => {};
  }
}
