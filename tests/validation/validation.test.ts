/** The checks against outside numbers hold, there are enough of them, and a wrong one is caught. */
import { spawn } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';
import { CHECKS, judge, LEAST, report, runChecks, SOURCES, summarise, type Check } from '#validation';

const rows = runChecks();
const root = fileURLToPath(new URL('../../', import.meta.url));

describe('the table', () => {
  test.each(rows.map((row) => [row.id, row] as const))('%s', (_id, row) => {
    expect(row.problem).toBeUndefined();
    expect(row.verdict, `${row.ours} for ${row.published}, allowed because ${row.allowed.why}`).toBe(
      'passes',
    );
  });

  test('at least 60 rows from at least 15 sources', () => {
    const summary = summarise(rows);
    expect(LEAST).toEqual({ checks: 60, sources: 15 });
    expect(summary.checks).toBeGreaterThanOrEqual(60);
    expect(summary.sources).toBeGreaterThanOrEqual(15);
    expect(summary.holds).toBe(true);
  });

  test('no two rows share a name, and each row says where its number stands and why it may be off', () => {
    expect(new Set(rows.map((row) => row.id)).size).toBe(rows.length);
    for (const row of rows) {
      for (const words of [row.where, row.quantity, row.allowed.why]) expect(words, row.id).toMatch(/\S{2}/);
      if (row.allowed.kind !== 'at least') expect(row.allowed.by, row.id).toBeGreaterThan(0);
    }
  });

  test('every source listed is leaned on by a row', () => {
    expect([...new Set(rows.map((row) => row.source))].sort()).toEqual(Object.keys(SOURCES).sort());
  });

  test('practice without a source is marked so, and nothing else is', () => {
    for (const row of rows) {
      expect(row.mark === 'common practice, no source', row.id).toBe(row.source === 'practice');
    }
  });
});

describe('a row can fail', () => {
  const right: Check = {
    id: 'made up',
    source: 'fluids',
    where: 'nowhere',
    mark: 'computed independently',
    quantity: 'a number',
    unit: '',
    published: 100,
    ours: () => 101,
    allowed: { kind: 'relative', by: 0.02, why: 'it is made up' },
  };
  const verdict = (change: Partial<Check>) => judge({ ...right, ...change }).verdict;

  test('by its share, by its size, from below, and with no number at all', () => {
    expect(verdict({})).toBe('passes');
    expect(verdict({ ours: () => 103 })).toBe('fails');
    expect(verdict({ ours: () => 97 })).toBe('fails');
    expect(verdict({ allowed: { kind: 'absolute', by: 0.5, why: '' } })).toBe('fails');
    expect(verdict({ allowed: { kind: 'absolute', by: 1.5, why: '' } })).toBe('passes');
    expect(verdict({ allowed: { kind: 'at least', why: '' } })).toBe('passes');
    expect(verdict({ ours: () => 99.9, allowed: { kind: 'at least', why: '' } })).toBe('fails');
    expect(verdict({ ours: () => NaN })).toBe('fails');
    expect(verdict({ ours: () => Infinity, allowed: { kind: 'at least', why: '' } })).toBe('fails');
    const thrown = judge({
      ...right,
      ours: () => {
        throw new Error('no crossing');
      },
    });
    expect(thrown.verdict).toBe('fails');
    expect(thrown.problem).toBe('no crossing');
  });

  test('one wrong row among the real ones fails the whole table, and the report names it', () => {
    const wrong = runChecks([...CHECKS, { ...right, ours: () => 150 }]);
    expect(summarise(wrong)).toMatchObject({ failed: 1, holds: false });
    const { lines, code } = report(wrong);
    expect(code).toBe(1);
    expect(lines.some((line) => line.startsWith('fails: made up'))).toBe(true);
    expect(lines.at(-1)).toBe(
      `${CHECKS.length + 1} checks from ${Object.keys(SOURCES).length} sources, 1 failed`,
    );
  });

  test('too few rows or too few sources fail, though each row passes', () => {
    expect(report(rows.slice(0, 59)).code).toBe(1);
    const oneSource = rows.map((row) => ({ ...row, source: 'fluids' as const }));
    expect(summarise(oneSource)).toMatchObject({ failed: 0, sources: 1, holds: false });
    expect(report(oneSource).code).toBe(1);
  });

  test.each(['handbook-6-4', 'length-smooth-4', 'epanet-base', 'orifice-60', 'practice-bench-usual'])(
    '%s would notice an answer half as large again',
    (id) => {
      const check = CHECKS.find((each) => each.id === id)!;
      expect(judge({ ...check, ours: () => 1.5 * check.ours() }).verdict).toBe('fails');
    },
  );
});

test('the command prints one aligned row a check and ends with the count', { timeout: 60_000 }, async () => {
  const { out, code } = await new Promise<{ out: string; code: number | null }>((settle, fail) => {
    const child = spawn(process.execPath, ['--import', 'tsx', 'src/commands/validate.ts'], { cwd: root });
    let out = '';
    child.stdout.on('data', (part) => (out += part));
    child.on('error', fail);
    child.on('close', (code) => settle({ out, code }));
  });
  const lines = out.trimEnd().split('\n');
  expect(lines.at(-1)).toBe(`${rows.length} checks from ${Object.keys(SOURCES).length} sources, 0 failed`);
  const printed = lines.filter((line) => /^(passes|fails) {2}/.test(line));
  expect(printed).toHaveLength(rows.length);
  const place = lines.find((line) => line.startsWith('verdict'))!.indexOf('quantity');
  for (const line of printed) expect(line.slice(place - 2, place)).toBe('  ');
  expect(code).toBe(0);
});
