/** Runs only while the pages are built: every lesson is read, checked and prerendered. */
import { loadLesson, loadLessons } from '#lesson-load';
import { lessonRig, stockFor } from '#session';

export const prerender = true;

export const entries = () => loadLessons().map(({ lesson }) => ({ slug: lesson.slug }));

/** The lesson with its words, its rig, and of the catalogue only what the rig may need. */
export function load({ params }: { params: { slug: string } }) {
  const loaded = loadLesson(params.slug);
  const rig = lessonRig(loaded.lesson.rig);
  return { ...loaded, rig, stock: stockFor(rig) };
}
