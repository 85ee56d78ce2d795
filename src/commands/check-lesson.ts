/** One lesson's folder read, checked by itself and against the engine. */
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { basename, join, resolve } from 'node:path';
import { languages, say, type Language } from '#i18n';
import { problemText, type LessonProblem } from '#lesson';
import { assemble, translationProblems, typedWarnings, type File, type LoadedLesson } from '#lesson-author';
import { auditLesson } from '#lesson-engine';

const ROOT = 'lessons';
const file = (...parts: string[]): File => {
  const name = join(...parts);
  try {
    return { name, content: readFileSync(name, 'utf8') };
  } catch {
    return { name, content: '' };
  }
};

/** The files of a lesson's words in a language, with those all lessons share. */
const wordsIn = (folder: string, language: Language) => ({
  words: file(folder, `text.${language}.md`),
  common: file(ROOT, `common.${language}.md`),
  glossary: file(ROOT, `glossary.${language}.md`),
});

/** Every problem of a lesson's words in a language other than English. */
function translated(folder: string, structure: File, language: Language): LessonProblem[] {
  const files = { structure, ...wordsIn(folder, language) };
  const loaded = assemble(files);
  if (!loaded.ok) return [...loaded.problems];
  return translationProblems(files, wordsIn(folder, 'en'));
}

/** The lesson of a folder in English, or every problem as a line: of it, and of each language it has. */
export function checkFolder(folder: string): {
  readonly lesson?: LoadedLesson;
  readonly lines: string[];
  /** Of a lesson that holds: what its author should look at all the same. */
  readonly warnings?: readonly string[];
} {
  const structure = file(folder, 'lesson.json');
  const { words, ...shared } = wordsIn(folder, 'en');
  const missing = [structure, words].filter(({ name }) => !existsSync(name));
  if (missing.length) return { lines: missing.map(({ name }) => say('lesson.problem.no-file', { name })) };
  const named = { structure: structure.name, words: words.name };
  const loaded = assemble({ structure, words, ...shared }, (lesson, text) =>
    auditLesson(lesson, text, named),
  );
  if (!loaded.ok) return { lines: loaded.problems.map(problemText) };
  const { lesson } = loaded;
  const others = languagesOf(folder).filter((language) => language !== 'en');
  const problems = others.flatMap((language) => translated(folder, structure, language)).map(problemText);
  const wanted = `${String(lesson.number).padStart(2, '0')}-${lesson.slug}`;
  if (basename(resolve(folder)) !== wanted) problems.push(say('lesson.problem.folder', { folder, wanted }));
  return problems.length
    ? { lines: problems }
    : { lesson: loaded, lines: [], warnings: typedWarnings(words) };
}

/** Languages a lesson has words in. */
export function languagesOf(folder: string): Language[] {
  return languages.filter((language) => existsSync(join(folder, `text.${language}.md`)));
}

export function lessonFolders(): string[] {
  return readdirSync(ROOT, { withFileTypes: true })
    .filter((entry) => entry.isDirectory())
    .map(({ name }) => join(ROOT, name))
    .sort();
}
