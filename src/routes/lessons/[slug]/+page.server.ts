/** Runs only while the pages are built: every lesson is read, checked and prerendered. */
import { loadLesson, loadLessons } from '#lesson-load';
import { has, language, say } from '#i18n';
import { isTaught, subjectOf } from '#lesson';
import { lessonFacts, lessonRigs, stockFor } from '#session';

export const prerender = true;

/** A lesson is built in the languages it is in. */
export const entries = () =>
  loadLessons()
    .filter((each) => each.language === language)
    .map(({ lesson }) => ({ slug: lesson.slug }));

/** The lesson with its words, its rigs, and of the catalogue only what they may need. */
export function load({ params }: { params: { slug: string } }) {
  const { lesson, text, languages } = loadLesson(params.slug);
  const rigs = lessonRigs(lesson);
  const stock = stockFor(lesson, rigs);
  const { bands, assumptions, built } = lessonFacts(lesson, text, rigs, stock);
  const told = (codes: readonly string[]) =>
    codes.map((code) => `assumption.${code}`).flatMap((key) => (has(key) ? [say(key)] : []));
  // The assumptions behind what each step is about, in words.
  const rests = lesson.steps.filter(isTaught).map((step) => {
    const subject = subjectOf(step);
    return [step.id, told((subject && assumptions[step.id]?.[subject]) || [])] as const;
  });
  return {
    lesson,
    text,
    languages,
    rigs,
    stock,
    bands,
    built,
    assumptions: Object.fromEntries(rests) as Record<string, string[]>,
  };
}
