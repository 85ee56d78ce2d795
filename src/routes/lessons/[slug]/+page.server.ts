/** Runs only while the pages are built: every lesson is read, checked and prerendered. */
import { loadLesson, loadLessons } from '#lesson-load';
import { has, say } from '#i18n';
import { lessonFacts, lessonRig, stockFor } from '#session';

export const prerender = true;

export const entries = () => loadLessons().map(({ lesson }) => ({ slug: lesson.slug }));

/** The lesson with its words, its rig, and of the catalogue only what the rig may need. */
export function load({ params }: { params: { slug: string } }) {
  const loaded = loadLesson(params.slug);
  const rig = lessonRig(loaded.lesson.rig);
  const stock = stockFor(rig);
  const { bands, assumptions } = lessonFacts(loaded.lesson, rig, stock);
  const told = Object.entries(assumptions).map(([piece, codes]) => [
    piece,
    codes.map((code) => `assumption.${code}`).flatMap((key) => (has(key) ? [say(key)] : [])),
  ]);
  return { ...loaded, rig, stock, bands, assumptions: Object.fromEntries(told) as Record<string, string[]> };
}
