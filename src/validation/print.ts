/** Rows of verdicts as aligned text, and the numbers as both the command and the page print them. */
import { LEAST, summarise } from './judge.ts';
import { SOURCES } from './sources.ts';
import type { Row } from './types.ts';

/** Five figures or as many as asked, no exponent for the sizes that occur here, a true minus sign. */
export function number(value: number, figures = 5): string {
  if (!Number.isFinite(value)) return 'none';
  if (value === 0) return '0';
  const size = Math.floor(Math.log10(Math.abs(value)));
  const decimals = Math.min(7, Math.max(0, figures - 1 - size));
  const text = Math.abs(value).toFixed(decimals);
  const short = text.includes('.') ? text.replace(/\.?0+$/, '') : text;
  return value < 0 && Number(short) !== 0 ? `−${short}` : short;
}

/** More would be noise. */
export const DIFFERENCE_FIGURES = 3;

/** What is allowed, as short text: "±4 %", "±0.6", "at least". */
export function allowance(row: Pick<Row, 'allowed'>): string {
  const { allowed } = row;
  if (allowed.kind === 'at least') return 'at least';
  return allowed.kind === 'relative' ? `±${number(100 * allowed.by)} %` : `±${number(allowed.by)}`;
}

const HEADS = [
  'verdict',
  'check',
  'source',
  'quantity',
  'unit',
  'outside',
  'ours',
  'difference',
  'allowed',
  'mark',
];
const NUMERIC = new Set(['outside', 'ours', 'difference', 'allowed']);

/** One aligned line a row under a line of heads; sources by their key. */
export function table(rows: readonly Row[]): string[] {
  const cells = rows.map((row) => [
    row.verdict,
    row.id,
    row.source,
    row.quantity,
    row.unit,
    number(row.published),
    number(row.ours),
    number(row.difference, DIFFERENCE_FIGURES),
    allowance(row),
    row.mark,
  ]);
  const lines = [HEADS, ...cells];
  const widths = HEADS.map((_, i) => Math.max(...lines.map((line) => line[i]!.length)));
  return lines.map((line) =>
    line
      .map((cell, i) => (NUMERIC.has(HEADS[i]!) ? cell.padStart(widths[i]!) : cell.padEnd(widths[i]!)))
      .join('  ')
      .trimEnd(),
  );
}

/** What the command prints: the sources, the table, what failed and why, and the count; and its exit code. */
export function report(rows: readonly Row[]): { readonly lines: string[]; readonly code: 0 | 1 } {
  const { checks, sources, failed, holds } = summarise(rows);
  const named = [...new Set(rows.map((row) => row.source))];
  const width = Math.max(0, ...named.map((id) => id.length));
  const tooFew = checks < LEAST.checks || sources < LEAST.sources;
  const lines = [
    ...named.map(
      (id) => `${id.padEnd(width)}  ${SOURCES[id].title} (${SOURCES[id].edition}); ${SOURCES[id].read}`,
    ),
    '',
    ...table(rows),
    '',
    ...rows
      .filter(({ verdict }) => verdict === 'fails')
      .map((row) => `fails: ${row.id}: ${row.problem ?? `allowed because ${row.allowed.why}`}`),
    ...(tooFew
      ? [`too few: at least ${LEAST.checks} checks from ${LEAST.sources} sources are asked for`]
      : []),
    `${checks} checks from ${sources} sources, ${failed} failed`,
  ];
  return { lines, code: holds ? 0 : 1 };
}
