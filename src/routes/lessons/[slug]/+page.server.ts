/** Runs only while the pages are built: every lesson is read, checked and prerendered. */
import { language } from '#i18n';
import { loadLesson, loadLessons } from '#lesson-load';
import { lessonFacts, lessonRigs, stockFor } from '#session';
import { restsOn } from './rests.ts';

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
  const next = loadLessons()
    .filter((each) => each.language === language && each.lesson.number > lesson.number)
    .sort((one, other) => one.lesson.number - other.lesson.number)
    .map((each) => ({ slug: each.lesson.slug, title: each.text.title, language: each.language }))[0];
  return {
    next,
    lesson,
    text,
    languages,
    rigs,
    stock,
    bands,
    built,
    assumptions: restsOn(lesson, assumptions),
  };
}
