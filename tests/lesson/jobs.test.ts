/** A mending step with faults of its own: a job, mended in any order, with no bearing on what the lesson piles up. */
import { describe, expect, it } from 'vitest';
import { createActor } from 'xstate';
import {
  account,
  everyStage,
  fewest,
  jobsOf,
  lessonMachine,
  loadProgress,
  phase,
  possible,
  readLesson,
  saveProgress,
  stageBefore,
  stageHealthy,
  stageKey,
  stageNow,
  type Lesson,
  type MendStep,
} from '#lesson';
import { memory } from './memory.ts';
import { FILE, raw, type Spoilt } from './small.ts';

const job = () => ({
  id: 'job',
  kind: 'mend',
  rig: 'base-case',
  faults: [
    { id: 'belly', kind: 'sag', at: 'out', amount: 1 },
    { id: 'pinch', kind: 'crimp', at: 'fan', amount: 0.8 },
    { id: 'nest', kind: 'blocked-cowl', at: 'cowl', amount: 0.5 },
  ],
});
/** The job stands first, so that it is on screen from the start. */
const rawJob = () => ({ ...raw(), steps: [job(), ...raw().steps] });

function read(value: object = rawJob()) {
  const result = readLesson(value, FILE);
  if (!result.ok) throw new Error(JSON.stringify(result.problems));
  return result.lesson;
}
const lesson = read();
const ALL = ['job/belly', 'job/pinch', 'job/nest'];

function after(...repairs: string[]) {
  const actor = createActor(lessonMachine, { input: { lesson } }).start();
  for (const stepId of repairs) actor.send({ type: 'repair.make', stepId });
  return actor;
}
const kinds = (of: Lesson, repairs: string[]) =>
  stageNow(of, after(...repairs).getSnapshot()).faults.map(({ kind }) => kind);

describe('a job', () => {
  it('stands on its own rig with its own faults, whatever the lesson piles up', () => {
    const snapshot = after().getSnapshot();
    expect(phase(snapshot)).toBe('mending');
    expect(stageNow(lesson, snapshot)).toMatchObject({ rig: 'base-case' });
    expect(kinds(lesson, [])).toEqual(['sag', 'crimp', 'blocked-cowl']);
    expect(stageHealthy(lesson, snapshot)).toEqual({ rig: 'base-case', faults: [] });
  });

  it('is mended in any order, each repair taken back at will', () => {
    expect(kinds(lesson, ['job/nest', 'job/belly'])).toEqual(['crimp']);
    const actor = after('job/nest', 'job/belly');
    actor.send({ type: 'repair.undo', stepId: 'job/nest' });
    expect(actor.getSnapshot().context.repairs).toEqual(['job/belly']);
    expect(stageBefore(lesson, after('job/nest', 'job/belly').getSnapshot()).faults).toHaveLength(2);
  });

  it('mends only what is its own, and is left only when all is mended', () => {
    const actor = after('first', 'job/belly', 'job/pinch');
    expect(actor.getSnapshot().context.repairs).toEqual(['job/belly', 'job/pinch']);
    expect(possible(actor.getSnapshot(), { type: 'repair.make', stepId: 'first' }).possible).toBe(false);
    actor.send({ type: 'step.next' });
    expect(actor.getSnapshot().context.stepIndex).toBe(0);
    actor.send({ type: 'repair.make', stepId: 'job/nest' });
    actor.send({ type: 'step.next' });
    expect(actor.getSnapshot().context.stepIndex).toBe(1);
    // Gone on: what was mended stays mended.
    actor.send({ type: 'step.back' });
    actor.send({ type: 'repair.undo', stepId: 'job/nest' });
    expect(actor.getSnapshot().context.repairs).toEqual(ALL);
  });

  it('takes none of the piled faults away, and the pile has its own mending still to come', () => {
    const actor = after(...ALL);
    actor.send({ type: 'step.next' });
    expect(stageNow(lesson, actor.getSnapshot())).toMatchObject({ rig: 'upstairs-bathroom', faults: [] });
    expect(jobsOf(lesson, lesson.steps.at(-1) as MendStep).map(({ id }) => id)).toEqual(['first', 'second']);
  });

  it('opens its account as it was found, with a line for each repair', () => {
    const lines = account(lesson, after('job/nest', 'job/belly').getSnapshot());
    expect(lines.map(({ line, stage }) => [line.kind, stage.faults.length])).toEqual([
      ['opening', 3],
      ['credit', 2],
      ['credit', 1],
    ]);
  });

  it('can rest at every subset of its faults', () => {
    const keys = everyStage(lesson).map((stage) => stageKey(lesson, stage));
    expect(new Set(keys).size).toBe(keys.length);
    expect(keys.filter((key) => key.startsWith('base-case/'))).toHaveLength(8);
  });

  it('is kept and comes back', () => {
    const storage = memory();
    saveProgress(storage, after('job/nest').getSnapshot());
    const back = loadProgress(storage, lesson);
    expect(back.kind === 'restored' && back.snapshot.context.repairs).toEqual(['job/nest']);
  });
});

describe('the file of a job', () => {
  const told = (change: (job: Spoilt, lesson: Spoilt) => void) => {
    const value = rawJob();
    change(value.steps[0], value);
    const result = readLesson(value, FILE);
    return result.ok ? '' : result.problems.map((p) => `${p.path} | ${p.found} | ${p.allowed}`).join('\n');
  };
  it.each<[string, (job: Spoilt, lesson: Spoilt) => void, string]>([
    ['one fault', (job) => job.faults.splice(1), 'steps[0].faults | '],
    [
      'a fault twice',
      (job) => (job.faults[1].id = 'belly'),
      'steps[0].faults | "belly" twice | each id once',
    ],
    [
      'a rig without faults',
      (job) => delete job.faults,
      'steps[0].rig | "base-case" | a step that mends "faults" of its own',
    ],
    ['no such fault', (job) => (job.faults[0].kind = 'rust'), 'steps[0].faults[0].kind | "rust" | "sag", '],
    [
      'a span that is no sag',
      (job) => (job.faults[1].span_m = 2),
      'steps[0].faults[1].span_m | 2 | a sag only',
    ],
  ])('refuses %s', (_name, change, expected) => {
    expect(told(change)).toContain(expected);
  });
});

describe('fewest', () => {
  /** Each job gives what its name says. */
  const flow = (repaired: readonly string[]) => repaired.reduce((sum, name) => sum + Number(name), 10);
  it.each([
    [25, ['9', '8']],
    [18, ['9']],
    [10, []],
    [40, undefined],
  ])('brings 10 to %d with the best of the smallest sets', (required, expected) => {
    expect(fewest(['2', '9', '1', '8'], flow, required)).toEqual(expected);
  });
});
