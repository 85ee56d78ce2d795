/** The house rules held against the whole tree. That each of them can fail is shown in tests/house/. */
import { execFileSync } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { root } from '../src/commands/run.ts';
import directions from './house/directions.json' with { type: 'json' };
import {
  notMentioned,
  notPinned,
  otherOrigins,
  strays,
  tooLong,
  unfitForEngine,
  wholeD3,
  wrongImports,
} from './house/rules.ts';

/** What git keeps or would keep; a file deleted but not yet recorded is left out. */
const paths = execFileSync('git', ['ls-files', '-z', '--cached', '--others', '--exclude-standard'], {
  cwd: root,
  encoding: 'utf8',
})
  .split('\0')
  .filter((path) => path !== '' && existsSync(join(root, path)));

const read = (path: string) => readFileSync(join(root, path), 'utf8');
const code = paths.filter((path) => /^(src|tests|lessons)\/.*\.(ts|svelte|js|css)$/.test(path));
const inModules = code.filter((path) => /^src\/[^/]+\/.*\.(ts|svelte|js)$/.test(path));
const published = paths.filter((path) =>
  /^(src|static)\/.*\.(ts|js|svelte|css|html|json|svg|md|txt|webmanifest)$/.test(path),
);

const manifest = JSON.parse(read('package.json')) as Record<
  'dependencies' | 'devDependencies',
  Record<string, string>
>;
const dependencies = { ...manifest.dependencies, ...manifest.devDependencies };

describe('the house', () => {
  test('the files to hold the rules against were found', () => {
    expect(code).toContain('tests/house.test.ts');
    expect(inModules).toContain('src/physics/types.ts');
    expect(inModules.some((path) => path.endsWith('.svelte'))).toBe(true);
    expect(published).toContain('src/app.html');
  });

  test('nothing strays at the top level', () => {
    expect(strays(paths)).toEqual([]);
  });

  test('no file is too long', () => {
    expect(code.flatMap((path) => tooLong(path, read(path)))).toEqual([]);
  });

  test('every dependency is one exact version', () => {
    expect(notPinned(dependencies)).toEqual([]);
  });

  test('DEVELOPERS.md says what every dependency is for', () => {
    expect(notMentioned(Object.keys(dependencies), read('DEVELOPERS.md'))).toEqual([]);
  });

  test('no address of another origin', () => {
    expect(published.flatMap((path) => otherOrigins(path, read(path)))).toEqual([]);
  });

  test('imports keep to the directions', () => {
    expect(inModules.flatMap((path) => wrongImports(path, read(path), directions))).toEqual([]);
  });

  test('d3 is imported by name', () => {
    expect(inModules.flatMap((path) => wholeD3(path, read(path)))).toEqual([]);
  });

  test('the engine has no clock, no page and no chance of its own', () => {
    const engine = inModules.filter((path) => path.startsWith('src/physics/'));
    expect(engine.flatMap((path) => unfitForEngine(path, read(path)))).toEqual([]);
  });
});
