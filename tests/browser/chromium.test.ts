import { expect, test } from 'vitest';
import { findChromium, getChromium, places } from './support/chromium.ts';

test('a path given in CHROMIUM_PATH is the only one looked at', () => {
  expect(places({ CHROMIUM_PATH: '/somewhere/chromium', PATH: '/usr/bin' }, 'linux')).toEqual([
    '/somewhere/chromium',
  ]);
});

test('the first place from which a browser runs is taken', () => {
  const found = findChromium({ PATH: '/opt/a:/opt/b' }, 'linux', (path) => path.startsWith('/opt/b/chrom'));
  expect(found).toBe('/opt/b/chromium');
  expect(findChromium({ PATH: '/opt/a' }, 'linux', () => false)).toBeUndefined();
});

test('the usual places of other systems and the library’s own download are among the places', () => {
  const mac = places({ HOME: '/Users/someone' }, 'darwin');
  expect(mac).toContain('/Applications/Google Chrome.app/Contents/MacOS/Google Chrome');
  expect(places({ LOCALAPPDATA: '/local' }, 'win32')).toContain(
    '/local/Google/Chrome/Application/chrome.exe',
  );
  expect(mac.at(-1)).toMatch(/chrom/i);
});

test('a CHROMIUM_PATH without a browser behind it says so', () => {
  const before = process.env.CHROMIUM_PATH;
  process.env.CHROMIUM_PATH = '/nowhere/chromium';
  try {
    expect(() => getChromium()).toThrow('CHROMIUM_PATH is /nowhere/chromium');
  } finally {
    if (before === undefined) delete process.env.CHROMIUM_PATH;
    else process.env.CHROMIUM_PATH = before;
  }
});
