/** A place in a lesson kept in the reader's own browser. Storage is handed in and never makes this throw. */
import type { MessageKey } from '#i18n';
import type { Account } from './account.ts';
import { phase, type LessonView } from './view.ts';

export interface ProgressStorage {
  getItem(key: string): string | null;
  setItem(key: string, value: string): void;
  removeItem(key: string): void;
}

export type SaveResult = { readonly saved: true } | { readonly saved: false; readonly reason: MessageKey };

export const FORMAT = 1;

/** Key the place in a lesson is kept under; `place` is a built-in lesson's slug, or `ownPlace` of a reader's own. */
export function progressKey(place: string): string {
  return `lost-litres.progress.${place}`;
}

/** What is kept of a lesson, unread; or why nothing can be. */
export function keptProgress(
  storage: ProgressStorage,
  place: string,
): { readonly text: string | null; readonly reason?: MessageKey } {
  try {
    return { text: storage.getItem(progressKey(place)) };
  } catch {
    return { text: null, reason: 'lesson.progress.no-storage' };
  }
}

/** Keeps the place, and what was shown on the way to it; tells, and never throws, where the storage will not take it. */
export function saveProgress(
  storage: ProgressStorage,
  snapshot: LessonView,
  place = snapshot.context.lesson.slug,
  account?: Account,
): SaveResult {
  const { lesson, ...journey } = snapshot.context;
  const saved = {
    format: FORMAT,
    slug: lesson.slug,
    lessonVersion: lesson.version,
    snapshot: { phase: phase(snapshot), journey },
    ...(account ? { account } : {}),
  };
  try {
    storage.setItem(progressKey(place), JSON.stringify(saved));
    return { saved: true };
  } catch {
    // Full, or closed to us as in some private windows.
    return { saved: false, reason: 'lesson.progress.not-saved' };
  }
}

/** Progress forgotten on the reader's wish. */
export function forgetProgress(storage: ProgressStorage, place: string): void {
  try {
    storage.removeItem(progressKey(place));
  } catch {
    // A closed storage holds nothing to forget.
  }
}
