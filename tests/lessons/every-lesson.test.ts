/** Every lesson in `lessons/`: its file, its words, and its right answers against the engine. */
import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { isSeedRigId, seedRig, stock } from '#catalogue';
import {
  checkText,
  faultSteps,
  fill,
  fillWords,
  partsOf,
  problemText,
  readLesson,
  runValues,
  stepValues,
  trueAnswer,
  type FaultStep,
  type Lesson,
  type Sight,
} from '#lesson';
import { defaults, type UnitChoice } from '#units';
import { fanCurveOf, FAULTS, solve, systemCurve, type Fault, type Rig, type Solution } from '#physics';
import { readText } from '../../src/lesson/text.ts';

/**
 * Figures that may stand in the words because they are published and no engine computes them:
 * 1.2 m, 38 mm and 0.9 m: US DOE and PNNL guide and checklist; 75 mm and 25 mm: AS 4254.1:2021 as a trade
 * summary reports it; 1.5 m: England, Approved Document F 2021, 1.77.
 */
const PUBLISHED = ['1.2 m', '38 mm', '0.9 m', '75 mm', '25 mm', '1.5 m'];
const WITH_UNIT =
  /\d+(?:[.,]\d+)?\s*(?:%|percent|(?:mm|cm|m|L\/s|l\/s|litres?|m3\/h|m³\/h|cfm|Pa|pascals?|W|watts?|°C|degrees?)\b)/g;

const units: UnitChoice[] = [
  defaults,
  { flow: 'cfm', pressure: 'in w.g.' },
  { flow: 'm3/h', pressure: 'Pa' },
];
const folder = new URL('../../lessons/', import.meta.url);
const names = readdirSync(folder, { withFileTypes: true })
  .filter((entry) => entry.isDirectory())
  .map(({ name }) => name);

function open(name: string) {
  const file = (last: string) => readFileSync(new URL(`${name}/${last}`, folder), 'utf8');
  const read = readLesson(JSON.parse(file('lesson.json')), `lessons/${name}/lesson.json`);
  if (!read.ok) throw new Error(read.problems.map(problemText).join('\n'));
  const markdown = file('text.en.md');
  return { lesson: read.lesson, markdown, ...readText(markdown, `lessons/${name}/text.en.md`) };
}

function rigOf(lesson: Lesson): Rig {
  if (!isSeedRigId(lesson.rig)) throw new Error(`no rig ${lesson.rig}`);
  return seedRig(lesson.rig);
}

function solved(rig: Rig, faults: readonly Fault[]): Solution {
  const solution = solve({ ...rig, faults }, stock);
  if (solution.outcome === 'failed') throw new Error(JSON.stringify(solution));
  return solution;
}

function sightOf(lesson: Lesson, step: FaultStep): Sight {
  const rig = rigOf(lesson);
  const faults = faultSteps(lesson).map((each) => each.fault);
  const index = faultSteps(lesson).indexOf(step);
  const flows = Array.from({ length: 25 }, (_, i) => i * 2.5);
  const at = (count: number) => ({ ...rig, faults: faults.slice(0, count) });
  return {
    before: solved(rig, faults.slice(0, index)),
    after: solved(rig, faults.slice(0, index + 1)),
    system: {
      before: systemCurve(at(index), stock, flows)!,
      after: systemCurve(at(index + 1), stock, flows)!,
    },
    fan: { before: fanCurveOf(at(index), stock, flows)!, after: fanCurveOf(at(index + 1), stock, flows)! },
  };
}

it('there are lessons', () => {
  expect(names).toContain('02-five-small-faults');
});

