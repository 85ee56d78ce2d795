/** Runs only while the pages are built: of every lesson, what a return asks and says. */
import { loadLessons } from '#lesson-load';
import { summaryOf } from './summary.ts';

export const prerender = true;

export function load() {
  return {
    lessons: loadLessons().map(({ lesson, text, language }) =>
      summaryOf(lesson, text, lesson.slug, language),
    ),
  };
}
