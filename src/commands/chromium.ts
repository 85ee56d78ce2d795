/** Finds a Chromium that runs on this machine, or gets one. */
import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { createRequire } from 'node:module';
import { delimiter, dirname, join } from 'node:path';
import { chromium } from 'playwright-core';

const NAMES = ['chromium', 'chromium-browser', 'google-chrome', 'google-chrome-stable'];

const USUAL_PLACES: Partial<Record<NodeJS.Platform, (environment: NodeJS.ProcessEnv) => string[]>> = {
  darwin: ({ HOME = '' }) =>
    ['/Applications', join(HOME, 'Applications')].flatMap((folder) => [
      join(folder, 'Chromium.app/Contents/MacOS/Chromium'),
      join(folder, 'Google Chrome.app/Contents/MacOS/Google Chrome'),
    ]),
  win32: ({ PROGRAMFILES, 'PROGRAMFILES(X86)': x86, LOCALAPPDATA }) =>
    [PROGRAMFILES, x86, LOCALAPPDATA]
      .filter((folder) => folder !== undefined)
      .flatMap((folder) => [
        join(folder, 'Google/Chrome/Application/chrome.exe'),
        join(folder, 'Chromium/Application/chrome.exe'),
      ]),
};

/** Where a Chromium may be, best first. A path given in CHROMIUM_PATH is the only one looked at. */
export function places(environment: NodeJS.ProcessEnv, platform: NodeJS.Platform): string[] {
  if (environment.CHROMIUM_PATH) return [environment.CHROMIUM_PATH];
  const path = (environment.PATH ?? '').split(delimiter).filter(Boolean);
  return [
    '/usr/bin/chromium',
    ...NAMES.flatMap((name) => path.map((folder) => join(folder, name))),
    ...(USUAL_PLACES[platform]?.(environment) ?? []),
    chromium.executablePath(),
  ];
}

/** Some systems leave a script that only tells where to get the browser, so being there is not enough. */
function works(path: string): boolean {
  if (!existsSync(path)) return false;
  // On Windows `--version` opens a window instead of answering.
  if (process.platform === 'win32') return true;
  return spawnSync(path, ['--version'], { stdio: 'ignore', timeout: 60_000 }).status === 0;
}

export function findChromium(
  environment = process.env,
  platform = process.platform,
  usable = works,
): string | undefined {
  return places(environment, platform).find(usable);
}

/** Whether `command` ended well. Its words go to the terminal: an installation may take minutes. */
function succeeds(command: string, options: string[]): boolean {
  const env = { ...process.env, DEBIAN_FRONTEND: 'noninteractive' };
  return spawnSync(command, options, { stdio: ['ignore', 'inherit', 'inherit'], env }).status === 0;
}

/** The system's own package, where there is `apt-get` and the right to use it. */
function installFromSystem(): void {
  const sudo = process.getuid?.() === 0 ? [] : ['sudo', '-n'];
  for (const options of [
    ['apt-get', 'update'],
    ['apt-get', 'install', '-y', 'chromium'],
  ]) {
    const [command = '', ...rest] = [...sudo, ...options];
    if (!succeeds(command, rest)) return;
  }
}

/** The test library's own download. As root it may add the system libraries a browser needs. */
function installFromLibrary(): void {
  const library = dirname(createRequire(import.meta.url).resolve('playwright-core/package.json'));
  const needs = process.platform === 'linux' && process.getuid?.() === 0 ? ['--with-deps'] : [];
  succeeds(process.execPath, [join(library, 'cli.js'), 'install', ...needs, 'chromium']);
}

/** The path of a Chromium that runs; installs one if need be. Throws saying what was tried. */
export function getChromium(): string {
  const found = findChromium();
  if (found) return found;
  if (process.env.CHROMIUM_PATH) {
    throw new Error(`CHROMIUM_PATH is ${process.env.CHROMIUM_PATH}, and no browser runs from there.`);
  }
  for (const install of [
    ...(existsSync('/usr/bin/apt-get') ? [installFromSystem] : []),
    installFromLibrary,
  ]) {
    console.log('No Chromium on this machine yet: getting one ...');
    install();
    const installed = findChromium();
    if (installed) return installed;
  }
  throw new Error(
    'The browser tests need a Chromium. None was found, and neither apt-get nor the download of ' +
      'playwright-core brought one. Install Chromium or Chrome, or set CHROMIUM_PATH to its program.',
  );
}
