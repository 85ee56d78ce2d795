/**
 * `npm run -s stored`: keeps the gallery's pictures and the lesson's spoken words as they are now. Look at them
 * first; the difference of the stored files shows what was accepted.
 */
import { run } from './run.ts';

const env = { ...process.env, STORE_TEXTS: '1' };
const { code } = await run(['vitest', 'vitest'], ['run', 'tests/gallery/', 'tests/spoken/'], { env });
process.exitCode = code;
