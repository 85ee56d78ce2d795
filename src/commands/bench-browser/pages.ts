/** Builds the pages with source maps beside the scripts, so that time can be booked to the file it was spent in. */
import { join } from 'node:path';
import { root, run } from '../run.ts';

/** Throws with the builder's own words when the pages do not build. The maps are named by no script. */
export async function buildBenchPages(): Promise<string> {
  const env = { ...process.env, NODE_ENV: 'production' };
  const { code, output } = await run(['vite', 'vite'], ['build', '--sourcemap', 'hidden'], {
    quiet: true,
    env,
  });
  if (code !== 0) throw new Error(`The pages did not build.\n\n${output}`);
  return join(root, 'build');
}
