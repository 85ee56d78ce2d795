/**
 * What a lesson tells of its numbers beyond the numbers: the likely band of every stage it can reach, and
 * the model assumptions behind each fault. Worked out while the pages are built; a reader is sent the result.
 */
import { faultSteps, type Lesson } from '#lesson';
import { rigBands, solve, type Rig, type Stock } from '#physics';

export interface Likely {
  readonly low_L_s: number;
  readonly high_L_s: number;
}

export interface LessonFacts {
  /** By the ids of the steps whose faults are in, in the lesson's order, joined by a plus. */
  readonly bands: Readonly<Record<string, Likely>>;
  /** Codes of assumptions met at a piece, with every fault in. */
  readonly assumptions: Readonly<Record<string, readonly string[]>>;
}

export const stageKey = (stepIds: readonly string[]): string => stepIds.join('+');

/** Bands of every subset of the lesson's faults: 1,000 draws each, the same seed, so that they compare. */
export function lessonFacts(lesson: Lesson, rig: Rig, stock: Stock): LessonFacts {
  const steps = faultSteps(lesson);
  const bands: Record<string, Likely> = {};
  for (let subset = 0; subset < 2 ** steps.length; subset++) {
    const there = steps.filter((_, i) => subset & (1 << i));
    const band = rigBands({ ...rig, faults: there.map((step) => step.fault) }, stock);
    if ('outcome' in band) throw new Error(`${lesson.slug}: ${band.path}: ${band.found}`);
    const { low, high } = band.outdoors_L_s.monteCarlo;
    bands[stageKey(there.map((step) => step.id))] = { low_L_s: low, high_L_s: high };
  }
  const all = solve({ ...rig, faults: steps.map((step) => step.fault) }, stock);
  const assumptions: Record<string, string[]> = {};
  for (const { code, at } of all.outcome === 'solved' ? all.assumptions : []) {
    if (at !== undefined) (assumptions[at] ??= []).push(code);
  }
  return { bands, assumptions };
}
