/** A lesson file that is not right is told by file, path, what was found and what is allowed. */
import { describe, expect, it } from 'vitest';
import { problemText, readLesson } from '#lesson';
import { FILE, raw, type Spoilt } from './small.ts';

function problemsOf(change: (lesson: Spoilt) => void) {
  const lesson = raw();
  change(lesson);
  const read = readLesson(lesson, FILE);
  return read.ok ? [] : read.problems.map(({ path, found, allowed }) => [path, found, allowed].join(' | '));
}

describe('readLesson', () => {
  it('takes a right one', () => {
    expect(readLesson(raw(), FILE)).toMatchObject({ ok: true });
  });

  it.each<[string, (lesson: Spoilt) => void, string]>([
    ['a wrong type', (lesson) => (lesson.minutes = 'ten'), 'minutes | "ten" | number'],
    ['a missing key', (lesson) => delete lesson.rig, 'rig | nothing | '],
    [
      'an unknown key',
      (lesson) => (lesson.colour = 'red'),
      'colour | unknown key "colour" | only the keys of a lesson',
    ],
    ['NaN', (lesson) => (lesson.number = NaN), 'number | NaN | number'],
    ['another format', (lesson) => (lesson.format = 2), 'format | 2 | 1'],
    [
      'no such fault',
      (lesson) => (lesson.steps[0].fault.kind = 'rust'),
      'steps[0].fault.kind | "rust" | ("sag" | ',
    ],
    [
      'too much of a fault',
      (lesson) => (lesson.steps[0].fault.amount = 1.5),
      'steps[0].fault.amount | 1.5 | <=1',
    ],
    ['none of a fault', (lesson) => (lesson.steps[0].fault.amount = 0), 'steps[0].fault.amount | 0 | >0'],
    [
      'an unknown step',
      (lesson) => (lesson.steps[0].kind = 'quiz'),
      'steps[0].kind | "quiz" | ("fault" | "mend")',
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
    ['no mending', (lesson) => lesson.steps.pop(), 'steps[1].kind | "fault" | "mend": the last step mends'],
    [
      'mending too soon',
      (lesson) => lesson.steps.unshift({ id: 'early', kind: 'mend' }),
      'steps[0].kind | "mend" | "fault": only the last step mends',
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
  ])('refuses %s', (_name, change, expected) => {
    expect(problemsOf(change).join('\n')).toContain(expected);
  });

  it.each([null, 7, 'text', []])('refuses %j outright', (value) => {
    expect(readLesson(value, FILE)).toMatchObject({ ok: false });
  });

  it('says it in one line with the file', () => {
    const read = readLesson({ ...raw(), minutes: -1 }, FILE);
    expect(read.ok ? '' : problemText(read.problems[0]!)).toBe(`${FILE}, minutes: found -1; allowed is >=1.`);
  });
});
