/** Which parts of a lesson need words, and whether a text has them: all of them and nothing else. */
import { say } from '#i18n';
import { OUTCOME_PLACEHOLDERS, placeholdersIn, SHAPE_PLACEHOLDERS } from './fill.ts';
import { VERDICTS } from './predictions.ts';
import { shown, type Problem } from './problems.ts';
import type { Lesson, Step } from './schema.ts';

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
  /** Words in the heading, words under it, or both. */
  readonly needs: 'title' | 'body' | 'both';
  /** Shown before the reveal: it must not tell the outcome. */
  readonly early?: boolean;
  /** Must open with the mistaken idea, in bold. */
  readonly wrong?: boolean;
}

function stepParts(step: Step): Part[] {
  const at = (rest: string) => `${step.id}/${rest}`;
  const title: Part = { key: step.id, needs: 'title', early: true };
  if (step.kind === 'mend')
    return [title, { key: at('brief'), needs: 'body' }, { key: at('end'), needs: 'both' }];
  const options = (part: 'observe' | 'explain') =>
    step[part].options.map((option): Part => ({
      key: at(`${part}/${option}`),
      needs: 'both',
      wrong: option !== step[part].right,
    }));
  return [
    title,
    { key: at('brief'), needs: 'body', early: true },
    { key: at('predict'), needs: 'both', early: true },
    { key: at('observe'), needs: 'title' },
    ...options('observe'),
    { key: at('explain'), needs: 'title' },
    ...options('explain'),
    { key: at('chain'), needs: 'title' },
    ...step.chain.map((link): Part => ({ key: at(`chain/${link.id}`), needs: 'title' })),
    { key: at('practice'), needs: 'both' },
  ];
}

export function partsOf(lesson: Lesson): Part[] {
  const list = (name: string, ids: readonly string[], needs: Part['needs']): Part[] => [
    { key: name, needs: 'title' },
    ...ids.map((id): Part => ({ key: `${name}/${id}`, needs, early: name !== 'prediction' })),
  ];
  return [
    { key: 'intro', needs: 'both', early: true },
    { key: 'not-marked', needs: 'both', early: true },
    ...list('aims', lesson.aims, 'title'),
    ...list('terms', lesson.terms, 'both'),
    ...list('cautions', lesson.cautions, 'both'),
    ...list('prediction', VERDICTS, 'both'),
    ...lesson.steps.flatMap(stepParts),
  ];
}

/** Every part that lacks words, every word without a part, every placeholder that is unknown or tells too soon. */
export function checkText(lesson: Lesson, text: LessonText, file: string): Problem[] {
  const problems: Problem[] = [];
  const note = (path: string, found: string, allowed: string) =>
    problems.push({ file, path, found, allowed });
  const parts = new Map(partsOf(lesson).map((part) => [part.key, part]));
  for (const { key, needs, wrong } of parts.values()) {
    const section = text.sections[key];
    const heading = `${'#'.repeat(key.split('/').length + 1)} ${key.split('/').at(-1)}`;
    if (!section) {
      note(key, say('lesson.problem.nothing'), say('lesson.problem.add-section', { heading }));
      continue;
    }
    if (needs !== 'body' && !section.title) note(key, say('lesson.problem.no-title'), `${heading}: ...`);
    if (needs !== 'title' && !section.html)
      note(key, say('lesson.problem.no-words'), say('lesson.problem.add-words', { heading }));
    if (wrong && !section.idea) note(key, shown(section.html), say('lesson.problem.add-idea'));
  }
  for (const [key, section] of Object.entries(text.sections)) {
    const part = parts.get(key);
    if (!part) note(key, say('lesson.problem.stray'), say('lesson.problem.remove-section'));
    else checkPlaceholders(key, section, part.early ?? false, note);
  }
  return problems;
}

function checkPlaceholders(
  key: string,
  section: Section,
  early: boolean,
  note: (path: string, found: string, allowed: string) => void,
): void {
  const legal: readonly string[] = early
    ? SHAPE_PLACEHOLDERS
    : [...SHAPE_PLACEHOLDERS, ...OUTCOME_PLACEHOLDERS];
  for (const name of placeholdersIn(section.title + section.html)) {
    if (!legal.includes(name)) note(key, `{${name}}`, legal.map((each) => `{${each}}`).join(' '));
  }
}
