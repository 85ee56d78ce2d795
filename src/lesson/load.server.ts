/**
 * Lessons from the `lessons/` folder, read and checked while the pages are built. `.server` in the name
 * keeps this file, and `marked` with it, out of everything sent to a reader.
 */
import { checkText, type LessonText } from './parts.ts';
import { problemText, type Problem } from './problems.ts';
import { readLesson } from './read.ts';
import type { Lesson } from './schema.ts';
import { readText } from './text.ts';

export interface LoadedLesson {
  readonly lesson: Lesson;
  readonly text: LessonText;
}

const structures = import.meta.glob<unknown>('/lessons/*/lesson.json', { eager: true, import: 'default' });
const texts = import.meta.glob<string>('/lessons/*/text.*.md', {
  eager: true,
  query: '?raw',
  import: 'default',
});

function refuse(problems: readonly Problem[]): never {
  throw new Error(problems.map(problemText).join('\n'));
}

function load(file: string, value: unknown, language: string): LoadedLesson {
  const read = readLesson(value, file.slice(1));
  if (!read.ok) return refuse(read.problems);
  const wanted = file.replace('lesson.json', `text.${language}.md`);
  const textFile = texts[wanted] === undefined ? file.replace('lesson.json', 'text.en.md') : wanted;
  const { text, problems } = readText(texts[textFile] ?? '', textFile.slice(1));
  const all = [...problems, ...checkText(read.lesson, text, textFile.slice(1))];
  return all.length ? refuse(all) : { lesson: read.lesson, text };
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
