/** The table of scores beside the lessons: whole, added up rightly, never above what the machine sees, and good enough. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { loadLessons } from '#lesson-load';
import { rubric } from '../../src/commands/lessons/rubric.ts';

const lessons = loadLessons();
const cells = readFileSync(new URL('../../lessons/RUBRIC.md', import.meta.url), 'utf8')
  .split('\n')
  .filter((line) => line.startsWith('|'))
  .map((line) =>
    line
      .split('|')
      .slice(1, -1)
      .map((cell) => cell.trim()),
  );
const numbered = cells.filter(([row]) => /^\d+/.test(row!));
const rows = new Map(numbered.map(([row, , ...rest]) => [Number(/^\d+/.exec(row!)![0]), rest]));
const totals = cells.find(([, what]) => what?.includes('total'))!.slice(2, -1);
const GATES = [1, 7, 11, 25, 28];

it('has thirty rows, each with its place and a score for every lesson', () => {
  expect([...rows.keys()]).toEqual(Array.from({ length: 30 }, (_, i) => i + 1));
  for (const [row, rest] of rows) {
    expect(rest, `row ${row}`).toHaveLength(lessons.length + 1);
    expect(rest.at(-1)!.length, `row ${row}`).toBeGreaterThan(10);
    expect(rest.slice(0, -1).every((score) => /^[0-3]$/.test(score))).toBe(true);
  }
});

describe.each(lessons.map(({ lesson, text }) => [lesson.slug, lesson, text] as const))(
  '%s',
  (_, lesson, text) => {
    const at = lesson.number - 1;
    const score = (row: number) => Number(rows.get(row)![at]);

    it('adds up, to 75 at least, with every gate at 2', () => {
      const sum = [...rows.keys()].reduce((total, row) => total + score(row), 0);
      expect(totals[at]).toBe(`**${sum}**`);
      expect(sum).toBeGreaterThanOrEqual(75);
      for (const gate of GATES) expect(score(gate), `row ${gate}`).toBeGreaterThanOrEqual(2);
    });

    it('claims no more than the machine sees', () => {
      for (const { row, score: seen } of rubric(lesson, text))
        expect(score(row), `row ${row}`).toBeLessThanOrEqual(seen);
    });
  },
);
