/** Runs only while the pages are built: every lesson is read, checked and prerendered. */
import { loadLesson, loadLessons } from '#lesson-load';

export const prerender = true;

export const entries = () => loadLessons().map(({ lesson }) => ({ slug: lesson.slug }));

export const load = ({ params }: { params: { slug: string } }) => loadLesson(params.slug);
