/**
 * Progress read back out of the reader's own browser. What cannot be read, or could not have come about, is
 * moved aside and kept, and the lesson starts at its first step. A door of its own (`#lesson-progress`): its
 * checks are fetched only by a reader who has something saved.
 */
import * as v from 'valibot';
import type { MessageKey } from '#i18n';
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
  /** `keptAs`: the key it was moved to; absent where the storage would not take it. */
  | { readonly kind: 'set-aside'; readonly reason: MessageKey; readonly keptAs?: string };

/** Old saves kept for each lesson; the last place is overwritten when all are taken. */
const PLACES = 5;

type Read = { readonly context: LessonContext } | { readonly reason: MessageKey };

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
  if (format !== FORMAT || slug !== lesson.slug || lessonVersion !== lesson.version) {
    return { reason: 'lesson.progress.other-version' };
  }
  const saved = v.safeParse(savedSnapshotSchema, snapshot);
  if (!saved.success) return { reason: 'lesson.progress.unreadable' };
  if (!couldHaveHappened(lesson, saved.output)) return { reason: 'lesson.progress.impossible' };
  return { context: { lesson, ...saved.output.journey } };
}

function setAside(storage: ProgressStorage, slug: string, text: string): string | undefined {
  try {
    const keys = Array.from({ length: PLACES }, (_, i) => `${progressKey(slug)}.set-aside.${i + 1}`);
    const key = keys.find((candidate) => storage.getItem(candidate) === null) ?? keys.at(-1)!;
    storage.setItem(key, text);
    storage.removeItem(progressKey(slug));
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
export function loadProgress(storage: ProgressStorage, lesson: Lesson): LoadResult {
  const { text, reason } = keptProgress(storage, lesson.slug);
  if (text === null) return { kind: 'fresh', ...(reason ? { reason } : {}) };
  const result = read(text, lesson);
  if ('context' in result) return { kind: 'restored', snapshot: snapshotOf(lesson, result.context) };
  const keptAs = setAside(storage, lesson.slug, text);
  return { kind: 'set-aside', reason: result.reason, ...(keptAs ? { keptAs } : {}) };
}
