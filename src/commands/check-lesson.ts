/** One lesson's folder read, checked by itself and against the engine. */
import { readdirSync, readFileSync } from 'node:fs';
import { basename, join } from 'node:path';
import { problemText } from '#lesson';
import { assemble, type LoadedLesson } from '#lesson-author';
import { auditLesson } from '#lesson-engine';

const ROOT = 'lessons';
const LANGUAGE = 'en';
const file = (...parts: string[]) => {
  const name = join(...parts);
  try {
    return { name, content: readFileSync(name, 'utf8') };
  } catch {
    return { name, content: '' };
  }
};

/** The lesson of a folder, or every problem as a line. */
export function checkFolder(folder: string): { readonly lesson?: LoadedLesson; readonly lines: string[] } {
  const structure = file(folder, 'lesson.json');
  const words = file(folder, `text.${LANGUAGE}.md`);
  const loaded = assemble({
    structure,
    words,
    common: file(ROOT, `common.${LANGUAGE}.md`),
    glossary: file(ROOT, `glossary.${LANGUAGE}.md`),
  });
  if (!loaded.ok) return { lines: loaded.problems.map(problemText) };
  const { lesson, text } = loaded;
  const problems = auditLesson(lesson, text, { structure: structure.name, words: words.name }).map(
    problemText,
  );
  const wanted = `${String(lesson.number).padStart(2, '0')}-${lesson.slug}`;
  if (basename(folder) !== wanted) problems.push(`${folder}: the folder is called ${wanted}`);
  return problems.length ? { lines: problems } : { lesson: loaded, lines: [] };
}

export function lessonFolders(): string[] {
  return readdirSync(ROOT, { withFileTypes: true })
    .filter((entry) => entry.isDirectory())
    .map(({ name }) => join(ROOT, name))
    .sort();
}
