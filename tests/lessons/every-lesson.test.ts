/** Every lesson in `lessons/`: its file, its words, and its right answers against the engine. */
import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { isTaught, partsOf, problemText, type Question } from '#lesson';
import { typedNumbers } from '#lesson-author';
import { loadLessons } from '#lesson-load';
import { auditLesson } from '#session';

const folder = new URL('../../lessons/', import.meta.url);
const names = readdirSync(folder, { withFileTypes: true })
  .filter((entry) => entry.isDirectory())
  .map(({ name }) => name);
const lessons = loadLessons();
const words = (name: string) => readFileSync(new URL(`${name}/text.en.md`, folder), 'utf8');

it('there are lessons, each in a folder of its number and slug', () => {
  expect(names).toContain('02-five-small-faults');
  expect(lessons.map(({ lesson }) => `${String(lesson.number).padStart(2, '0')}-${lesson.slug}`)).toEqual(
    [...names].sort(),
  );
});

describe.each(lessons.map((each, i) => [names.sort()[i]!, each] as const))('%s', (name, { lesson, text }) => {
  const markdown = words(name);
  const taught = lesson.steps.filter(isTaught);
  const questions = taught.flatMap((step) =>
    [step.observe, step.explain, step.again].filter((each) => each !== undefined),
  );

  it('holds up to the engine: every stage solves, every right answer is what happens, every value is there', () => {
    expect(auditLesson(lesson, text, name).map(problemText)).toEqual([]);
  });

  it('does not always put the right answer in the same place', () => {
    const places = (all: readonly Question[]) =>
      new Set(all.map(({ options, right }) => options.indexOf(right))).size;
    expect(places(questions)).toBeGreaterThan(1);
    expect(places(taught.map(({ explain }) => explain))).toBeGreaterThan(taught.length > 1 ? 1 : 0);
  });

  it('asks more than one question of the eye', () => {
    const checks = taught.flatMap(({ observe }) => (observe ? [observe.check] : []));
    if (checks.length > 1) expect(new Set(checks).size).toBeGreaterThan(1);
  });

  it('answers every wrong option with an idea and words of its own', () => {
    const wrong = partsOf(lesson)
      .filter((part) => part.wrong)
      .map(({ key }) => text.sections[key]!);
    expect(wrong.length).toBeGreaterThan(questions.length);
    const reasons = wrong.map((section) => section.html.split('</strong>')[1]);
    expect(new Set(reasons).size).toBe(wrong.length);
    // One phrase is no reason: what tempts and why it fails need a few sentences.
    for (const section of wrong)
      expect([section.idea, section.html.split(/[.?!:](?=\s|<)/).length > 3]).toEqual([section.idea, true]);
  });

  it('types no number with a unit but published ones', () => {
    expect(typedNumbers(markdown)).toEqual([]);
    expect(typedNumbers('It moves 33.8 L/s at 12 Pa, 7 %; 30 L/s').map(({ figure }) => figure)).toEqual([
      '33.8 L/s',
      '12 Pa',
      '7 %',
    ]);
  });

  it('is written in short sentences', () => {
    const sentences = Object.values(text.sections)
      .flatMap(({ html }) => html.replace(/<[^>]+>/g, ' ').split(/(?<=[.?!:])\s+/))
      .map((sentence) => sentence.trim().split(/\s+/).filter(Boolean))
      .filter((all) => all.length > 0);
    const mean = sentences.reduce((sum, all) => sum + all.length, 0) / sentences.length;
    expect(mean).toBeLessThan(13);
    expect(sentences.filter((all) => all.length > 28).map((all) => all.join(' '))).toEqual([]);
  });

  it('says once that predictions are not marked', () => {
    const whole = Object.values(text.sections).map(({ title, html }) => `${title} ${html}`);
    expect(whole.join(' ').match(/not marked/gi)).toHaveLength(1);
  });
});
