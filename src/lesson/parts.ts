/** Which parts of a lesson need words, and whether a text has them: all of them and nothing else. */
import { say } from '#i18n';
import { LATE_READINGS, OUTCOME_PLACEHOLDERS, placeholdersIn, SHAPE_PLACEHOLDERS } from './fill.ts';
import { VERDICTS } from './predictions.ts';
import { shown, type Problem } from './problems.ts';
import { guessesFlow, isTaught, type Lesson, type Question, type Step } from './schema.ts';

export interface Section {
  /** Plain words of the heading; empty where the part has none. */
  readonly title: string;
  readonly html: string;
  /** Mistaken idea the section answers: its opening words in bold. */
  readonly idea?: string;
}

export interface LessonText {
  readonly title: string;
  /** By path of ids, such as `sag/observe/steeper`. */
  readonly sections: Readonly<Record<string, Section>>;
}

interface Part {
  readonly key: string;
  /** Words in the heading, words under it, both; or words that may be left out. */
  readonly needs: 'title' | 'body' | 'both' | 'may';
  /** Shown before the reveal: it must not tell the outcome. */
  readonly early?: boolean;
  /** Must open with the mistaken idea, in bold. */
  readonly wrong?: boolean;
}

/** A question and its cards; each wrong one has a reason that names the mistaken idea. */
function cards(key: string, { options, right }: Question, early = false): Part[] {
  return [
    { key, needs: 'title', early },
    ...options.map((option): Part => ({
      key: `${key}/${option}`,
      needs: 'both',
      wrong: option !== right,
      early,
    })),
  ];
}

function stepParts(step: Step): Part[] {
  const at = (rest: string) => `${step.id}/${rest}`;
  const title: Part = { key: step.id, needs: 'title', early: true };
  const brief: Part = { key: at('brief'), needs: 'body', early: true };
  if (step.kind === 'mend')
    return [
      title,
      { ...brief, early: false },
      ...(step.faults ?? []).map(({ id }): Part => ({ key: at(id), needs: 'title' })),
      // What a job was about, once it is done.
      ...(step.faults ? [{ key: at('done'), needs: 'body' as const }] : []),
    ];
  if (step.kind === 'entry')
    return [title, brief, ...step.questions.flatMap((item) => cards(at(item.id), item, true))];
  const { predict, observe, explain, again, chain } = step;
  const choice = predict && !guessesFlow(predict) ? predict : undefined;
  return [
    title,
    brief,
    ...(guessesFlow(predict) ? [{ key: at('predict'), needs: 'both' as const, early: true }] : []),
    // The cards stand before the reveal; their reasons are read after it.
    ...(choice ? cards(at('predict'), choice) : []),
    ...(observe ? cards(at('observe'), observe) : []),
    ...cards(at('explain'), explain),
    ...(again ? cards(at('again'), again) : []),
    ...(chain
      ? [
          { key: at('chain'), needs: 'title' as const },
          ...chain.map((link): Part => ({ key: at(`chain/${link.id}`), needs: 'title' })),
        ]
      : []),
    { key: at('practice'), needs: step.kind === 'fault' ? 'both' : 'may' },
  ];
}

/** Every part of a lesson that needs words, by its path of ids. */
export function partsOf(lesson: Lesson): Part[] {
  const list = (name: string, ids: readonly string[], needs: Part['needs']): Part[] => [
    { key: name, needs: 'title' },
    ...ids.map((id): Part => ({ key: `${name}/${id}`, needs, early: name !== 'prediction' })),
  ];
  const guessed = lesson.steps.some((step) => isTaught(step) && guessesFlow(step.predict));
  return [
    { key: 'intro', needs: 'both', early: true },
    { key: 'not-marked', needs: 'both', early: true },
    ...list('aims', lesson.aims, 'title'),
    ...list('terms', lesson.terms, 'both'),
    ...list('cautions', lesson.cautions, 'both'),
    ...(guessed ? list('prediction', VERDICTS, 'both') : []),
    ...lesson.steps.flatMap(stepParts),
    { key: 'end', needs: 'may' },
    ...(lesson.returns ? [{ key: 'returns', needs: 'may' as const, early: true }] : []),
    ...(lesson.returns ?? []).flatMap((item) => cards(`returns/${item.id}`, item, true)),
  ];
}

