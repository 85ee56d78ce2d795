/** How the run stands at each point of a lesson: which rig, which faults, which fan and speed. */
import type { Fault } from '#physics';
import type { Journey } from './journey.ts';
import { faultSteps, jobsOf, recordOf, repairsIn, stepAt, subsetsOf } from './rules.ts';
import {
  isJob,
  isTaught,
  mendsPile,
  type Lesson,
  type MendStep,
  type Setup,
  type Step,
  type TaughtStep,
} from './schema.ts';
import type { LessonView } from './view.ts';

export interface Stage {
  /** Id of a rig; its own faults are left out. */
  readonly rig: string;
  readonly faults: readonly Fault[];
  /** Another fan than the rig's; absent for the rig's own. */
  readonly fan?: string;
  readonly speed?: number;
  /** A meter held over the grille. */
  readonly held?: NonNullable<Setup['held']>;
}

/** The run with the first `count` faults of the lesson piled up; fan and speed the rig's own. */
export function pile(lesson: Lesson, count = Infinity): Stage {
  return {
    rig: lesson.rig,
    faults: faultSteps(lesson)
      .slice(0, count)
      .map((step) => step.fault),
  };
}

/** Fault steps that come before a step of the lesson, none of them once the mending is past. */
function pileBefore(lesson: Lesson, step: Step): Stage {
  const before = lesson.steps.slice(0, lesson.steps.indexOf(step));
  if (before.some(mendsPile)) return pile(lesson, 0);
  return pile(lesson, before.filter(({ kind }) => kind === 'fault').length);
}

function set(stage: Stage, setup: Setup | undefined): Stage {
  if (!setup) return stage;
  return {
    ...stage,
    ...(setup.faults ? { faults: setup.faults } : {}),
    ...(setup.fan === undefined ? {} : { fan: setup.fan }),
    ...(setup.speed === undefined ? {} : { speed: setup.speed }),
    ...(setup.held === undefined ? {} : { held: setup.held }),
  };
}

/** The run before and after a step's own change; the same stage twice where it changes nothing. */
export function stagesOf(lesson: Lesson, step: TaughtStep): { readonly from: Stage; readonly to: Stage } {
  const start = pileBefore(lesson, step);
  if (step.kind === 'fault') return { from: start, to: { ...start, faults: [...start.faults, step.fault] } };
  const here = step.rig === undefined ? start : { rig: step.rig, faults: [] };
  const from = set(here, step.from);
  return { from, to: set(from, step.to) };
}

/** The run of a mending step with these repairs made. */
export function mended(lesson: Lesson, step: MendStep, repairs: readonly string[] = []): Stage {
  return {
    rig: step.rig ?? lesson.rig,
    faults: jobsOf(lesson, step)
      .filter(({ id }) => !repairs.includes(id))
      .map(({ fault }) => fault),
  };
}

/** What the picture shows now: a step's change from its reveal on; in the mending, what is not mended. */
export function stageNow(lesson: Lesson, { context }: LessonView): Stage {
  const step = stepAt(lesson, context.stepIndex);
  if (step.kind === 'mend') return mended(lesson, step, context.repairs);
  if (!isTaught(step)) return pileBefore(lesson, step);
  const { from, to } = stagesOf(lesson, step);
  return recordOf(context, step.id).revealed ? to : from;
}

/** The ghost: the run one change ago. In the mending that is before the last repair. */
export function stageBefore(lesson: Lesson, { context }: LessonView): Stage {
  const step = stepAt(lesson, context.stepIndex);
  if (step.kind === 'mend') return mended(lesson, step, repairsIn(lesson, step, context).slice(0, -1));
  return isTaught(step) ? stagesOf(lesson, step).from : pileBefore(lesson, step);
}

/** The rig of the step on screen with nothing wrong. */
export function stageHealthy(lesson: Lesson, { context }: LessonView): Stage {
  const step = stepAt(lesson, context.stepIndex);
  if (step.kind === 'mend') return { ...mended(lesson, step), faults: [] };
  if (!isTaught(step)) return pile(lesson, 0);
  const { rig, fan, speed } = stagesOf(lesson, step).from;
  return {
    rig,
    faults: [],
    ...(fan === undefined ? {} : { fan }),
    ...(speed === undefined ? {} : { speed }),
  };
}

