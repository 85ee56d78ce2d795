/** Lessons taken in on this visit: all there is of them where the browser's storage is off or full. */
import { ownLesson, type Own } from '#lesson-own';
import { browserStorage } from '#session';

export const visit = new Map<string, Own>();

/** The newest there is of a lesson of the reader's own. */
export const findOwn = (slug: string): Own | undefined => visit.get(slug) ?? ownLesson(browserStorage, slug);
