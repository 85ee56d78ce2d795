/**
 * `npm test`: every check in order, all of them even after one has failed. The last line is
 * `N passed, N failed`: each test counts as one, and so does each check that is no test.
 */
import { existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { run } from './run.ts';
import { tally, type Report } from './tally.ts';

const checks: { name: string; tool: [string, string]; options: string[] }[] = [
  { name: 'svelte-kit sync', tool: ['@sveltejs/kit', 'svelte-kit'], options: ['sync'] },
  {
    name: 'svelte-check',
    tool: ['svelte-check', 'svelte-check'],
    options: ['--tsconfig', './tsconfig.json', '--fail-on-warnings'],
  },
  { name: 'tsc, engine alone', tool: ['typescript', 'tsc'], options: ['-p', 'src/physics/tsconfig.json'] },
  { name: 'eslint', tool: ['eslint', 'eslint'], options: ['.', '--max-warnings', '0'] },
  { name: 'prettier', tool: ['prettier', 'prettier'], options: ['--check', '.'] },
];

let passed = 0;
let failed = 0;

for (const { name, tool, options } of checks) {
  console.log(`\n== ${name}`);
  const { code } = await run(tool, options);
  if (code === 0) passed += 1;
  else {
    failed += 1;
    console.log(`${name} failed`);
  }
}

console.log('\n== vitest');
const folder = mkdtempSync(join(tmpdir(), 'lost-litres-test-'));
const file = join(folder, 'report.json');
const { code } = await run(
  ['vitest', 'vitest'],
  ['run', '--reporter=default', '--reporter=json', `--outputFile.json=${file}`],
);
const report = existsSync(file) ? (JSON.parse(readFileSync(file, 'utf8')) as Report) : undefined;
rmSync(folder, { recursive: true });

const tests = tally(report, code);
for (const complaint of tests.complaints) console.log(complaint);
passed += tests.passed;
failed += tests.failed;

console.log(`\n${passed} passed, ${failed} failed`);
process.exitCode = failed === 0 ? 0 : 1;
