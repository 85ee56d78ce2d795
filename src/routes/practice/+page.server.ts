/** Runs only while the pages are built: of every lesson, what a return asks and says. */
import { loadLessons } from '#lesson-load';

export const prerender = true;

export function load() {
  const lessons = loadLessons().map(({ lesson, text, language }) => ({
    language,
    slug: lesson.slug,
    title: text.title,
    items: lesson.returns ?? [],
    words: Object.fromEntries(Object.entries(text.sections).filter(([key]) => /^(returns|aims)\//.test(key))),
    /** Names of the mistaken ideas, by section. */
    ideas: Object.fromEntries(
      Object.entries(text.sections).flatMap(([key, { idea }]) => (idea ? [[key, idea]] : [])),
    ),
  }));
  return { lessons };
}
