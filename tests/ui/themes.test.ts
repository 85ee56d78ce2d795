/** Every theme of app.css by its numbers: no token missing, and every pair in use far enough apart to be seen. */
import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';

const sheet = readFileSync('src/app.css', 'utf8').replace(/\/\*[\s\S]*?\*\//g, '');
const TOKENS = [
  'paper',
  'paper-raised',
  'ink',
  'ink-quiet',
  'ink-faint',
  'air',
  'air-soft',
  'focus',
] as const;
type Theme = Partial<Record<(typeof TOKENS)[number], string>>;

/** The tokens set under a selector; each theme has a place of its own in the sheet. */
function theme(text: string, opening: string): Theme {
  const start = text.indexOf(opening);
  if (start < 0) throw new Error(`no ${opening} in the sheet`);
  const block = text.slice(start + opening.length, text.indexOf('}', start));
  return Object.fromEntries(
    [...block.matchAll(/--([\w-]+):\s*([^;]+);/g)].map(([, name, value]) => [name, value]),
  );
}

const OPENINGS = {
  paper: ':root {',
  blueprint: ":root[data-theme='dark'] {",
  'high contrast': ":root[data-theme='contrast'] {",
  'blueprint of the device': '@media (prefers-color-scheme: dark) {\n  :root:not([data-theme]) {',
  'high contrast of the device': '@media (prefers-contrast: more) {\n  :root:not([data-theme]) {',
  print: '@media print {\n  :root:root {',
};
/** The tokens a theme ought to set as a plain colour and does not. */
const missing = (text: string, opening: string) => {
  const found = theme(text, opening);
  return TOKENS.filter((token) => !/^#[0-9a-f]{3,8}$/i.test(found[token] ?? ''));
};
const FORCED = '@media (forced-colors: active) {\n  :root:root {';

/** Relative luminance of #rgb or #rrggbb, by the formula of WCAG 2.2. */
function luminance(colour: string): number {
  const digits = /^#([0-9a-f]{3}|[0-9a-f]{6})$/i.exec(colour)?.[1];
  if (!digits) throw new Error(`${colour} is no plain colour`);
  const parts = digits.length === 3 ? [...digits].map((digit) => digit + digit) : digits.match(/../g)!;
  const [red, green, blue] = parts.map((part) => {
    const share = Number.parseInt(part, 16) / 255;
    return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
  });
  return 0.2126 * red! + 0.7152 * green! + 0.0722 * blue!;
}

function contrast(one: string, other: string): number {
  const [light, dark] = [luminance(one), luminance(other)].sort((a, b) => b - a);
  return (light! + 0.05) / (dark! + 0.05);
}

test('the formula gives what it is known to give', () => {
  expect(contrast('#000', '#ffffff')).toBeCloseTo(21, 5);
  expect(contrast('#777777', '#fff')).toBeCloseTo(4.48, 2);
});

describe.each(Object.entries(OPENINGS))('%s', (_name, opening) => {
  const found = theme(sheet, opening);

  test('has every token', () => {
    expect(missing(sheet, opening)).toEqual([]);
  });

  test.each(TOKENS)('would not be let through without %s', (token) => {
    const start = sheet.indexOf(opening);
    const short = sheet.slice(0, start) + sheet.slice(start).replace(new RegExp(`--${token}: [^;]+;`), '');
    expect(missing(short, opening)).toEqual([token]);
  });

  test.each(['ink', 'ink-quiet', 'air'] as const)('sets words in %s that can be read', (words) => {
    expect(contrast(found[words]!, found.paper!)).toBeGreaterThanOrEqual(4.5);
    expect(contrast(found[words]!, found['paper-raised']!)).toBeGreaterThanOrEqual(4.5);
  });

  test('shows where the focus is', () => {
    expect(contrast(found.focus!, found.paper!)).toBeGreaterThanOrEqual(3);
  });

  test('tells air from ink in grey, save on paper, where the hatch and the dash must do it', () => {
    if (opening !== OPENINGS.print) expect(contrast(found.air!, found.ink!)).toBeGreaterThanOrEqual(1.4);
    else expect(found.air).toBe(found.ink);
  });
});

test('a device that asks for a theme gets the very one that can be chosen', () => {
  for (const name of ['blueprint', 'high contrast'] as const) {
    expect(theme(sheet, OPENINGS[`${name} of the device`])).toEqual(theme(sheet, OPENINGS[name]));
  }
});

test('forced colours are all the reader’s own', () => {
  const found = theme(sheet, FORCED);
  for (const token of TOKENS) expect(found[token], token).toMatch(/^[A-Z][A-Za-z]+$/);
});

test('lines told apart by colour also differ in their dash', () => {
  const chart = readFileSync('src/charts/Crossing.svelte', 'utf8');
  const dash = (name: string) => {
    const block = new RegExp(`\\.curve\\.${name} \\{([^}]*)\\}`).exec(chart)?.[1];
    if (block === undefined) throw new Error(`no rule for ${name}`);
    return /stroke-dasharray: ([^;]+);/.exec(block)?.[1] ?? 'solid';
  };
  const dashes = ['fan', 'present', 'before', 'healthy'].map(dash);
  expect(dashes[0]).toBe('solid');
  expect(new Set(dashes).size).toBe(dashes.length);
});
