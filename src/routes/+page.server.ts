/** Runs only while the pages are built: the opening picture is solved then, and the page needs no script. */
import { loadLessons } from '#lesson-load';
import { faultSteps } from '#lesson';
import { lessonRig, RunSolver, stock } from '#session';

export const prerender = true;
export const csr = false;

export function load() {
  const lessons = loadLessons().map(({ lesson, text }) => ({
    slug: lesson.slug,
    title: text.title,
    minutes: lesson.minutes,
  }));
  const { lesson } = loadLessons().find((each) => each.lesson.slug === 'five-small-faults')!;
  const run = new RunSolver(lessonRig(lesson.rig), stock);
  const faults = faultSteps(lesson).map((step) => step.fault);
  return { lessons, rig: run.rigWith(faults), solution: run.at(faults), healthy: run.at([]) };
}