export type LedgerLine =
  | { readonly kind: 'opening' }
  | { readonly kind: 'debit'; readonly stepId: string }
  | { readonly kind: 'credit'; readonly stepId: string }
  /** A case's own change, up or down. */
  | { readonly kind: 'change'; readonly stepId: string };

/** The account as it stands on the step now on screen: each line, and the run after it. */
export function account(
  lesson: Lesson,
  { context }: LessonView,
): readonly { readonly line: LedgerLine; readonly stage: Stage }[] {
  const step = stepAt(lesson, context.stepIndex);
  if (step.kind === 'case') {
    const { from, to } = stagesOf(lesson, step);
    const opening = { line: { kind: 'opening' as const }, stage: from };
    const changed = recordOf(context, step.id).revealed && step.to;
    return changed ? [opening, { line: { kind: 'change', stepId: step.id }, stage: to }] : [opening];
  }
  const credits = step.kind === 'mend' ? creditsOf(lesson, step, context) : [];
  // A job is found as it is: its account opens there, and what each fault took is for the repairs to show.
  if (isJob(step)) return [{ line: { kind: 'opening' }, stage: mended(lesson, step) }, ...credits];
  const seen = seenFaults(lesson, context);
  const debits = seen.map((each, i) => ({
    line: { kind: 'debit' as const, stepId: each.id },
    stage: { rig: lesson.rig, faults: seen.slice(0, i + 1).map(({ fault }) => fault) },
  }));
  return [{ line: { kind: 'opening' }, stage: pile(lesson, 0) }, ...debits, ...credits];
}

/** A line for each repair, and the run with it and those before it. */
function creditsOf(lesson: Lesson, step: MendStep, journey: Journey) {
  return repairsIn(lesson, step, journey).map((stepId, i, repairs) => ({
    line: { kind: 'credit' as const, stepId },
    stage: mended(lesson, step, repairs.slice(0, i + 1)),
  }));
}

/** Fault steps whose faults have been seen by the step now on screen, in order. */
function seenFaults(lesson: Lesson, journey: Journey) {
  return lesson.steps
    .slice(0, journey.stepIndex + 1)
    .filter((step) => step.kind === 'fault')
    .filter((step, i, all) => {
      const present = i === all.length - 1 && lesson.steps[journey.stepIndex] === step;
      return !present || recordOf(journey, step.id).revealed;
    });
}

/** Every stage the lesson can rest at: each subset of the faults of a mending, and every case. */
export function everyStage(lesson: Lesson): Stage[] {
  const stages: Stage[] = [];
  for (const step of lesson.steps) {
    if (step.kind !== 'mend') continue;
    const jobs = jobsOf(lesson, step).map(({ id }) => id);
    for (const repaired of subsetsOf(jobs)) stages.push(mended(lesson, step, repaired));
  }
  for (const step of lesson.steps) {
    if (!isTaught(step)) continue;
    const { from, to } = stagesOf(lesson, step);
    stages.push(from, to, { ...from, faults: [] });
  }
  const byKey = new Map([pile(lesson, 0), ...stages].map((stage) => [stageKey(lesson, stage), stage]));
  return [...byKey.values()];
}

/** Listed once a lesson: keys are asked for on every frame of a move. */
const listed = new WeakMap<Lesson, readonly string[]>();

/** Every fault of the lesson once, so that a stage can be told by a few numbers. */
function everyFault(lesson: Lesson): readonly string[] {
  const known = listed.get(lesson);
  if (known) return known;
  const faults = lesson.steps.flatMap((step) => {
    if (step.kind === 'mend') return jobsOf(lesson, step).map(({ fault }) => fault);
    if (!isTaught(step)) return [];
    const { from, to } = stagesOf(lesson, step);
    return [...from.faults, ...to.faults];
  });
  const all = [...new Set(faults.map((fault) => JSON.stringify(fault)))];
  listed.set(lesson, all);
  return all;
}

/** A short name for a stage, the same whatever order its faults are in. */
export function stageKey(lesson: Lesson, { rig, faults, fan, speed, held }: Stage): string {
  const all = everyFault(lesson);
  const numbers = faults.map((fault) => all.indexOf(JSON.stringify(fault))).sort((one, other) => one - other);
  return `${rig}/${fan ?? ''}/${speed ?? ''}/${held ?? ''}/${numbers.join('+')}`;
}
