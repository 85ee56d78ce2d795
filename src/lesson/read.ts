/** From a parsed `lesson.json` to a Lesson, or every problem in it. */
import * as v from 'valibot';
import { answersOf } from './checks.ts';
import { shown, type Problem } from './problems.ts';
import { faultSteps } from './rules.ts';
import {
  EFFORTS,
  guessesFlow,
  lessonSchema,
  mendsPile,
  type CaseStep,
  type FaultStep,
  type Item,
  type Lesson,
  type MendStep,
  type Question,
  type Step,
  type TaughtStep,
} from './schema.ts';
import { told } from './told.ts';

export type ReadLesson =
  | { readonly ok: true; readonly lesson: Lesson }
  | { readonly ok: false; readonly problems: readonly Problem[] };

/** A lesson out of parsed JSON; `file` is what problems are told of. */
export function readLesson(value: unknown, file: string): ReadLesson {
  const parsed = v.safeParse(lessonSchema, value);
  const problems = parsed.success
    ? crossCheck(parsed.output, file)
    : parsed.issues.flatMap((issue) => told(issue, file));
  return parsed.success && problems.length === 0
    ? { ok: true, lesson: parsed.output }
    : { ok: false, problems };
}

/** Faults that are mended in any order: each one more doubles the runs to be solved. */
const MOST_MENDED = 8;

function repeated(list: readonly string[]): string | undefined {
  return list.find((item, i) => list.indexOf(item) !== i);
}

/** What a schema cannot say: ids once only, right answers on offer, no change without a prediction. */
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
  const mends = lesson.steps.filter(mendsPile).length;
  const faults = faultSteps(lesson).length;
  if (mends > 1 || (mends === 1 && faults === 0))
    note(
      'steps',
      `${mends} that mend, ${faults} with a fault`,
      'one that mends, after at least one fault; or "faults" of its own in the step that mends',
    );
  if (mends === 1 && faults > MOST_MENDED)
    note('steps', `${faults} with a fault`, `up to ${MOST_MENDED}, where they are mended in any order`);
  for (const [i, step] of lesson.steps.entries()) checkStep(lesson, step, i, note, once);
  for (const [i, item] of (lesson.returns ?? []).entries())
    checkItem(lesson, item, `returns[${i}]`, note, once);
  once(
    'returns',
    (lesson.returns ?? []).map((item) => item.id),
  );
  return problems;
}

type Note = (path: string, found: string, allowed: string) => void;
type Once = (path: string, list: readonly string[]) => void;

function checkStep(lesson: Lesson, step: Step, index: number, note: Note, once: Once): void {
  const at = `steps[${index}]`;
  const aim = 'aim' in step ? step.aim : undefined;
  if (aim !== undefined && !lesson.aims.includes(aim)) note(`${at}.aim`, shown(aim), lesson.aims.join(', '));
  if (step.kind === 'entry') {
    if (index !== 0) note(`${at}.kind`, '"entry"', 'the first step only');
    const ahead = lesson.steps.slice(index + 1).map(({ id }) => id);
    if (!ahead.includes(step.skipTo)) note(`${at}.skipTo`, shown(step.skipTo), ahead.join(', '));
    once(
      `${at}.questions`,
      step.questions.map((item) => item.id),
    );
    for (const [i, item] of step.questions.entries())
      checkItem(lesson, item, `${at}.questions[${i}]`, note, once);
    return;
  }
  if (step.kind === 'fault' && lesson.steps.slice(0, index).some(mendsPile))
    note(`${at}.kind`, '"fault"', 'no fault after the step that mends; use a case');
  if (step.kind === 'mend') return checkMend(step, at, note, once);
  if (step.kind === 'case') checkCase(step, at, note);
  else checkFault(step.fault, `${at}.fault`, note);
  checkQuestions(step, at, note, once);
  checkLinks(step, at, note);
}

/** A job names its faults and may name its rig; the mending of the piled faults stands on the lesson's. */
function checkMend({ rig, faults }: MendStep, at: string, note: Note, once: Once): void {
  if (rig !== undefined && !faults) note(`${at}.rig`, shown(rig), 'a step that mends "faults" of its own');
  once(`${at}.faults`, faults?.map(({ id }) => id) ?? []);
  for (const [i, fault] of (faults ?? []).entries()) checkFault(fault, `${at}.faults[${i}]`, note);
}

function checkItem(lesson: Lesson, item: Item, at: string, note: Note, once: Once): void {
  if (!lesson.aims.includes(item.aim)) note(`${at}.aim`, shown(item.aim), lesson.aims.join(', '));
  checkQuestion(item, at, note, once);
}

/** A change is never shown before it was predicted, and a prediction is always of a change. */
function checkCase(step: CaseStep, at: string, note: Note): void {
  if (step.to && !step.predict) note(`${at}.predict`, 'nothing', 'a prediction, since "to" changes the run');
  if (!step.to && step.predict) note(`${at}.to`, 'nothing', 'the run after the change that is predicted');
  if (!step.to && step.observe) note(`${at}.observe`, 'a question', 'nothing to see without "to"');
  if (!step.to && step.meter && step.meter.of !== 'from')
    note(`${at}.meter.of`, shown(step.meter.of), '"from", since nothing changes');
  for (const side of ['from', 'to'] as const)
    for (const [i, fault] of (step[side]?.faults ?? []).entries())
      checkFault(fault, `${at}.${side}.faults[${i}]`, note);
}

function checkFault(fault: FaultStep['fault'], at: string, note: Note): void {
  if (fault.span_m !== undefined && fault.kind !== 'sag')
    note(`${at}.span_m`, shown(fault.span_m), 'a sag only');
  if (fault.manner !== undefined && fault.kind !== 'extra-length')
    note(`${at}.manner`, shown(fault.manner), 'extra length only');
  if (fault.straight_m !== undefined && fault.kind !== 'bend-at-fan')
    note(`${at}.straight_m`, shown(fault.straight_m), 'a bend at the fan only');
}

/** A link may name a chart of efforts only where the step hangs it up. */
function checkLinks({ chain, chart }: TaughtStep, at: string, note: Note): void {
  for (const [i, link] of (chain ?? []).entries())
    if ('chart' in link && EFFORTS.some((name) => name === link.chart) && link.chart !== chart)
      note(`${at}.chain[${i}].chart`, shown(link.chart), `a step whose "chart" is ${shown(link.chart)}`);
}

function checkQuestions(step: TaughtStep, at: string, note: Note, once: Once): void {
  const { predict, observe, explain, again, chain } = step;
  if (guessesFlow(predict)) {
    if (predict.high_L_s <= predict.low_L_s)
      note(`${at}.predict.high_L_s`, shown(predict.high_L_s), `more than low_L_s, ${predict.low_L_s}`);
  } else if (predict) checkQuestion(predict, `${at}.predict`, note, once);
  for (const [part, question] of Object.entries({ observe, explain, again }))
    if (question) checkQuestion(question, `${at}.${part}`, note, once);
  once(`${at}.chain`, chain?.map((link) => link.id) ?? []);
}

function checkQuestion({ check, options, right }: Question, at: string, note: Note, once: Once): void {
  once(`${at}.options`, options);
  if (!options.includes(right)) note(`${at}.right`, shown(right), options.join(', '));
  const answers = check && answersOf(check);
  const strange = answers ? options.findIndex((option) => !answers.includes(option)) : -1;
  if (answers && strange >= 0)
    note(
      `${at}.options[${strange}]`,
      shown(options[strange]),
      `answers of "${check}": ${answers.join(', ')}`,
    );
}
