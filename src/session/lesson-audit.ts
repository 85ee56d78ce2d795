/**
 * What only the engine can say of a lesson's file: that every stage solves, every fault can befall its
 * piece, every right answer is what really happens, every value its words ask for is there. For the
 * author's checker, for tests, and for a lesson file dropped into the app.
 */
import {
  everyStage,
  guessesFlow,
  isTaught,
  mended,
  runValues,
  stagesOf,
  stepValues,
  trueAnswer,
  pile,
  placeholdersIn,
  type CheckName,
  type Lesson,
  type LessonProblem,
  type LessonText,
  type MendStep,
  type Placeholder,
  type PlaceholderValues,
  type Sight,
  type TaughtStep,
} from '#lesson';
import { solve, type Rig, type Stock } from '#physics';
import { defaults, type UnitChoice } from '#units';
import { builtValues } from './lesson-numbers.ts';
import { checkPlaces, checkRigs, type Note } from './lesson-places.ts';
import { lessonRigs, stock as wholeStock } from './lesson-rig.ts';
import { rigAt } from './lesson-run.ts';
import { sightOf } from './lesson-sight.ts';

const UNITS: readonly UnitChoice[] = [
  defaults,
  { flow: 'cfm', pressure: 'in w.g.' },
  { flow: 'm3/h', pressure: 'Pa' },
];

/** What problems are told of: each of the two files, or one name for both. */
export type Named = string | { readonly structure: string; readonly words: string };

/**
 * Everything wrong with a lesson that reads well; `named` is what it is told of. Without words, what is wrong
 * with its structure. Never throws for what an author wrote.
 */
export function auditLesson(
  lesson: Lesson,
  text: LessonText | undefined,
  named: Named,
  stock: Stock = wholeStock,
): LessonProblem[] {
  const problems: LessonProblem[] = [];
  const { structure, words } = typeof named === 'string' ? { structure: named, words: named } : named;
  const noteOf =
    (file: string): Note =>
    (path, found, allowed) => {
      // One mistake is met in every stage, unit and step it tells on.
      const known = problems.some((each) => each.path === path && each.found === found);
      if (!known) problems.push({ file, path, found, allowed });
    };
  const note = noteOf(structure);
  checkRigs(lesson, note);
  if (problems.length > 0) return problems;
  const rigs = lessonRigs(lesson);
  checkPlaces(lesson, rigs, stock, note);
  if (problems.length > 0) return problems;
  for (const stage of everyStage(lesson)) {
    const solution = solve(rigAt(rigs, stage), stock);
    if (solution.outcome === 'failed') note(`rig ${stage.rig}`, solution.found, solution.allowed);
  }
  const runs = problems.length === 0;
  for (const [i, step] of lesson.steps.entries()) {
    if (step.kind === 'mend') checkMend(lesson, text, step, `steps[${i}]`, rigs, stock, note, noteOf(words));
    if (!isTaught(step) || !runs) continue;
    const sight = sightOf(lesson, step, rigs, stock);
    checkAnswers(step, `steps[${i}]`, sight, note);
    if (text) checkWords(lesson, text, step, rigs, stock, sight, noteOf(words));
  }
  return problems;
}

/** A job has an aim: it fails its rate as it is found, and passes it once all is mended. */
function checkMend(
  lesson: Lesson,
  text: LessonText | undefined,
  step: MendStep,
  at: string,
  rigs: Readonly<Record<string, Rig>>,
  stock: Stock,
  note: Note,
  noteWords: Note,
): void {
  const found = mended(lesson, step);
  const [now, healthy] = [found, { ...found, faults: [] }].map((stage) => solve(rigAt(rigs, stage), stock));
  if (now?.outcome !== 'solved' || healthy?.outcome !== 'solved') return;
  const rule = rigs[found.rig]!.required?.flow_L_s;
  const [low, high] = [now, healthy].map(({ flow_L_s }) => flow_L_s.outdoors.toFixed(1));
  if (
    step.faults &&
    (rule === undefined || now.flow_L_s.outdoors >= rule || healthy.flow_L_s.outdoors < rule)
  )
    note(
      `${at}.faults`,
      `${low} L/s as found, ${high} mended, ${rule ?? 'nothing'} required`,
      'a rig whose required rate lies between the two',
    );
  const values = (choice: UnitChoice) =>
    runValues({ healthy, now, ...(rule === undefined ? {} : { required_L_s: rule }) }, choice);
  for (const [key, { title, html }] of Object.entries(text?.sections ?? {})) {
    if (key.split('/')[0] !== step.id) continue;
    checkValues(key, title + html, values(defaults), noteWords);
  }
}

