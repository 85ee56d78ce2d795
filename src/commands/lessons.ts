/**
 * `npm run -s lessons [-- FOLDER ...]`: checks every lesson (or the folders named), prints each step's solved
 * flows and the lesson as a script to read. Exit 1, with file, place and remedy, where one is not right.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { basename, join } from 'node:path';
import { problemText } from '#lesson';
import { assemble, type LoadedLesson } from '#lesson-author';
import { auditLesson } from '#lesson-engine';
import { script } from './lessons/script.ts';

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
  const loaded = assemble({
    structure: file(folder, 'lesson.json'),
    words: file(folder, `text.${LANGUAGE}.md`),
    common: file(ROOT, `common.${LANGUAGE}.md`),
    glossary: file(ROOT, `glossary.${LANGUAGE}.md`),
  });
  if (!loaded.ok) return { lines: loaded.problems.map(problemText) };
  const { lesson, text } = loaded;
  const problems = auditLesson(lesson, text, folder).map(problemText);
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

if (process.argv[1]?.endsWith('lessons.ts')) {
  const named = process.argv.slice(2).filter((argument) => !argument.startsWith('-'));
  const brief = process.argv.includes('--brief');
  let wrong = 0;
  for (const folder of named.length ? named : lessonFolders()) {
    const { lesson, lines } = checkFolder(folder);
    wrong += lines.length;
    if (lesson) console.log(script(lesson, brief));
    else console.error(lines.join('\n'));
  }
  console.log(wrong ? `${wrong} problems` : 'every lesson holds up');
  process.exitCode = wrong ? 1 : 0;
}
