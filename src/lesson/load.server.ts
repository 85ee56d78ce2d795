/**
 * Lessons from the `lessons/` folder, read and checked while the pages are built. `.server` in the name
 * keeps this file out of everything sent to a reader.
 */
import { assemble, type File, type LoadedLesson } from './assemble.ts';
import type { LessonText } from './parts.ts';
import { problemText, type Problem } from './problems.ts';
import { readText } from './text.ts';

const structures = import.meta.glob<string>('/lessons/*/lesson.json', {
  eager: true,
  query: '?raw',
  import: 'default',
});
const guides = import.meta.glob<string>('/lessons/README.md', {
  eager: true,
  query: '?raw',
  import: 'default',
});
const texts = import.meta.glob<string>(
  ['/lessons/*/text.*.md', '/lessons/common.*.md', '/lessons/glossary.*.md'],
  { eager: true, query: '?raw', import: 'default' },
);

function refuse(problems: readonly Problem[]): never {
  throw new Error(problems.map(problemText).join('\n'));
}

/** A file of words in a language, or in English where that language has none. */
function wordsFile(file: (language: string) => string, language: string): File {
  const wanted = file(language);
  const name = texts[wanted] === undefined ? file('en') : wanted;
  return { name: name.slice(1), content: texts[name] ?? '' };
}

function load(file: string, content: string, language: string): LoadedLesson {
  const loaded = assemble({
    structure: { name: file.slice(1), content },
    words: wordsFile((code) => file.replace('lesson.json', `text.${code}.md`), language),
    common: wordsFile((code) => `/lessons/common.${code}.md`, language),
    glossary: wordsFile((code) => `/lessons/glossary.${code}.md`, language),
  });
  return loaded.ok ? { lesson: loaded.lesson, text: loaded.text } : refuse(loaded.problems);
}

/** Every lesson in order of its number. Throws, naming file, place and remedy, where one is not right. */
export function loadLessons(language = 'en'): LoadedLesson[] {
  return Object.entries(structures)
    .map(([file, content]) => load(file, content, language))
    .sort((one, other) => one.lesson.number - other.lesson.number);
}

/** The small complete lesson of `lessons/README.md`, which is its only source, as the two files of a lesson. */
export function loadExample(): { readonly structure: File; readonly words: File } {
  const guide = Object.values(guides)[0] ?? '';
  const block = (language: string) =>
    new RegExp(`^\`\`\`${language}\\n([^]*?)^\`\`\`$`, 'm').exec(guide)?.[1] ?? '';
  return {
    structure: { name: 'lesson.json', content: block('json') },
    words: { name: 'text.en.md', content: block('markdown') },
  };
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

/** The glossary, by term. Throws as above. */
export function loadGlossary(language = 'en'): LessonText['sections'] {
  const glossary = wordsFile((code) => `/lessons/glossary.${code}.md`, language);
  const { text, problems } = readText(glossary.content, glossary.name);
  return problems.length ? refuse(problems) : text.sections;
}
