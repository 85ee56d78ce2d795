/**
 * `npm run -s solve -- FILE.json`: a rig in, its Solution out as JSON; `-` reads standard input. With
 * `--consequences` what it does to room, roof and energy is added under that key.
 * Exit 0 solved, 1 for a file or rig that cannot be solved (said on standard error), 2 for wrong use.
 */
import { existsSync, readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { finding, tell } from '#catalogue';
import { solveText } from './solve-text.ts';

const WITH_CONSEQUENCES = '--consequences';
const USAGE = `Usage: npm run -s solve -- [${WITH_CONSEQUENCES}] FILE.json
       npm run -s solve -- [${WITH_CONSEQUENCES}] -          (reads standard input)
Prints the solution of a rig as JSON; with ${WITH_CONSEQUENCES} also what it does to room, roof and energy.
`;

/** What the system calls give back, in words. */
const troubles: Readonly<Record<string, string>> = {
  ENOENT: 'nothing of that name',
  EISDIR: 'a folder',
  EACCES: 'a file that may not be read',
  EPERM: 'a file that may not be read',
};

class Stop extends Error {}

function stop(lines: readonly string[]): never {
  throw new Stop(lines.join('\n'));
}

async function bytesOf(name: string): Promise<Uint8Array> {
  if (name === '-') {
    const parts: Uint8Array[] = [];
    for await (const part of process.stdin) parts.push(part);
    return Buffer.concat(parts);
  }
  // npm changes to the project's folder first; the file is meant from where the user stands.
  const standing = process.env.INIT_CWD === undefined ? name : resolve(process.env.INIT_CWD, name);
  return readFileSync(existsSync(standing) ? standing : name);
}

async function textOf(name: string, file: string): Promise<string> {
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(await bytesOf(name));
  } catch (error) {
    const code = (error as NodeJS.ErrnoException).code ?? '';
    const found =
      error instanceof TypeError
        ? 'bytes that are not UTF-8 text'
        : (troubles[code] ?? `trouble reading it (${code})`);
    return stop([
      tell({ file, ...finding('not-readable', '(whole file)', found, 'a rig as JSON text in UTF-8') }),
    ]);
  }
}

async function answer(name: string, more: boolean): Promise<string> {
  const file = name === '-' ? 'standard input' : name;
  const solved = solveText(await textOf(name, file), file, more);
  return solved.ok ? solved.text : stop(solved.lines);
}

const words = process.argv.slice(2);
const names = words.filter((word) => word !== WITH_CONSEQUENCES);
if (words.length === 1 && words[0] === '--help') {
  process.stdout.write(USAGE);
} else if (names.length !== 1 || names[0] === '' || names[0]!.startsWith('--')) {
  process.stderr.write(USAGE);
  process.exitCode = 2;
} else {
  try {
    process.stdout.write(await answer(names[0]!, words.length > names.length));
  } catch (error) {
    if (!(error instanceof Stop)) throw error;
    process.stderr.write(`${error.message}\n`);
    process.exitCode = 1;
  }
}
