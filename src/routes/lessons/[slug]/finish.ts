/** A finished lesson written into the practice record; fetched only when one is finished. */
import { loadPractice, savePractice, withFinished } from '#lesson-practice';
import { browserStorage, type LessonPlay } from '#session';
import { evidenceOf } from './evidence.ts';

/** False where the browser would not keep it. */
export function recordFinish(play: LessonPlay, place: string): boolean {
  const { practice } = loadPractice(browserStorage);
  return savePractice(
    browserStorage,
    withFinished(practice, play.lesson, evidenceOf(play), new Date(), place),
  );
}
