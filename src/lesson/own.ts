/**
 * Lessons of a reader's own: their two files told apart, kept in the browser as they were written, and read
 * back. A door of its own (`#lesson-own`). Nothing here trusts what is kept: it is checked anew when played.
 */
import * as v from 'valibot';
import type { File } from './assemble.ts';
import type { ProgressStorage } from './keeping.ts';

/** The largest of the two files of a lesson, in bytes; ours have a tenth of it. */
export const MOST_BYTES = 300_000;

/** A storage that can also tell what is in it. */
export interface ListedStorage extends ProgressStorage {
  keys(): string[];
}

/** Progress and practice of a reader's own lesson are kept under this. No slug has a colon, so it is never a built-in lesson's. */
export const ownPlace = (slug: string): string => `own:${slug}`;

/** The slug of `ownPlace`; nothing for a built-in lesson's. */
export const ownSlug = (place: string): string | undefined => /^own:(.+)$/.exec(place)?.[1];

export interface Own {
  readonly slug: string;
  readonly version: number;
  readonly title: string;
  readonly minutes: number;
  readonly structure: File;
  readonly words: File;
}

export interface Gathered<Chosen> {
  readonly structure?: Chosen;
  readonly words?: Chosen;
  /** More than one lesson was chosen; none of it is taken. */
  readonly several: boolean;
}

const baseName = (name: string) => name.split(/[\\/]/).at(-1)!.toLowerCase();

/** Of what was chosen, one by one or as a folder, the two files of a lesson; others are left alone. */
export function gather<Chosen extends { readonly name: string }>(
  chosen: readonly Chosen[],
): Gathered<Chosen> {
  const called = (form: RegExp) => chosen.filter(({ name }) => form.test(baseName(name)));
  // The exact name goes before the ending, since a folder may hold other notes.
  const best = (forms: readonly RegExp[]) => forms.map(called).find((found) => found.length > 0) ?? [];
  const structures = best([/^lesson\.json$/, /\.json$/]);
  const words = best([/^text\.en\.md$/, /^text\.[a-z-]+\.md$/, /^(?!readme\.).*\.md$/]);
  if (structures.length > 1 || words.length > 1) return { several: true };
  return {
    several: false,
    ...(structures[0] ? { structure: structures[0] } : {}),
    ...(words[0] ? { words: words[0] } : {}),
  };
}

const PREFIX = 'lost-litres.own.';
const text = v.strictObject({ name: v.string(), content: v.string() });
const keptSchema = v.strictObject({
  format: v.literal(1),
  slug: v.pipe(v.string(), v.minLength(1)),
  version: v.pipe(v.number(), v.integer()),
  title: v.string(),
  minutes: v.number(),
  structure: text,
  words: text,
});

/** False where the browser would not take it; what was there under its slug is then still there. */
export function keepOwn(storage: ProgressStorage, own: Own): boolean {
  try {
    storage.setItem(PREFIX + own.slug, JSON.stringify({ format: 1, ...own }));
    return true;
  } catch {
    return false;
  }
}

function read(kept: string | null): Own | undefined {
  try {
    const found = v.safeParse(keptSchema, JSON.parse(kept ?? ''));
    if (!found.success) return undefined;
    const { format: _, ...own } = found.output;
    return own;
  } catch {
    return undefined;
  }
}

/** One by its slug; undefined where it is not there, or not to be read. */
export function ownLesson(storage: ProgressStorage, slug: string): Own | undefined {
  try {
    const own = read(storage.getItem(PREFIX + slug));
    return own?.slug === slug ? own : undefined;
  } catch {
    return undefined;
  }
}

/** All that are kept, by title; those that cannot be read by their slug alone. Empty where there is no storage. */
export function ownLessons(storage: ListedStorage): {
  readonly lessons: readonly Own[];
  readonly unreadable: readonly string[];
} {
  try {
    const slugs = storage
      .keys()
      .filter((key) => key.startsWith(PREFIX))
      .map((key) => key.slice(PREFIX.length));
    return {
      lessons: slugs
        .flatMap((slug) => ownLesson(storage, slug) ?? [])
        .sort((one, other) => one.title.localeCompare(other.title, 'en')),
      unreadable: slugs.filter((slug) => !ownLesson(storage, slug)),
    };
  } catch {
    return { lessons: [], unreadable: [] };
  }
}

/** Takes a lesson out. The reader's place in it, and what was shown in it, stay. */
export function removeOwn(storage: ProgressStorage, slug: string): void {
  try {
    storage.removeItem(PREFIX + slug);
  } catch {
    // A closed storage holds nothing to take out.
  }
}
