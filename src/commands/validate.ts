/**
 * `npm run -s validate`: the sources, one row for each check against something outside the engine, then
 * `N checks from M sources, F failed`. Exit 1 when a row fails or when rows or sources have become too few.
 */
import { report, runChecks } from '#validation';

const { lines, code } = report(runChecks());
console.log(lines.join('\n'));
process.exitCode = code;