function checkAnswers(step: TaughtStep, at: string, sight: Sight, note: Note): void {
  const { predict, observe, explain, again } = step;
  const check = (part: string, name: CheckName | undefined, right: string) => {
    const answer = name && trueAnswer(name, sight);
    if (name && answer !== right)
      note(
        `${at}.${part}.right`,
        `"${right}"`,
        `what the engine shows: "${answer ?? 'none of the answers'}"`,
      );
  };
  if (guessesFlow(predict)) {
    const flows = [sight.before, sight.after].map(({ flow_L_s }) => flow_L_s.outdoors);
    for (const flow of flows)
      if (flow <= predict.low_L_s || flow >= predict.high_L_s)
        note(
          `${at}.predict`,
          `${predict.low_L_s} to ${predict.high_L_s}`,
          `a scale with ${flow.toFixed(1)} on it`,
        );
    // The words that answer a predicted flow speak of a fall.
    if (flows[1]! > flows[0]!)
      note(`${at}.predict`, 'a flow, where the flow rises', 'options, with a check and words of their own');
  } else if (predict) check('predict', predict.check, predict.right);
  if (observe) check('observe', observe.check, observe.right);
  check('explain', explain.check, explain.right);
  if (again) check('again', again.check, again.right);
}

/** Every value a step's words ask for, in every unit. */
function checkWords(
  lesson: Lesson,
  text: LessonText,
  step: TaughtStep,
  rigs: Readonly<Record<string, Rig>>,
  stock: Stock,
  { before, after, required_L_s }: Sight,
  note: Note,
): void {
  const { from, to } = stagesOf(lesson, step);
  const healthy = solve(rigAt(rigs, { ...from, faults: [] }), stock);
  const bare = solve(rigAt(rigs, pile(lesson, 0)), stock);
  if (healthy.outcome === 'failed' || bare.outcome === 'failed') return;
  const rule = required_L_s === undefined ? {} : { required_L_s };
  // Words of no step, such as the intro, speak of the lesson's own rig.
  const own_L_s = rigs[lesson.rig]?.required?.flow_L_s;
  const ownRule = own_L_s === undefined ? {} : { required_L_s: own_L_s };
  const built = builtValues(step, rigAt(rigs, from), rigAt(rigs, to), stock);
  const predicted = guessesFlow(step.predict) ? { predicted_L_s: after.flow_L_s.outdoors } : {};
  for (const choice of UNITS) {
    const values = stepValues({ step, healthy, before, after, ...rule, ...predicted, built }, choice);
    const shared = runValues({ healthy: bare, now: bare, ...ownRule }, choice);
    for (const [key, { title, html }] of Object.entries(text.sections)) {
      const [top] = key.split('/');
      const own = top === step.id || (top === 'prediction' && guessesFlow(step.predict));
      if (!own && lesson.steps.some(({ id }) => id === top)) continue;
      if (!own && top === 'prediction') continue;
      checkValues(key, title + html, own ? values : shared, note);
    }
  }
}

function checkValues(key: string, words: string, values: PlaceholderValues, note: Note): void {
  for (const name of placeholdersIn(words))
    if (values[name as Placeholder] === undefined)
      note(key, `{${name}}, which has no value here`, 'a placeholder that has one here, or none');
}