describe.each(names)('%s', (name) => {
  const { lesson, text, problems, markdown } = open(name);
  const steps = faultSteps(lesson);
  const sectionsOf = (step: FaultStep) =>
    Object.entries(text.sections).filter(([key]) => key.split('/')[0] === step.id);

  it('is in a folder of its number and slug', () => {
    expect(name).toBe(`${String(lesson.number).padStart(2, '0')}-${lesson.slug}`);
  });

  it('has words for every part and for nothing else', () => {
    expect([...problems, ...checkText(lesson, text, name)].map(problemText)).toEqual([]);
  });

  it('puts each fault where it can befall the rig, and points at pieces there are', () => {
    const rig = rigOf(lesson);
    for (const { fault, observe, chain } of steps) {
      const piece = rig.run.find(({ id }) => id === fault.at);
      expect(piece && FAULTS[fault.kind].fits(piece, stock)).toBe(true);
      const pieces = chain.flatMap((link) => ('piece' in link ? [link.piece] : []));
      const named = observe.check === 'which-piece' ? observe.options : [];
      for (const id of [...pieces, ...named]) expect(rig.run.map((each) => each.id)).toContain(id);
    }
  });

  it.each(steps.map((step) => [step.id, step] as const))(
    '%s: the right observation is what the engine shows',
    (_id, step) => {
      expect(trueAnswer(step.observe.check, sightOf(lesson, step))).toBe(step.observe.right);
    },
  );

  it('lets the flow before and after each fault be predicted', () => {
    for (const step of steps) {
      const { before, after } = sightOf(lesson, step);
      for (const { flow_L_s } of [before, after]) {
        expect(flow_L_s.outdoors).toBeGreaterThan(step.predict.low_L_s);
        expect(flow_L_s.outdoors).toBeLessThan(step.predict.high_L_s);
      }
    }
  });

  it('asks another question of the eye at every step', () => {
    expect(new Set(steps.map((step) => step.observe.check)).size).toBe(steps.length);
  });

  it('does not always put the right answer in the same place', () => {
    for (const part of ['observe', 'explain'] as const) {
      const places = steps.map((step) => step[part].options.indexOf(step[part].right));
      expect(new Set(places).size).toBeGreaterThan(1);
    }
  });

  it('answers every wrong option with an idea and words of its own', () => {
    const wrong = partsOf(lesson)
      .filter((part) => part.wrong)
      .map(({ key }) => text.sections[key]!);
    expect(wrong.length).toBe(
      steps.reduce((sum, step) => sum + step.observe.options.length + step.explain.options.length - 2, 0),
    );
    expect(new Set(wrong.map((section) => section.idea)).size).toBe(wrong.length);
    expect(new Set(wrong.map((section) => section.html.split('</strong>')[1])).size).toBe(wrong.length);
    // One phrase is no reason: what tempts and why it fails need a few sentences.
    for (const section of wrong)
      expect([section.idea, section.html.split(/[.?!:](?=\s|<)/).length > 4]).toEqual([section.idea, true]);
  });

  it.each(units)('fills every placeholder with the engine, in $flow and $pressure', (choice) => {
    const rig = rigOf(lesson);
    const healthy = solved(rig, []);
    const required_L_s = rig.required?.flow_L_s;
    for (const step of steps) {
      const { before, after } = sightOf(lesson, step);
      const values = stepValues({ step, healthy, before, after, required_L_s, predicted_L_s: 20 }, choice);
      const shared = Object.entries(text.sections).filter(([key]) => key.startsWith('prediction/'));
      for (const [key, { title, html }] of [...sectionsOf(step), ...shared]) {
        expect(fillWords(title, values, key) + fill(html, values, key)).not.toMatch(/[{}]|NaN|undefined/);
      }
    }
    const values = runValues(
      {
        healthy,
        now: solved(
          rig,
          steps.map((step) => step.fault),
        ),
        required_L_s,
      },
      choice,
    );
    const rest = Object.entries(text.sections).filter(
      ([key]) => !key.startsWith('prediction/') && !steps.some((step) => step.id === key.split('/')[0]),
    );
    for (const [key, { title, html }] of rest) {
      expect(fillWords(title, values, key) + fill(html, values, key)).not.toMatch(/[{}]|NaN|undefined/);
    }
  });

  it('types no number with a unit but published ones', () => {
    const typed = [...markdown.matchAll(WITH_UNIT)].map(([found]) => found);
    expect(typed.filter((found) => !PUBLISHED.includes(found))).toEqual([]);
    expect('It moves 33.8 L/s at 12 Pa, 5 %'.match(WITH_UNIT)).toEqual(['33.8 L/s', '12 Pa', '5 %']);
  });

  it('is written in short sentences', () => {
    const sentences = Object.values(text.sections)
      .flatMap(({ html }) => html.replace(/<[^>]+>/g, ' ').split(/(?<=[.?!:])\s+/))
      .map((sentence) => sentence.trim().split(/\s+/).filter(Boolean))
      .filter((words) => words.length > 0);
    const mean = sentences.reduce((sum, words) => sum + words.length, 0) / sentences.length;
    expect(mean).toBeLessThan(13);
    expect(sentences.filter((words) => words.length > 28).map((words) => words.join(' '))).toEqual([]);
  });

  it('says once that predictions are not marked', () => {
    expect(markdown.match(/not marked/gi)).toHaveLength(1);
  });
});
