/**
 * `npm run -s solve -- FILE.json`: a rig in, its Solution out as JSON; `-` reads standard input.
 * Exit 0 solved, 1 for a file or rig that cannot be solved (said on standard error), 2 for wrong use.
 */
import { existsSync, readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { finding, readRigText, stock, tell } from '#catalogue';
import { solve } from '#physics';

const USAGE = `Usage: npm run -s solve -- FILE.json
       npm run -s solve -- -          (reads standard input)
Prints the solution of a rig as JSON.
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

async function answer(name: string): Promise<string> {
  const file = name === '-' ? 'standard input' : name;
  const read = readRigText(await textOf(name, file), file);
  if (!read.ok) return stop(read.problems.map(tell));
  const solution = solve(read.rig, stock);
  if (solution.outcome === 'failed') return stop([tell({ file, ...solution })]);
  return `${JSON.stringify(solution, null, 2)}\n`;
}

const names = process.argv.slice(2);
if (names.length === 1 && names[0] === '--help') {
  process.stdout.write(USAGE);
} else if (names.length !== 1 || names[0] === '') {
  process.stderr.write(USAGE);
  process.exitCode = 2;
} else {
  try {
    process.stdout.write(await answer(names[0]!));
  } catch (error) {
    if (!(error instanceof Stop)) throw error;
    process.stderr.write(`${error.message}\n`);
    process.exitCode = 1;
  }
}
