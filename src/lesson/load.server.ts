/**
 * Lessons from the `lessons/` folder, read and checked while the pages are built. `.server` in the name
 * keeps this file, and `marked` with it, out of everything sent to a reader.
 */
import { checkText, partsOf, withCommon, type LessonText } from './parts.ts';
import { problemText, type Problem } from './problems.ts';
import { readLesson } from './read.ts';
import type { Lesson } from './schema.ts';
import { readText } from './text.ts';

export interface LoadedLesson {
  readonly lesson: Lesson;
  readonly text: LessonText;
}

const structures = import.meta.glob<unknown>('/lessons/*/lesson.json', { eager: true, import: 'default' });
const texts = import.meta.glob<string>(['/lessons/*/text.*.md', '/lessons/*.md', '!/lessons/*[A-Z]*.md'], {
  eager: true,
  query: '?raw',
  import: 'default',
});

function refuse(problems: readonly Problem[]): never {
  throw new Error(problems.map(problemText).join('\n'));
}

/** A file of words in a language, or in English where that language has none. */
function wordsFile(file: (language: string) => string, language: string): [string, string] {
  const wanted = file(language);
  const found = texts[wanted] === undefined ? file('en') : wanted;
  return [found.slice(1), texts[found] ?? ''];
}

/** Sections every lesson may use: common.<language>.md as it stands, glossary.<language>.md under `terms/`. */
function commonSections(language: string): LessonText['sections'] {
  const [commonFile, common] = wordsFile((code) => `/lessons/common.${code}.md`, language);
  const [glossaryFile, glossary] = wordsFile((code) => `/lessons/glossary.${code}.md`, language);
  const [shared, terms] = [readText(common, commonFile), readText(glossary, glossaryFile)];
  const problems = [...shared.problems, ...terms.problems];
  if (problems.length) refuse(problems);
  return {
    ...shared.text.sections,
    ...Object.fromEntries(
      Object.entries(terms.text.sections).map(([id, section]) => [`terms/${id}`, section]),
    ),
  };
}

function load(file: string, value: unknown, language: string): LoadedLesson {
  const read = readLesson(value, file.slice(1));
  if (!read.ok) return refuse(read.problems);
  const [textFile, words] = wordsFile((code) => file.replace('lesson.json', `text.${code}.md`), language);
  const { text, problems } = readText(words, textFile);
  const common = commonSections(language);
  const all = [...problems, ...checkText(read.lesson, text, textFile, common)];
  if (all.length) return refuse(all);
  const whole = withCommon(text, common);
  const needed = new Set(partsOf(read.lesson).map(({ key }) => key));
  // Only what the lesson uses is sent to a reader.
  const sections = Object.fromEntries(Object.entries(whole.sections).filter(([key]) => needed.has(key)));
  return { lesson: read.lesson, text: { ...whole, sections } };
}

/** Every lesson in order of its number. Throws, naming file, place and remedy, where one is not right. */
export function loadLessons(language = 'en'): LoadedLesson[] {
  return Object.entries(structures)
    .map(([file, value]) => load(file, value, language))
    .sort((one, other) => one.lesson.number - other.lesson.number);
}

/** One lesson by its slug; throws with the slugs there are when there is none. */
export function loadLesson(slug: string, language = 'en'): LoadedLesson {
  const lessons = loadLessons(language);
  const found = lessons.find(({ lesson }) => lesson.slug === slug);
  if (found) return found;
  return refuse([
    {
      file: 'lessons',
      path: 'slug',
      found: slug,
      allowed: lessons.map(({ lesson }) => lesson.slug).join(', '),
    },
  ]);
}
