/** A lesson file that is not right is told by file, path, what was found and what is allowed. */
import { describe, expect, it } from 'vitest';
import { problemText, readLesson } from '#lesson';
import { FILE, raw, rawWide, type Spoilt } from './small.ts';

function problemsOf(change: (lesson: Spoilt) => void, lesson: object = raw()) {
  change(lesson);
  const read = readLesson(lesson, FILE);
  return read.ok ? [] : read.problems.map(({ path, found, allowed }) => [path, found, allowed].join(' | '));
}

describe('readLesson', () => {
  it('takes a right one', () => {
    expect(readLesson(raw(), FILE)).toMatchObject({ ok: true });
  });

  it.each<[string, (lesson: Spoilt) => void, string]>([
    ['a wrong type', (lesson) => (lesson.minutes = 'ten'), 'minutes | "ten" | a number'],
    ['a missing key', (lesson) => delete lesson.rig, 'rig | nothing | '],
    [
      'an unknown key',
      (lesson) => (lesson.colour = 'red'),
      'colour | the unknown key "colour" | format, version, slug, number, rig, ',
    ],
    ['NaN', (lesson) => (lesson.number = NaN), 'number | NaN | a number'],
    [
      'a link to a chart the step does not hang up',
      (lesson) => (lesson.steps[0].chain[2].chart = 'steam-clock'),
      'steps[0].chain[2].chart | "steam-clock" | a step whose "chart" is "steam-clock"',
    ],
    ['another format', (lesson) => (lesson.format = 2), 'format | 2 | 1'],
    [
      'no such fault',
      (lesson) => (lesson.steps[0].fault.kind = 'rust'),
      'steps[0].fault.kind | "rust" | "sag", "crimp", ',
    ],
    [
      'too much of a fault',
      (lesson) => (lesson.steps[0].fault.amount = 1.5),
      'steps[0].fault.amount | 1.5 | at most 1',
    ],
    [
      'a number with its unit',
      (lesson) => (lesson.steps[0].predict.high_L_s = '60 L/s'),
      'steps[0].predict.high_L_s | "60 L/s" | a number without quotes and without its unit, such as 60',
    ],
    [
      'a share in percent',
      (lesson) => (lesson.steps[0].fault.amount = '12,5 %'),
      'steps[0].fault.amount | "12,5 %" | a number without quotes and without its unit, such as 0.125',
    ],
    [
      'two right answers',
      (lesson) => (lesson.steps[0].explain.right = ['turns', 'climb']),
      'steps[0].explain.right | ["turns","climb"] | one id, not a list',
    ],
    [
      'an id with a space',
      (lesson) => (lesson.slug = 'Two faults'),
      'slug | "Two faults" | small letters, digits and hyphens, a letter first',
    ],
    [
      'an unknown key in a step',
      (lesson) => (lesson.steps[0].colour = 'red'),
      'steps[0].colour | the unknown key "colour" | id, kind, aim, fault, chart, predict, ',
    ],
    [
      'an unknown key further in',
      (lesson) => (lesson.steps[0].predict.step = 1),
      'steps[0].predict.step | the unknown key "step" | low_L_s, high_L_s, step_L_s',
    ],
    [
      'an unknown key in a link, of which there are two forms',
      (lesson) => (lesson.steps[0].chain[2].colour = 'red'),
      'steps[0].chain[2].colour | the unknown key "colour" | id, chart',
    ],
    [
      'none of a fault',
      (lesson) => (lesson.steps[0].fault.amount = 0),
      'steps[0].fault.amount | 0 | more than 0',
    ],
    [
      'an unknown step',
      (lesson) => (lesson.steps[0].kind = 'quiz'),
      'steps[0].kind | "quiz" | "entry", "fault", "case", "mend"',
    ],
    ['two options', (lesson) => lesson.steps[0].explain.options.pop(), 'steps[0].explain.options | '],
    [
      'a link to nowhere',
      (lesson) => (lesson.steps[0].chain[2].chart = 'pie'),
      'steps[0].chain[2].chart | "pie" | ',
    ],
    [
      'a right answer not on offer',
      (lesson) => (lesson.steps[0].observe.right = 'flatter'),
      'steps[0].observe.right | "flatter" | steeper, shifted, unchanged',
    ],
    [
      'an answer the check never gives',
      (lesson) => (lesson.steps[0].observe.options[1] = 'wobbly'),
      'steps[0].observe.options[1] | "wobbly" | answers of "system-curve": ',
    ],
    [
      'an option twice',
      (lesson) => (lesson.steps[0].explain.options[1] = 'turns'),
      'steps[0].explain.options | "turns" twice | each id once',
    ],
    ['a step twice', (lesson) => (lesson.steps[1].id = 'first'), 'steps | "first" twice | each id once'],
    [
      'a scale upside down',
      (lesson) => (lesson.steps[0].predict.high_L_s = 0),
      'steps[0].predict.high_L_s | 0 | more than low_L_s, 0',
    ],
    [
      'two that mend',
      (lesson) => lesson.steps.unshift({ id: 'early', kind: 'mend' }),
      'steps | 2 that mend, 2 with a fault | one that mends, after at least one fault',
    ],
    [
      'a fault after the mending',
      (lesson) => lesson.steps.splice(1, 0, lesson.steps.pop()),
      'steps[2].kind | "fault" | no fault after the step that mends; use a case',
    ],
    [
      'a span that is no sag',
      (lesson) => Object.assign(lesson.steps[0].fault, { kind: 'crimp', span_m: 2 }),
      'steps[0].fault.span_m | 2 | a sag only',
    ],
    [
      'a manner that is no length',
      (lesson) => (lesson.steps[0].fault.manner = 'draped'),
      'steps[0].fault.manner | "draped" | extra length only',
    ],
    [
      'a straight that is at no bend',
      (lesson) => (lesson.steps[0].fault.straight_m = 0.5),
      'steps[0].fault.straight_m | 0.5 | a bend at the fan only',
    ],
  ])('refuses %s', (_name, change, expected) => {
    expect(problemsOf(change).join('\n')).toContain(expected);
  });

  it.each<[string, (lesson: Spoilt) => void, string]>([
    [
      'a change without a prediction',
      (lesson) => delete lesson.steps[1].predict,
      'steps[1].predict | nothing | a prediction, since "to" changes the run',
    ],
    [
      'an unknown key of a prediction, of which there are two forms',
      (lesson) => (lesson.steps[1].predict.why = 'so'),
      'steps[1].predict.why | the unknown key "why" | check, options, right',
    ],
    [
      'a prediction half there',
      (lesson) => (lesson.steps[1].predict = { low_L_s: '0 L/s', high_L_s: 60 }),
      'steps[1].predict.low_L_s | "0 L/s" | a number without quotes and without its unit, such as 0',
    ],
    [
      'a meter of a kind there is not',
      (lesson) => (lesson.steps[2].meter = { kind: 'nose', at: 'grille', seed: 1, of: 'from' }),
      'steps[2].meter.kind | "nose" | "powered-hood", ',
    ],
    [
      'a prediction of nothing',
      (lesson) => delete lesson.steps[1].to,
      'steps[1].to | nothing | the run after the change that is predicted',
    ],
    [
      'a look at nothing',
      (lesson) => (lesson.steps[2].observe = lesson.steps[1].observe),
      'steps[2].observe | a question | nothing to see without "to"',
    ],
    [
      'an aim the lesson does not have',
      (lesson) => (lesson.steps[1].aim = 'fly'),
      'steps[1].aim | "fly" | predict, mend',
    ],
    [
      'a way ahead to nowhere',
      (lesson) => (lesson.steps[0].skipTo = 'entry'),
      'steps[0].skipTo | "entry" | second, same',
    ],
    [
      'an entry check in the middle',
      (lesson) => lesson.steps.reverse(),
      'steps[2].kind | "entry" | the first step only',
    ],
    [
      'a return without its right answer',
      (lesson) => (lesson.returns[1].right = 'd'),
      'returns[1].right | "d" | a, b, c',
    ],
    ['too few returns', (lesson) => lesson.returns.pop(), 'returns | '],
    [
      'a card the check never gives',
      (lesson) => (lesson.steps[1].predict.options[0] = 'flew'),
      'steps[1].predict.options[0] | "flew" | answers of "outlet-flow": rose, fell, same',
    ],
  ])('refuses %s', (_name, change, expected) => {
    expect(problemsOf(change, rawWide()).join('\n')).toContain(expected);
  });

  it.each([null, 7, 'text', []])('refuses %j outright', (value) => {
    expect(readLesson(value, FILE)).toMatchObject({ ok: false });
  });

  it('says it in one line with the file', () => {
    const read = readLesson({ ...raw(), minutes: -1 }, FILE);
    expect(read.ok ? '' : problemText(read.problems[0]!)).toBe(
      `${FILE}, minutes: found -1; allowed is at least 1.`,
    );
  });
});
