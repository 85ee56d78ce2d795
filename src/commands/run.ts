/** Runs a tool that npm has put into node_modules, on any system, without a shell. */
import { spawn } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { languages } from '#i18n';

/** The project's top folder. */
export const root = fileURLToPath(new URL('../..', import.meta.url));

export interface Ran {
  code: number;
  /** What the tool printed; empty where it printed straight to the terminal. */
  output: string;
}

/** The script behind a package's command, read from the package itself: shims differ from system to system. */
function script(packageName: string, command: string): string {
  const manifest = join(root, 'node_modules', packageName, 'package.json');
  const { bin } = JSON.parse(readFileSync(manifest, 'utf8')) as { bin?: string | Record<string, string> };
  const path = typeof bin === 'string' ? bin : bin?.[command];
  if (!path) throw new Error(`${packageName} brings no command ${command}`);
  return join(dirname(manifest), path);
}

/** Runs `command` of `packageName` in the top folder. `quiet` keeps what it prints instead of showing it. */
export function run(
  [packageName, command]: readonly [string, string],
  options: readonly string[],
  { quiet = false, env = process.env }: { quiet?: boolean; env?: NodeJS.ProcessEnv } = {},
): Promise<Ran> {
  return new Promise((resolve, reject) => {
    const child = spawn(process.execPath, [script(packageName, command), ...options], {
      cwd: root,
      env,
      stdio: ['ignore', quiet ? 'pipe' : 'inherit', quiet ? 'pipe' : 'inherit'],
    });
    let output = '';
    for (const stream of [child.stdout, child.stderr]) {
      stream?.setEncoding('utf8').on('data', (text: string) => (output += text));
    }
    child.once('error', reject);
    child.once('close', (code) => resolve({ code: code ?? 1, output }));
  });
}

/**
 * Builds the pages into build/, then each other language into a folder in it (the first build empties build/).
 * Throws with the builder's own words when they do not build.
 */
export async function buildPages(): Promise<string> {
  for (const language of languages) {
    // Vitest sets these two for itself, and they would build the pages as for development.
    const env = {
      ...process.env,
      NODE_ENV: 'production',
      VITEST: undefined,
      LOST_LITRES_LANGUAGE: language,
    };
    const { code, output } = await run(['vite', 'vite'], ['build'], { quiet: true, env });
    if (code !== 0) throw new Error(`The pages did not build (${language}).\n\n${output}`);
  }
  return join(root, 'build');
}