/** Words every lesson may use: a glossary, cautions, answers to a predicted flow. A lesson's own go first. */
export function withCommon(text: LessonText, common: LessonText['sections']): LessonText {
  return { ...text, sections: { ...common, ...text.sections } };
}

/**
 * Every part that lacks words, every word without a part, every placeholder that is unknown or tells too soon.
 * Which answers of the `doubted` questions are wrong is not settled, so none of them is asked for its idea.
 */
export function checkText(
  lesson: Lesson,
  own: LessonText,
  file: string,
  common: LessonText['sections'] = {},
  doubted: ReadonlySet<string> = new Set(),
): Problem[] {
  const problems: Problem[] = [];
  const text = withCommon(own, common);
  const note = (path: string, found: string, allowed: string) =>
    problems.push({ file, path, found, allowed });
  const parts = new Map(partsOf(lesson).map((part) => [part.key, part]));
  const readLate = new Set(
    lesson.steps.flatMap((step) =>
      step.kind === 'case' && step.meter && step.meter.of !== 'from' ? [step.id] : [],
    ),
  );
  const legal = (key: string, early: boolean): readonly string[] => {
    if (!early) return [...SHAPE_PLACEHOLDERS, ...OUTCOME_PLACEHOLDERS];
    const late = readLate.has(key.split('/')[0]!) ? LATE_READINGS : [];
    return SHAPE_PLACEHOLDERS.filter((name) => !late.includes(name));
  };
  for (const { key, needs, wrong } of parts.values()) {
    const section = text.sections[key];
    if (needs === 'may') continue;
    const heading = `${'#'.repeat(key.split('/').length + 1)} ${key.split('/').at(-1)}`;
    if (!section) {
      const known = sharedBeside(key, common);
      const remedy = known
        ? say('lesson.problem.add-shared', { heading, known })
        : say('lesson.problem.add-section', { heading });
      note(key, say('lesson.problem.nothing'), remedy);
      continue;
    }
    if (needs !== 'body' && !section.title) note(key, say('lesson.problem.no-title'), `${heading}: ...`);
    if (needs !== 'title' && !section.html)
      note(key, say('lesson.problem.no-words'), say('lesson.problem.add-words', { heading }));
    const settled = !doubted.has(key.slice(0, key.lastIndexOf('/')));
    if (wrong && settled && section.html && !section.idea)
      note(key, shown(section.html.replace(/<[^>]+>/g, '')), say('lesson.problem.add-idea'));
  }
  for (const [key, section] of Object.entries(own.sections)) {
    const part = parts.get(key);
    if (!part) note(key, say('lesson.problem.stray'), say('lesson.problem.remove-section'));
    else checkPlaceholders(key, section, legal(key, part.early ?? false), note);
    // Before the reveal a card shows its heading alone.
    if (part && !part.early && /\/predict(\/|$)/.test(key))
      checkPlaceholders(key, { title: section.title, html: '' }, legal(key, true), note);
  }
  return problems;
}

/** The terms or cautions there are, where one was asked for that is not. */
function sharedBeside(key: string, common: LessonText['sections']): string {
  const list = /^(terms|cautions)\//.exec(key)?.[0];
  if (list === undefined) return '';
  return Object.keys(common)
    .flatMap((each) => (each.startsWith(list) ? [each.slice(list.length)] : []))
    .join(', ');
}

function checkPlaceholders(
  key: string,
  section: Section,
  legal: readonly string[],
  note: (path: string, found: string, allowed: string) => void,
): void {
  for (const name of placeholdersIn(section.title + section.html)) {
    if (!legal.includes(name)) note(key, `{${name}}`, legal.map((each) => `{${each}}`).join(' '));
  }
}
