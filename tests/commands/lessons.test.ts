/** The command an author checks a lesson with: how it is used, what it counts, how it ends. */
import { execFile } from 'node:child_process';
import { mkdirSync, mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { loadExample } from '#lesson-load';
import { root } from '../../src/commands/run.ts';

const lessons = (...args: string[]) =>
  new Promise<{ code: number; out: string; told: string }>((done) => {
    const command = ['--import', 'tsx', 'src/commands/lessons.ts', ...args];
    execFile(process.execPath, command, { cwd: root }, (error, out, told) =>
      done({ code: Number(error?.code ?? 0), out, told }),
    );
  });

/** A folder with the example of the guide, its words changed. */
function folder(change: (words: string) => string): string {
  const { structure, words } = loadExample();
  const name = join(mkdtempSync(join(tmpdir(), 'lesson-')), '99-one-small-fault');
  mkdirSync(name);
  writeFileSync(join(name, structure.name), structure.content);
  writeFileSync(join(name, words.name), change(words.content));
  return name;
}

it('says how it is used, and checks nothing', { timeout: 30_000 }, async () => {
  const { code, out } = await lessons('--help');
  expect(code).toBe(0);
  expect(out).toMatch(/^npm run -s lessons -- \[FOLDER/);
  expect(out).not.toContain('every lesson holds up');
});

it('counts problems and warnings, and fails for problems alone', { timeout: 30_000 }, async () => {
  const typed = folder((words) => words.replace('It was {before}.', 'It was 39.8 L/s.'));
  const wrong = folder((words) => words.replace('## end: ', '## stray: '));
  const [warned, failed] = [await lessons(typed, '--brief'), await lessons(wrong, '--brief')];
  expect(warned).toMatchObject({ code: 0, told: expect.stringMatching(/^Warning: .*"39.8 L\/s" is typed/) });
  expect(warned.out).toMatch(/\n1 warning\nevery lesson holds up\n$/);
  expect(failed).toMatchObject({ code: 1, out: '1 problem\n' });
});
