/**
 * A lesson put together from the text of its files: structure, words, and the words all lessons share. A door
 * of its own (`#lesson-author`): it carries the Markdown reader, for the build, the author's checker, and a
 * lesson file dropped into the app.
 */
import { say } from '#i18n';
import { checkText, partsOf, withCommon, type LessonText } from './parts.ts';
import type { Problem } from './problems.ts';
import { readLesson } from './read.ts';
import type { Lesson } from './schema.ts';
import { readText } from './text.ts';

export { translationProblems } from './translation.ts';

export interface File {
  readonly name: string;
  readonly content: string;
}

export interface LessonFiles {
  readonly structure: File;
  readonly words: File;
  /** `common.<language>.md`: sections as they stand. */
  readonly common: File;
  /** `glossary.<language>.md`: one section a term. */
  readonly glossary: File;
}

export interface LoadedLesson {
  readonly lesson: Lesson;
  readonly text: LessonText;
}

export type Assembled =
  ({ readonly ok: true } & LoadedLesson) | { readonly ok: false; readonly problems: readonly Problem[] };

/** Sections every lesson may use, by key. */
export function sharedSections({ common, glossary }: Pick<LessonFiles, 'common' | 'glossary'>): {
  readonly sections: LessonText['sections'];
  readonly problems: readonly Problem[];
} {
  const [shared, terms] = [readText(common.content, common.name), readText(glossary.content, glossary.name)];
  const byTerm = Object.entries(terms.text.sections).map(([id, section]) => [`terms/${id}`, section]);
  return {
    sections: { ...shared.text.sections, ...Object.fromEntries(byTerm) },
    problems: [...shared.problems, ...terms.problems],
  };
}

function parse(file: File): { readonly value: unknown } | { readonly problem: Problem } {
  try {
    return { value: JSON.parse(file.content.replace(/^\uFEFF/, '')) };
  } catch (error) {
    const found = (error as Error).message;
    return { problem: { file: file.name, path: 'JSON', found, allowed: say('lesson.problem.json') } };
  }
}

/** Every problem in the files at once, or the lesson with just the words it uses. */
export function assemble(files: LessonFiles): Assembled {
  const parsed = parse(files.structure);
  if ('problem' in parsed) return { ok: false, problems: [parsed.problem] };
  const read = readLesson(parsed.value, files.structure.name);
  if (!read.ok) return read;
  const { text, problems } = readText(files.words.content, files.words.name);
  const shared = sharedSections(files);
  const all = [
    ...problems,
    ...shared.problems,
    ...checkText(read.lesson, text, files.words.name, shared.sections),
  ];
  if (all.length) return { ok: false, problems: all };
  const whole = withCommon(text, shared.sections);
  const needed = new Set(partsOf(read.lesson).map(({ key }) => key));
  const sections = Object.fromEntries(Object.entries(whole.sections).filter(([key]) => needed.has(key)));
  return { ok: true, lesson: read.lesson, text: { ...whole, sections } };
}
