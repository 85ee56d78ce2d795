/** `npm run build`: the pages of every language, into build/. */
import { buildPages } from './run.ts';

try {
  console.log(`The pages are in ${await buildPages()}`);
} catch (error) {
  console.error(error instanceof Error ? error.message : error);
  process.exitCode = 1;
}
