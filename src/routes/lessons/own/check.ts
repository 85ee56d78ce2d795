/**
 * A reader's own lesson, put together and checked as `npm run -s lessons` does it, with all that playing it
 * takes but the likely bands. Carries the Markdown reader, the checker and the catalogue: only for the worker.
 */
import { problemText, type BuiltValues } from '#lesson';
import { assemble, typedWarnings, type File, type LoadedLesson } from '#lesson-author';
import { auditLesson, lessonRigs, stageBands, stepFacts, stockFor, type Likely } from '#lesson-engine';
import type { Rig, Stock } from '#physics';
import common from '../../../../lessons/common.en.md?raw';
import glossary from '../../../../lessons/glossary.en.md?raw';
import { restsOn } from '../[slug]/rests.ts';

export interface Playable extends LoadedLesson {
  readonly rigs: Readonly<Record<string, Rig>>;
  readonly stock: Stock;
  readonly built: Readonly<Record<string, BuiltValues>>;
  readonly assumptions: Readonly<Record<string, readonly string[]>>;
}

export type Checked =
  | {
      readonly ok: true;
      readonly playable: Playable;
      /** A line for what its author should look at all the same. */
      readonly warnings: readonly string[];
    }
  /** One line a problem: file, place, what was found, the remedy. */
  | { readonly ok: false; readonly lines: readonly string[] };

/** Never throws for what an author wrote. */
export function check(structure: File, words: File): Checked {
  const shared = {
    common: { name: 'common.en.md', content: common },
    glossary: { name: 'glossary.en.md', content: glossary },
  };
  const named = { structure: structure.name, words: words.name };
  const loaded = assemble({ structure, words, ...shared }, (lesson, text) =>
    auditLesson(lesson, text, named),
  );
  if (!loaded.ok) return { ok: false, lines: loaded.problems.map(problemText) };
  const { lesson, text } = loaded;
  const rigs = lessonRigs(lesson);
  const stock = stockFor(lesson, rigs);
  const { assumptions, built } = stepFacts(lesson, text, rigs, stock);
  return {
    ok: true,
    warnings: typedWarnings(words),
    playable: { lesson, text, rigs, stock, built, assumptions: restsOn(lesson, assumptions) },
  };
}

/** The likely band of each stage, by its key, one after the other. */
export function bandsOf({ lesson, rigs, stock }: Playable): Iterable<readonly [string, Likely]> {
  return stageBands(lesson, rigs, stock);
}
