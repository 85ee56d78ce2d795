/** A finished lesson written into the practice record; fetched only when one is finished. */
import { loadPractice, savePractice, withFinished, type Account } from '#lesson-practice';
import { browserStorage } from '#session';

/** False where the browser would not keep it. */
export function recordFinish(account: Account, place: string): boolean {
  const { practice } = loadPractice(browserStorage);
  return savePractice(browserStorage, withFinished(practice, place, account, new Date()));
}
