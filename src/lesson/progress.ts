/**
 * Progress read back out of the reader's own browser. What cannot be read, or could not have come about, is
 * moved aside and kept, and the lesson starts at its first step. A door of its own (`#lesson-progress`): its
 * checks are fetched only by a reader who has something saved.
 */
import * as v from 'valibot';
import type { MessageKey } from '#i18n';
import { accountSchema, type Account } from './account.ts';
import type { Journey } from './journey.ts';
import { FORMAT, keptProgress, progressKey, type ProgressStorage } from './keeping.ts';
import { lessonMachine, type LessonContext } from './machine.ts';
import { furthestPhase, stepAt } from './rules.ts';
import { couldHaveHappened, envelopeSchema, savedSnapshotSchema } from './saved.ts';
import type { Lesson } from './schema.ts';

export type LessonSnapshot = ReturnType<typeof lessonMachine.resolveState>;

export type LoadResult =
  | { readonly kind: 'fresh'; readonly reason?: MessageKey }
  | { readonly kind: 'restored'; readonly snapshot: LessonSnapshot }
  /**
   * Of another version of the lesson: the place is moved aside, what was shown is handed over. A place kept
   * before accounts were has only its journey.
   */
  | {
      readonly kind: 'older';
      readonly from: number;
      readonly account?: Account;
      readonly journey?: Journey;
      readonly keptAs?: string;
    }
  /** `keptAs`: the key it was moved to; absent where the storage would not take it. */
  | { readonly kind: 'set-aside'; readonly reason: MessageKey; readonly keptAs?: string };

/** Old saves kept for each lesson; the last place is overwritten when all are taken. */
const PLACES = 5;

type Read =
  | { readonly context: LessonContext }
  | { readonly from: number; readonly account?: Account; readonly journey?: Journey }
  | { readonly reason: MessageKey };

function parse(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return undefined;
  }
}

function read(text: string, lesson: Lesson): Read {
  const envelope = v.safeParse(envelopeSchema, parse(text));
  if (!envelope.success) return { reason: 'lesson.progress.unreadable' };
  const { format, slug, lessonVersion, snapshot } = envelope.output;
  if (format !== FORMAT || slug !== lesson.slug) return { reason: 'lesson.progress.other-version' };
  const saved = v.safeParse(savedSnapshotSchema, snapshot);
  if (lessonVersion !== lesson.version) {
    const account = v.safeParse(accountSchema, envelope.output.account);
    if (account.success && account.output.version === lessonVersion)
      return { from: lessonVersion, account: account.output };
    if (saved.success) return { from: lessonVersion, journey: saved.output.journey };
  }
  if (!saved.success) return { reason: 'lesson.progress.unreadable' };
  if (!couldHaveHappened(lesson, saved.output)) return { reason: 'lesson.progress.impossible' };
  return { context: { lesson, ...saved.output.journey } };
}

function setAside(storage: ProgressStorage, place: string, text: string): string | undefined {
  try {
    const keys = Array.from({ length: PLACES }, (_, i) => `${progressKey(place)}.set-aside.${i + 1}`);
    const key = keys.find((candidate) => storage.getItem(candidate) === null) ?? keys.at(-1)!;
    storage.setItem(key, text);
    storage.removeItem(progressKey(place));
    return key;
  } catch {
    return undefined;
  }
}

/** A snapshot for `createActor`: the same step, in its furthest phase (a reveal cut short becomes observe). */
export function snapshotOf(lesson: Lesson, journey: Journey): LessonSnapshot {
  const value = furthestPhase(lesson, stepAt(lesson, journey.stepIndex), journey);
  return lessonMachine.resolveState({ value, context: { ...journey, lesson } });
}

/** What was saved of a lesson, or why there is nothing of it. Never throws. */
export function loadProgress(storage: ProgressStorage, lesson: Lesson, place = lesson.slug): LoadResult {
  const { text, reason } = keptProgress(storage, place);
  if (text === null) return { kind: 'fresh', ...(reason ? { reason } : {}) };
  const result = read(text, lesson);
  if ('context' in result) return { kind: 'restored', snapshot: snapshotOf(lesson, result.context) };
  const keptAs = setAside(storage, place, text);
  if ('from' in result) return { kind: 'older', ...result, ...(keptAs ? { keptAs } : {}) };
  return { kind: 'set-aside', reason: result.reason, ...(keptAs ? { keptAs } : {}) };
}
