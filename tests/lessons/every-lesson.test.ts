/** Every lesson in `lessons/`: its file, its words, and its right answers against the engine. */
import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { isTaught, partsOf, problemText, type Question } from '#lesson';
import { loadLessons } from '#lesson-load';
import { auditLesson } from '#session';

/**
 * Figures that may stand in the words because they are published and no engine computes them, or name what
 * is assumed. Each names its source where it stands; the list says who publishes it.
 */
const PUBLISHED: Readonly<Record<string, string>> = {
  '1.2 m': 'support spacing, US DOE and PNNL guide',
  '38 mm': 'strap width, US DOE and PNNL guide; lap of a round metal joint, IRC M1601.4.1',
  '0.9 m': 'straight duct at the fan, US DOE checklist',
  '75 mm': 'strap or saddle, AS 4254.1:2021 as a trade summary reports it',
  '25 mm': 'strap on a saddle, the same; least strap, SMACNA 1995',
  '90 %': 'free area of a terminal, England, Approved Document F 2021, 1.80',
  '30 L/s': 'flow above which one flexible bend is the most, NHBC Standards 2024, 8.4.2.6',
  '60 %': 'relative humidity called clear, a model assumption the words name',
  '85 %': 'over a day, England, Approved Document F 2021, Table B3',
  '75 %': 'over a week, the same',
  '10 mm': 'gap under a door, England, Approved Document F 2021, 1.25',
  '2 L/s': 'the same turned over: one over 0.5 W for a litre a second',
  '0.5 W': 'most watts for a litre a second, England, Approved Document L, Volume 1, 2021, 6.55',
  '3.8 cfm': 'least air for a watt of an in-line fan, 10 CFR 460.204',
  '5 %': 'accuracy of the meter, England, Approved Document F 2021, 4.10',
  '120 mm': 'fan and duct of a rented bathroom, New Zealand, Healthy Homes Standards 2019',
  '1.5 m': 'most flexible, England, Approved Document F 2021, 1.77',
};
const WITH_UNIT =
  /\d+(?:[.,]\d+)?\s*(?:%|percent|(?:mm|cm|m|L\/s|l\/s|litres?|m3\/h|m³\/h|cfm|Pa|pascals?|W|watts?|°C|degrees?)\b)/g;

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
    const typed = [...markdown.matchAll(WITH_UNIT)].map(([found]) => found);
    expect(typed.filter((found) => !(found in PUBLISHED))).toEqual([]);
    expect('It moves 33.8 L/s at 12 Pa, 5 %'.match(WITH_UNIT)).toEqual(['33.8 L/s', '12 Pa', '5 %']);
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
