/**
 * Lessons from the `lessons/` folder, read and checked while the pages are built. `.server` in the name
 * keeps this file out of everything sent to a reader.
 */
import { language, languages, type Language } from '#i18n';
import { assemble, type File, type LoadedLesson } from './assemble.ts';
import type { LessonText } from './parts.ts';
import { problemText, type Problem } from './problems.ts';
import { readText } from './text.ts';
import { translationProblems } from './translation.ts';

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

const read = (name: string): File => ({ name: name.slice(1), content: texts[name] ?? '' });
const shared = (language: string) => ({
  common: read(`/lessons/common.${language}.md`),
  glossary: read(`/lessons/glossary.${language}.md`),
});

export interface LoadedIn extends LoadedLesson {
  /** English where the lesson has not been put into the language asked for: never a mixture of two. */
  readonly language: Language;
  /** Every language it has words in. */
  readonly languages: readonly Language[];
}

function load(file: string, content: string, wanted: Language): LoadedIn {
  const wordsIn = (language: Language) => file.replace('lesson.json', `text.${language}.md`);
  const there = languages.filter((each) => texts[wordsIn(each)] !== undefined);
  const language = there.includes(wanted) ? wanted : 'en';
  const files = {
    structure: { name: file.slice(1), content },
    words: read(wordsIn(language)),
    ...shared(language),
  };
  const loaded = assemble(files);
  if (!loaded.ok) return refuse(loaded.problems);
  const astray =
    language === 'en' ? [] : translationProblems(files, { words: read(wordsIn('en')), ...shared('en') });
  return astray.length
    ? refuse(astray)
    : { lesson: loaded.lesson, text: loaded.text, language, languages: there };
}

/** Every lesson in order of its number. Throws, naming file, place and remedy, where one is not right. */
export function loadLessons(wanted: Language = language): LoadedIn[] {
  return Object.entries(structures)
    .map(([file, content]) => load(file, content, wanted))
    .sort((one, other) => one.lesson.number - other.lesson.number);
}

/** `lessons/README.md` as it stands: all that is to be known to write a lesson. */
export function loadGuide(): string {
  return Object.values(guides)[0] ?? '';
}

/** The small complete lesson of `lessons/README.md`, which is its only source, as the two files of a lesson. */
export function loadExample(): { readonly structure: File; readonly words: File } {
  const guide = loadGuide();
  const block = (language: string) =>
    new RegExp(`^\`\`\`${language}\\n([^]*?)^\`\`\`$`, 'm').exec(guide)?.[1] ?? '';
  return {
    structure: { name: 'lesson.json', content: block('json') },
    words: { name: 'text.en.md', content: block('markdown') },
  };
}

/** One lesson by its slug; throws with the slugs there are when there is none. */
export function loadLesson(slug: string, wanted: Language = language): LoadedIn {
  const lessons = loadLessons(wanted);
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
export function loadGlossary(wanted: Language = language): LessonText['sections'] {
  const { glossary } = shared(wanted);
  const { text, problems } = readText(glossary.content, glossary.name);
  return problems.length ? refuse(problems) : text.sections;
}
