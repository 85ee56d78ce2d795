/** Runs only while the pages are built: the opening picture is solved then, and the page needs no script. */
import { loadLessons } from '#lesson-load';
import { pile } from '#lesson';
import { LessonRuns, lessonRigs, stock } from '#session';

export const prerender = true;
export const csr = false;

export function load() {
  const lessons = loadLessons().map(({ lesson, text, language }) => ({
    language,
    slug: lesson.slug,
    number: lesson.number,
    title: text.title,
    minutes: lesson.minutes,
  }));
  const { lesson } = loadLessons().find((each) => each.lesson.slug === 'five-small-faults')!;
  const runs = new LessonRuns(lesson, lessonRigs(lesson), stock);
  const worst = pile(lesson);
  return { lessons, rig: runs.rig(worst), solution: runs.at(worst), healthy: runs.at(pile(lesson, 0)) };
}
