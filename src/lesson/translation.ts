/**
 * A translated text against the English one: the same ids, each with words in the same places, the same engine
 * numbers, and a mistaken idea named where English names one. Ideas are kept by these ids, so that progress
 * made in one language holds in the other.
 */
import { say } from '#i18n';
import type { LessonFiles } from './assemble.ts';
import { placeholdersIn } from './fill.ts';
import type { LessonText, Section } from './parts.ts';
import { lineAt, type Problem } from './problems.ts';
import { nearestHeading, readText } from './text.ts';

type Words = Pick<LessonFiles, 'words' | 'common' | 'glossary'>;

/** What a section holds, apart from its words. */
function shapeOf({ title, html, idea }: Section): string {
  const numbers = [...new Set(placeholdersIn(title + html))].sort().map((name) => `{${name}}`);
  const has = [title && 'heading', html && 'words', idea !== undefined && 'idea'].filter(Boolean);
  return [...has, ...numbers].join(' ');
}

/** `whole`: every section of the original is wanted; else those there are must have an original. */
function compare(own: LessonText, original: LessonText, file: string, whole: boolean): Problem[] {
  const problems: Problem[] = [];
  const note = (path: string, found: string, allowed: string) =>
    problems.push({ file, path, found, allowed });
  for (const [key, section] of Object.entries(original.sections)) {
    const translated = own.sections[key];
    const heading = `${'#'.repeat(key.split('/').length + 1)} ${key.split('/').at(-1)}`;
    if (translated) {
      const [found, wanted] = [shapeOf(translated), shapeOf(section)];
      if (found !== wanted) note(key, found, wanted);
    } else if (whole)
      note(key, say('lesson.problem.nothing'), say('lesson.problem.add-section', { heading }));
  }
  for (const key of Object.keys(own.sections))
    if (!original.sections[key])
      note(key, say('lesson.problem.stray-translation'), say('lesson.problem.as-english'));
  return problems;
}

/** Every place where a translation departs from the English files. */
export function translationProblems(own: Words, english: Words): Problem[] {
  return (['words', 'common', 'glossary'] as const).flatMap((part) => {
    const { name, content } = own[part];
    const original = readText(english[part].content, english[part].name).text;
    // Of what lessons share, a language needs as much as its lessons use; `checkText` sees to that.
    const { text, lines } = readText(content, name);
    return compare(text, original, name, part === 'words').map((problem) =>
      lineAt(problem, nearestHeading(problem.path, lines)),
    );
  });
}
