/** From a parsed `lesson.json` to a Lesson, or every problem in it. */
import * as v from 'valibot';
import { answersOf } from './checks.ts';
import { pathOf, shown, type Problem } from './problems.ts';
import { lessonSchema, type FaultStep, type Lesson } from './schema.ts';

export type ReadLesson =
  | { readonly ok: true; readonly lesson: Lesson }
  | { readonly ok: false; readonly problems: readonly Problem[] };

export function readLesson(value: unknown, file: string): ReadLesson {
  const parsed = v.safeParse(lessonSchema, value);
  const problems = parsed.success
    ? crossCheck(parsed.output, file)
    : parsed.issues.map((issue) => problemOf(issue, file));
  return parsed.success && problems.length === 0
    ? { ok: true, lesson: parsed.output }
    : { ok: false, problems };
}

function problemOf(issue: v.BaseIssue<unknown>, file: string): Problem {
  // A union says only that none of its forms fitted; its own issues say which key is at fault.
  const deeper = issue.issues?.find(
    (inner) => inner.path && inner.input !== undefined && inner.expected !== 'never',
  );
  const path = [...(issue.path ?? []), ...(deeper?.path ?? [])].map((item) => item.key);
  const told = deeper ?? issue;
  const unknownKey = told.expected === 'never';
  return {
    file,
    path: path.length ? pathOf(path) : 'lesson',
    found: unknownKey
      ? `unknown key ${shown(path.at(-1))}`
      : told.received.startsWith('"')
        ? told.received
        : shown(told.input),
    allowed: unknownKey ? 'only the keys of a lesson' : (told.expected ?? told.message),
  };
}

function repeated(list: readonly string[]): string | undefined {
  return list.find((item, i) => list.indexOf(item) !== i);
}

/** What a schema cannot say: ids once only, right answers on offer, one mending half at the end. */
function crossCheck(lesson: Lesson, file: string): Problem[] {
  const problems: Problem[] = [];
  const note = (path: string, found: string, allowed: string) =>
    problems.push({ file, path, found, allowed });
  const once = (path: string, list: readonly string[]) => {
    const twice = repeated(list);
    if (twice !== undefined) note(path, `${shown(twice)} twice`, 'each id once');
  };
  once('aims', lesson.aims);
  once('terms', lesson.terms);
  once('cautions', lesson.cautions);
  once(
    'steps',
    lesson.steps.map((step) => step.id),
  );
  for (const [i, step] of lesson.steps.entries()) {
    const last = i === lesson.steps.length - 1;
    if ((step.kind === 'mend') !== last) {
      note(
        `steps[${i}].kind`,
        shown(step.kind),
        last ? '"mend": the last step mends' : '"fault": only the last step mends',
      );
    }
    if (step.kind === 'fault') checkFaultStep(step, `steps[${i}]`, note, once);
  }
  return problems;
}

function checkFaultStep(
  step: FaultStep,
  at: string,
  note: (path: string, found: string, allowed: string) => void,
  once: (path: string, list: readonly string[]) => void,
): void {
  const { fault, predict, observe } = step;
  if (predict.high_L_s <= predict.low_L_s) {
    note(`${at}.predict.high_L_s`, shown(predict.high_L_s), `more than low_L_s, ${predict.low_L_s}`);
  }
  if (fault.span_m !== undefined && fault.kind !== 'sag')
    note(`${at}.fault.span_m`, shown(fault.span_m), 'a sag only');
  if (fault.manner !== undefined && fault.kind !== 'extra-length') {
    note(`${at}.fault.manner`, shown(fault.manner), 'extra length only');
  }
  for (const part of ['observe', 'explain'] as const) {
    const { options, right } = step[part];
    once(`${at}.${part}.options`, options);
    if (!options.includes(right)) note(`${at}.${part}.right`, shown(right), options.join(', '));
  }
  const answers = answersOf(observe.check);
  const strange = answers && observe.options.findIndex((option) => !answers.includes(option));
  if (answers && strange !== null && strange >= 0) {
    note(
      `${at}.observe.options[${strange}]`,
      shown(observe.options[strange]),
      `answers of "${observe.check}": ${answers.join(', ')}`,
    );
  }
  once(
    `${at}.chain`,
    step.chain.map((link) => link.id),
  );
}
