/** The build's door to the lessons, and that the readers' door does not carry the Markdown reader along. */
import { readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect, it } from 'vitest';
import { loadLesson, loadLessons } from '#lesson-load';

it('loads a lesson by its slug with its words', () => {
  const { lesson, text } = loadLesson('five-small-faults');
  expect(lesson.slug).toBe('five-small-faults');
  expect(text.sections['sag/brief']?.html).toContain('{sag}');
  expect(structuredClone({ lesson, text })).toEqual({ lesson, text });
  expect(loadLessons().map((each) => each.lesson.number)).toEqual(
    [...loadLessons().map((each) => each.lesson.number)].sort((a, b) => a - b),
  );
});

it('names the lessons there are when there is no such lesson', () => {
  expect(() => loadLesson('nothing')).toThrow(/lessons, slug: found nothing; allowed is .*five-small-faults/);
});

it('keeps the Markdown reader out of what is sent to a reader', () => {
  const folder = fileURLToPath(new URL('../../src/lesson/', import.meta.url));
  const seen = new Set<string>();
  const visit = (file: string): string[] => {
    if (seen.has(file)) return [];
    seen.add(file);
    const from = [...readFileSync(file, 'utf8').matchAll(/from\s+'([^']+)'/g)].map((match) => match[1]!);
    return from.flatMap((name) => (name.startsWith('.') ? visit(join(dirname(file), name)) : [name]));
  };
  const outside = visit(join(folder, 'index.ts'));
  expect(outside).toContain('xstate');
  expect(outside).not.toContain('marked');
  expect(seen).not.toContain(join(folder, 'text.ts'));
});
