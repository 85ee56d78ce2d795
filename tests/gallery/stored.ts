/** Texts kept in files and compared with what is drawn or said now; `npm run -s stored` keeps what there is now. */
import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname } from 'node:path';

export const ACCEPT = 'npm run -s stored';
/** Set by that command. */
export const storing = process.env.STORE_TEXTS === '1';

/** The lines that differ, between the first that does and the last. */
export function difference(stored: string, now: string, most = 5): string[] {
  const was = stored.split('\n');
  const is = now.split('\n');
  let top = 0;
  while (top < was.length && top < is.length && was[top] === is[top]) top += 1;
  let foot = 0;
  while (foot < Math.min(was.length, is.length) - top && was.at(-1 - foot) === is.at(-1 - foot)) foot += 1;
  const told = (lines: readonly string[], sign: string): string[] => {
    const changed = lines.slice(top, lines.length - foot);
    const shown = changed.slice(0, most).map((line) => `${sign} ${line}`);
    return changed.length > most ? [...shown, `${sign} and ${changed.length - most} lines more`] : shown;
  };
  return [`from line ${top + 1}, - stored, + now`, ...told(was, '-'), ...told(is, '+')];
}

/** Nothing when the file holds this text, or holds it from now on; else what differs and how to accept it. */
export function compared(file: string, what: string, now: string, store = storing): string | undefined {
  if (store) {
    mkdirSync(dirname(file), { recursive: true });
    writeFileSync(file, now);
    return undefined;
  }
  if (!existsSync(file)) return `${what} is not stored yet. Look at it, then keep it: ${ACCEPT}`;
  const stored = readFileSync(file, 'utf8');
  if (stored === now) return undefined;
  return [
    `${what} is not as it is stored in ${file}.`,
    `If it is meant, look at it, run ${ACCEPT}, and read the difference.`,
    ...difference(stored, now),
  ].join('\n');
}
