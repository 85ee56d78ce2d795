/**
 * What a lesson tells of its numbers beyond the numbers: the likely band of every stage it can reach, the
 * model assumptions behind each piece, and the values its words ask for that take more of the engine than a
 * reader is sent. Worked out while the pages are built; a reader is sent the result. For a reader's own lesson
 * it is worked out in the browser, step by step first and the bands after.
 */
import {
  everyStage,
  isTaught,
  placeholdersIn,
  stageKey,
  stagesOf,
  type BuiltValues,
  type Lesson,
  type LessonText,
} from '#lesson';
import { rigBands, solve, type Rig, type Stock } from '#physics';
import { builtValues } from './lesson-numbers.ts';
import { rigAt } from './lesson-run.ts';

export interface Likely {
  readonly low_L_s: number;
  readonly high_L_s: number;
}

export interface LessonFacts {
  /** By `stageKey`. */
  readonly bands: Readonly<Record<string, Likely>>;
  /** Codes of assumptions met at a piece, by step id and piece id. */
  readonly assumptions: Readonly<Record<string, Readonly<Record<string, readonly string[]>>>>;
  /** Values of the placeholders a step's words ask for, by step id. */
  readonly built: Readonly<Record<string, BuiltValues>>;
}

/** Where the flow outdoors of a rig likely lies, by 1,000 draws of the coefficients. Throws where it does not solve. */
export function likelyBand(rig: Rig, stock: Stock): Likely {
  const band = rigBands(rig, stock);
  if ('outcome' in band) throw new Error(`${rig.name}: ${band.path}: ${band.found}`);
  const { low, high } = band.outdoors_L_s.monteCarlo;
  return { low_L_s: low, high_L_s: high };
}

/** What is told of a lesson's steps: no draws, so that it can be had at once. */
export function stepFacts(
  lesson: Lesson,
  text: LessonText,
  rigs: Readonly<Record<string, Rig>>,
  stock: Stock,
): Omit<LessonFacts, 'bands'> {
  const assumptions: Record<string, Record<string, string[]>> = {};
  const built: Record<string, BuiltValues> = {};
  for (const step of lesson.steps.filter(isTaught)) {
    const { from, to } = stagesOf(lesson, step);
    const solution = solve(rigAt(rigs, to), stock);
    const met: Record<string, string[]> = {};
    for (const { code, at } of solution.outcome === 'solved' ? solution.assumptions : [])
      if (at !== undefined) (met[at] ??= []).push(code);
    assumptions[step.id] = met;
    const words = Object.entries(text.sections).filter(([key]) => key.split('/')[0] === step.id);
    const asked = new Set(words.flatMap(([, { title, html }]) => placeholdersIn(title + html)));
    built[step.id] = builtValues(step, rigAt(rigs, from), rigAt(rigs, to), stock, asked);
  }
  return { assumptions, built };
}

/** The band of each stage in turn, by its key: 1,000 draws each, the same seed, so that they compare. Throws where a stage does not solve. */
export function* stageBands(
  lesson: Lesson,
  rigs: Readonly<Record<string, Rig>>,
  stock: Stock,
): Generator<readonly [string, Likely]> {
  for (const stage of everyStage(lesson))
    yield [stageKey(lesson, stage), likelyBand(rigAt(rigs, stage), stock)];
}

/** All of it. Throws where a stage does not solve. */
export function lessonFacts(
  lesson: Lesson,
  text: LessonText,
  rigs: Readonly<Record<string, Rig>>,
  stock: Stock,
): LessonFacts {
  return {
    bands: Object.fromEntries(stageBands(lesson, rigs, stock)),
    ...stepFacts(lesson, text, rigs, stock),
  };
}
