/** The headless command as a user meets it: exit code, standard output and standard error. */
import { spawn } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { seedRig, seedRigIds, stock } from '#catalogue';
import { consequences, solve } from '#physics';

const root = fileURLToPath(new URL('../../', import.meta.url));
const badFiles = 'tests/fixtures/bad-files';

interface Ran {
  readonly code: number | null;
  readonly out: string;
  readonly err: string;
}

/** Started as the `solve` script of package.json starts it, without the start-up time of npm. */
function run(args: readonly string[], input = '', from: string = root): Promise<Ran> {
  return new Promise((settle, fail) => {
    const child = spawn(process.execPath, ['--import', 'tsx', 'src/commands/solve.ts', ...args], {
      cwd: root,
      env: { ...process.env, INIT_CWD: from },
    });
    let out = '';
    let err = '';
    child.stdout.on('data', (part) => (out += part));
    child.stderr.on('data', (part) => (err += part));
    child.on('error', fail);
    child.on('close', (code) => settle({ code, out, err }));
    child.stdin.on('error', () => {});
    child.stdin.end(input);
  });
}

const aMinute = 60_000;

it('stands in package.json under the name people use', () => {
  const { scripts } = JSON.parse(readFileSync(`${root}package.json`, 'utf8'));
  expect(scripts.solve).toMatch(/tsx.* src\/commands\/solve\.ts$/);
});

describe('a good rig', () => {
  it.each(seedRigIds)(
    '%s is solved',
    async (id) => {
      const { code, out, err } = await run([`seeds/rigs/${id}.json`]);
      expect(err).toBe('');
      expect(code).toBe(0);
      const solution = JSON.parse(out);
      expect(solution).toEqual(JSON.parse(JSON.stringify(solve(seedRig(id), stock))));
      expect(Math.abs(solution.residual_Pa)).toBeLessThan(1e-6);
      expect(out).toMatch(/^\{\n {2}"outcome"/);
    },
    aMinute,
  );

  it(
    'is read from standard input, byte-order mark or not',
    async () => {
      const { code, out } = await run(['-'], `\uFEFF${JSON.stringify(seedRig('base-case'))}`);
      expect(code).toBe(0);
      expect(JSON.parse(out).outcome).toBe('solved');
    },
    aMinute,
  );
});

describe('--consequences', () => {
  it(
    'adds what the run does to room, roof and energy, and changes nothing else',
    async () => {
      const { code, out } = await run(['--consequences', 'seeds/rigs/leaky-loft-run.json']);
      expect(code).toBe(0);
      const { consequences: told, ...solution } = JSON.parse(out);
      const rig = seedRig('leaky-loft-run');
      const solved = solve(rig, stock);
      if (solved.outcome !== 'solved') throw new Error(solved.found);
      expect(solution).toEqual(JSON.parse(JSON.stringify(solved)));
      expect(told).toEqual(JSON.parse(JSON.stringify(consequences(solved, rig.room))));
      expect(told.roof.places.length).toBeGreaterThan(0);
    },
    aMinute,
  );
});

/** The files that only the command can refuse, and one of each sort it passes on; the rest are in bad-files.test.ts. */
const refusals: readonly (readonly [file: string, place: string, ...words: string[]])[] = [
  ['unit-slip-in-key.json', 'run[1].diameter_m', 'did you mean diameter_mm, in millimetres?'],
  ['not-a-number.txt', 'line 49, column 17', 'JSON has no such number'],
  ['sixteen-bit.txt', '(whole file)', 'not UTF-8'],
  ['no-answer.json', 'room.makeUpFreeArea_mm2', 'no way into the room'],
];

describe('a bad file', () => {
  it.each(refusals)(
    '%s is refused at %s',
    async (file, place, ...words) => {
      const { code, out, err } = await run([`${badFiles}/${file}`]);
      expect(code).toBe(1);
      expect(out).toBe('');
      expect(err).toContain(`${badFiles}/${file}: ${place}: found `);
      for (const word of ['; allowed: ', ...words]) expect(err).toContain(word);
      expect(err, 'one message, no stack').toMatch(/^[^\n]+\n$/);
    },
    aMinute,
  );
});

it('takes a path from where the user stands', async () => {
  const { code, out } = await run(['base-case.json'], '', `${root}seeds/rigs`);
  expect(code).toBe(0);
  expect(JSON.parse(out).outcome).toBe('solved');
}, 60_000);

describe('no rig at all', () => {
  it.each<[string, string[], number, string]>([
    ['no argument', [], 2, 'Usage: npm run -s solve -- [--consequences] FILE.json'],
    ['a flag there is none of', ['--consequence', 'seeds/rigs/base-case.json'], 2, 'Usage:'],
    ['an unknown flag alone', ['--all'], 2, 'Usage:'],
    ['two files', ['a.json', 'b.json'], 2, 'Usage:'],
    [
      'a file that is not there',
      ['seeds/rigs/nowhere.json'],
      1,
      'seeds/rigs/nowhere.json: (whole file): found nothing of that name',
    ],
    ['a folder', ['seeds/rigs'], 1, 'seeds/rigs: (whole file): found a folder'],
    ['nothing on standard input', ['-'], 1, 'standard input: line 1, column 1: found an empty file'],
  ])(
    '%s',
    async (_, args, expected, words) => {
      const { code, out, err } = await run(args);
      expect(code).toBe(expected);
      expect(out).toBe('');
      expect(err).toContain(words);
      expect(err).not.toContain('    at ');
    },
    aMinute,
  );
});
