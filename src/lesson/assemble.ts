/**
 * A lesson put together from the text of its files: structure, words, and the words all lessons share. A door
 * of its own (`#lesson-author`): it carries the Markdown reader, for the build, the author's checker, and a
 * lesson file dropped into the app.
 */
import { parseJson } from '#catalogue';
import { checkText, partsOf, withCommon, type LessonText } from './parts.ts';
import { lineAt, notUtf8, type Problem } from './problems.ts';
import { readLesson } from './read.ts';
import type { Lesson } from './schema.ts';
import { nearestHeading, readText } from './text.ts';

export { translationProblems } from './translation.ts';
export { typedNumbers, typedWarnings } from './typed.ts';

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

/** What the engine finds wrong with a lesson; without words, what it finds wrong with its structure. */
export type Audit = (lesson: Lesson, text?: LessonText) => readonly Problem[];

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
  const parsed = parseJson(file.content);
  if (parsed.ok) return { value: parsed.value };
  const { path, found, allowed, remedy } = parsed.finding;
  return {
    problem: { file: file.name, path, found, allowed: remedy ? `${allowed} (${remedy})` : allowed },
  };
}

/** Questions, by the key of their words, whose right answer the engine does not agree with. */
function doubtedBy(engine: readonly Problem[], lesson: Lesson): ReadonlySet<string> {
  const paths = new Set(engine.map(({ path }) => path));
  const keys = lesson.steps.flatMap(({ id }, i) =>
    ['predict', 'observe', 'explain', 'again'].flatMap((part) =>
      paths.has(`steps[${i}].${part}.right`) ? [`${id}/${part}`] : [],
    ),
  );
  return new Set(keys);
}

/** Every problem in the files at once, or the lesson with just the words it uses. */
export function assemble(files: LessonFiles, audit: Audit = () => []): Assembled {
  const { structure, words } = files;
  // Letters lost in reading would be told again as a hundred other problems.
  const garbled = [structure, words].flatMap(({ name, content }) => notUtf8(content, name));
  if (garbled.length) return { ok: false, problems: garbled };
  const parsed = parse(structure);
  if ('problem' in parsed) return { ok: false, problems: [parsed.problem] };
  const read = readLesson(parsed.value, structure.name);
  if (!read.ok) return read;
  const { lesson } = read;
  const { text, problems, lines } = readText(words.content, words.name);
  const shared = sharedSections(files);
  const whole = withCommon(text, shared.sections);
  const needed = new Set(partsOf(lesson).map(({ key }) => key));
  const sections = Object.fromEntries(Object.entries(whole.sections).filter(([key]) => needed.has(key)));
  const inWords = (doubted?: ReadonlySet<string>) => [
    ...problems,
    ...shared.problems,
    ...checkText(lesson, text, words.name, shared.sections, doubted),
  ];
  const wrong = inWords();
  const loaded = { lesson, text: { ...whole, sections } };
  // First what the engine says: words are written to the right answer, so a wrong one is no fault of theirs.
  const engine = wrong.length ? audit(lesson) : audit(lesson, loaded.text);
  const all = [...engine, ...(engine.length ? inWords(doubtedBy(engine, lesson)) : wrong)];
  if (all.length === 0) return { ok: true, ...loaded };
  const located = all.map((problem) =>
    problem.file === words.name ? lineAt(problem, nearestHeading(problem.path, lines)) : problem,
  );
  return { ok: false, problems: located };
}
