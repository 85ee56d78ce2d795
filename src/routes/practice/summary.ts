/** Of a lesson, what the practice record needs to ask and to say. */
import { language, type Language } from '#i18n';
import type { Item, Lesson, LessonText } from '#lesson';

export interface Summary {
  /** Of the lesson's words, which may be another than the page's. */
  readonly language: Language;
  /** What the lesson's entry in the record is kept under. */
  readonly place: string;
  readonly title: string;
  readonly version?: number;
  readonly aims: readonly string[];
  readonly items: readonly Item[];
  /** Sections of aims and returns, by key. */
  readonly words: Readonly<Record<string, { readonly title: string; readonly html: string }>>;
  /** Names of the mistaken ideas, by section. */
  readonly ideas: Readonly<Record<string, string>>;
}

export function summaryOf(
  lesson: Lesson,
  { title, sections }: LessonText,
  place: string,
  words: Language = language,
): Summary {
  const all = Object.entries(sections);
  return {
    language: words,
    place,
    title,
    version: lesson.version,
    aims: lesson.aims,
    items: lesson.returns ?? [],
    words: Object.fromEntries(all.filter(([key]) => /^(returns|aims)\//.test(key))),
    ideas: Object.fromEntries(all.flatMap(([key, { idea }]) => (idea ? [[key, idea]] : []))),
  };
}
