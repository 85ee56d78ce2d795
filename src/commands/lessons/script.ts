/** A whole lesson as words to read, with every number worked out: for its author and for whoever scores it. */
import {
  fill,
  fewest,
  fillWords,
  guessesFlow,
  isTaught,
  jobsOf,
  mended,
  pile,
  runValues,
  stagesOf,
  stepValues,
  type Item,
  type PlaceholderValues,
  type Question,
  type Stage,
  type Step,
} from '#lesson';
import type { LoadedLesson } from '#lesson-author';
import { builtValues, lessonRigs, rigAt, stock } from '#lesson-engine';
import { solve, type Rig, type Solution } from '#physics';
import { defaults } from '#units';

const plain = (html: string) =>
  html
    .replace(/<\/(p|li)>/g, '\n')
    .replace(/<[^>]+>/g, '')
    .replace(/&quot;/g, '"')
    .replace(/&#39;/g, "'")
    .replace(/&amp;/g, '&')
    .trim();
const flow = ({ flow_L_s }: Solution) => flow_L_s.outdoors.toFixed(1);

function solved(rig: Rig): Solution {
  const solution = solve(rig, stock);
  if (solution.outcome === 'failed') throw new Error(`${solution.path}: ${solution.found}`);
  return solution;
}

/** `brief`: the steps and their flows alone. */
export function script({ lesson, text }: LoadedLesson, brief = false): string {
  const lines: string[] = [`# ${lesson.number}. ${text.title} (${lesson.minutes} min, ${lesson.slug})`];
  const rigs = lessonRigs(lesson);
  const say = (line: string) => void lines.push(line);
  let values: PlaceholderValues = {};
  const title = (key: string) => fillWords(text.sections[key]?.title ?? '', values, key);
  const body = (key: string) => plain(fill(text.sections[key]?.html ?? '', values, key));
  const tell = (key: string, indent = '') => {
    if (text.sections[key]?.title) say(`${indent}${title(key)}`);
    if (text.sections[key]?.html) say(`${indent}  ${body(key).replaceAll('\n', `\n${indent}  `)}`);
  };
  const cards = (key: string, { options, right }: Question | Item, withQuestion = true) => {
    if (withQuestion) say(`  ${title(key)}`);
    options.forEach((option, i) => {
      say(`   ${'ABCDE'[i]}${option === right ? ' *' : '  '} ${title(`${key}/${option}`)}`);
      say(`        ${body(`${key}/${option}`).replaceAll('\n', '\n        ')}`);
    });
  };
  const out = (stage: Stage) => solved(rigAt(rigs, stage)).flow_L_s.outdoors;
  const bare = solved(rigAt(rigs, pile(lesson, 0)));
  const required = rigs[lesson.rig]?.required?.flow_L_s;
  const shared = runValues(
    { healthy: bare, now: bare, ...(required === undefined ? {} : { required_L_s: required }) },
    defaults,
  );
  values = shared;
  if (!brief) {
    tell('intro');
    for (const [name, ids] of Object.entries({ aims: lesson.aims, terms: lesson.terms })) {
      say(`\n${title(name)}`);
      for (const id of ids) tell(`${name}/${id}`, '  - ');
    }
    say(`\n${title('cautions')}: ${lesson.cautions.join(', ')}`);
  }
  for (const step of lesson.steps) {
    values = shared;
    const at = (rest: string) => `${step.id}/${rest}`;
    say(`\n## ${step.id} (${kindOf(step)})`);
    if (step.kind === 'mend') {
      const found = mended(lesson, step);
      const jobs = jobsOf(lesson, step).map(({ id }) => id);
      const rate = rigs[found.rig]?.required?.flow_L_s;
      const rule = rate === undefined ? {} : { required_L_s: rate };
      const [now, healthy] = [solved(rigAt(rigs, found)), solved(rigAt(rigs, { ...found, faults: [] }))];
      if (step.faults) values = runValues({ healthy, now, ...rule }, defaults);
      say(
        `${found.rig}: ${flow(now)} -> ${flow(healthy)} L/s${rate === undefined ? '' : `, ${rate} required`}`,
      );
      // What each repair buys if it is the only one.
      for (const id of jobs) {
        const alone = flow(solved(rigAt(rigs, mended(lesson, step, [id]))));
        say(`   ${step.faults ? title(id) : id}: ${alone} L/s if only that is mended`);
      }
      const enough =
        rate === undefined ? undefined : fewest(jobs, (ids) => out(mended(lesson, step, ids)), rate);
      if (enough) say(`   the fewest that pass: ${enough.join(', ')}`);
    }
    if (!isTaught(step)) {
      if (brief) continue;
      tell(step.id);
      tell(at('brief'));
      if (step.kind === 'mend') tell(at('done'));
      if (step.kind === 'entry') for (const item of step.questions) cards(at(item.id), item);
      continue;
    }
    const { from, to } = stagesOf(lesson, step);
    const [before, after] = [solved(rigAt(rigs, from)), solved(rigAt(rigs, to))];
    const built = builtValues(step, rigAt(rigs, from), rigAt(rigs, to), stock);
    say(`${from.rig}: ${flow(before)} -> ${flow(after)} L/s`);
    if (brief) continue;
    const rule = rigs[from.rig]?.required?.flow_L_s;
    values = stepValues(
      {
        step,
        healthy: solved(rigAt(rigs, { ...from, faults: [] })),
        before,
        after,
        predicted_L_s: after.flow_L_s.outdoors,
        built,
        ...(rule === undefined ? {} : { required_L_s: rule }),
      },
      defaults,
    );
    say(
      `values: ${Object.entries(values)
        .map(([name, value]) => `${name} ${value}`)
        .join(', ')}`,
    );
    tell(step.id);
    tell(at('brief'));
    if (guessesFlow(step.predict)) tell(at('predict'));
    else if (step.predict) cards(at('predict'), step.predict);
    if (step.observe) cards(at('observe'), step.observe);
    cards(at('explain'), step.explain);
    if (step.again) cards(at('again'), step.again);
    for (const link of step.chain ?? []) say(`   > ${title(at(`chain/${link.id}`))}`);
    tell(at('practice'));
  }
  values = shared;
  if (!brief) {
    tell('end');
    for (const item of lesson.returns ?? []) cards(`returns/${item.id}`, item);
  }
  return lines.join('\n');
}

function kindOf(step: Step): string {
  return step.kind === 'case' ? `case, ${step.role}` : step.kind;
}
