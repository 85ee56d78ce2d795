/** Text that is not JSON is told by line and column, and the reader agrees with JSON.parse on what JSON is. */
import fc from 'fast-check';
import { describe, expect, it, vi } from 'vitest';
import { readRigText, seedRig, tell } from '#catalogue';

// The same walk every time, so that a failure can be walked again.
fc.configureGlobal({ seed: 2026 });
// Hundreds of runs a test, on a machine that may be busy.
vi.setConfig({ testTimeout: 60_000 });

const refusal = (text: string) => {
  const read = readRigText(text, 'f.json');
  return read.ok ? 'accepted' : tell(read.problems[0]!);
};

it.each<[string, string, string, ...string[]]>([
  ['an empty file', '', 'line 1, column 1', 'found an empty file'],
  ['spaces only', ' \n ', 'line 1, column 1', 'found an empty file'],
  ['NaN', '{\n  "name": "x",\n  "a": NaN\n}', 'line 3, column 8', 'found "NaN"', 'JSON has no such number'],
  ['minus infinity', '{ "a": -Infinity }', 'line 1, column 8', '"-Infinity"', 'JSON has no such number'],
  ['a comma too many', '{\n  "a": 1,\n}', 'line 3, column 1', 'found "}"', 'take away the comma'],
  [
    'a comma too few',
    '{ "a": 1 "b": 2 }',
    'line 1, column 10',
    'found "b"',
    'a comma or the closing }',
    'put a comma before it',
  ],
  ['a comma too few in a list', '[1 2]', 'line 1, column 4', 'found "2"', 'a comma or the closing ]'],
  ['the end missing', '{ "a": [1, 2', 'line 1, column 13', 'the end of the file', 'closing ]'],
  ['something after the end', '{}\r\n{}', 'line 2, column 1', 'found "{"', 'the end of the file'],
  ['single quotes', "{ 'a': 1 }", 'line 1, column 3', 'straight double quotes'],
  ['curly quotes', '{ \u201ca\u201d: 1 }', 'line 1, column 3', 'straight double quotes'],
  ['a key without quotes', '{ a: 1 }', 'line 1, column 3', 'found "a"', 'a key in double quotes'],
  ['a colon missing', '{ "a" 1 }', 'line 1, column 7', 'a colon after the key'],
  ['a comment', '// rig\n{}', 'line 1, column 1', 'JSON has no comments'],
  ['a number like .5', '{ "a": .5 }', 'line 1, column 8', 'found ".5"', 'numbers like 0.5'],
  ['a plus sign', '{ "a": +5 }', 'line 1, column 8', 'found "+5"', 'numbers like 0.5'],
  ['text over two lines', '{ "a": "x\ny" }', 'line 1, column 8', 'double quote on its own line'],
  [
    'a key twice',
    '{ "name": "a",\n "name": "b" }',
    'line 2, column 2',
    'the key "name" written a second time',
    'each key once',
  ],
  ['brackets without end', '['.repeat(100_000), 'line 1, column 42', 'more than 40 levels'],
  ['a file far too long', ' '.repeat(1_000_001), '(whole file)', '1000001 characters', 'at most 1000000'],
  [
    'a number beyond numbers',
    JSON.stringify(seedRig('base-case')).replace('"path_m":2', '"path_m":1e999'),
    'run[1].path_m',
    'Infinity',
  ],
])('tells %s', (_, text, place, ...words) => {
  const message = refusal(text);
  expect(message).toContain(`f.json: ${place}: found `);
  for (const word of words) expect(message).toContain(word);
});

it('reads text without end, or very long, without losing time over it', () => {
  const start = performance.now();
  expect(refusal(`{ "name": "${'x'.repeat(900_000)}`)).toContain('line 1, column 11');
  expect(refusal(`{ "name": "${'\\n'.repeat(400_000)}" }`)).toContain('name: found ');
  expect(performance.now() - start).toBeLessThan(4000);
});

it('passes over a byte-order mark', () => {
  const read = readRigText(`\uFEFF${JSON.stringify(seedRig('base-case'))}`, 'f.json');
  expect(read.ok && read.rig).toEqual(seedRig('base-case'));
});

describe('agrees with JSON.parse', () => {
  const isJson = (text: string) => {
    try {
      JSON.parse(text);
      return true;
    } catch {
      return false;
    }
  };
  /** Told as a place in the text, not in the rig; a key twice is legal to JSON.parse and refused here. */
  const saysNotJson = (text: string) => {
    const read = readRigText(text, 'f.json');
    return !read.ok && read.problems[0]!.code === 'not-json';
  };
  const saysKeyTwice = (text: string) => {
    const read = readRigText(text, 'f.json');
    return !read.ok && read.problems[0]!.code === 'key-twice';
  };

  it('on any JSON', () => {
    fc.assert(fc.property(fc.json({ maxDepth: 5 }), (text) => !saysNotJson(text)));
  });

  it('on a rig file with characters lost, doubled or put in', () => {
    const whole = JSON.stringify(seedRig('upstairs-bathroom'), null, 1);
    const scraps = fc.constantFrom(
      '',
      ',',
      '"',
      '{',
      '}',
      '[',
      ']',
      ':',
      '-',
      '.',
      '0',
      'e',
      'NaN',
      'null',
      '\\',
      '\n',
      '\u0001',
      '\u2028',
      '\u00a0',
    );
    fc.assert(
      fc.property(fc.nat(whole.length), fc.nat(3), scraps, (at, gone, scrap) => {
        const text = whole.slice(0, at) + scrap + whole.slice(at + gone);
        return saysKeyTwice(text) || saysNotJson(text) === !isJson(text);
      }),
      { numRuns: 1500 },
    );
  });
});
