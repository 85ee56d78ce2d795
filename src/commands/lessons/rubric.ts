/**
 * The rows of the scoring rubric for interactive lessons that a machine can see, 0 to 3 each, with the place
 * for the score. A machine sees that a thing is there, not that it is good: the rest is read by people.
 */
import {
  changes,
  isTaught,
  stagesOf,
  type Lesson,
  type LessonText,
  type Step,
  type TaughtStep,
} from '#lesson';

export interface Score {
  readonly row: number;
  readonly name: string;
  readonly score: 0 | 1 | 2 | 3;
  readonly where: string;
}

const names = (steps: readonly { readonly id: string }[]) =>
  steps.map(({ id }) => id).join(', ') || 'nowhere';

/** 3 where all have it, 2 for most, 1 for some. */
function share(all: readonly TaughtStep[], has: (step: TaughtStep) => boolean): Score['score'] {
  const there = all.filter(has).length;
  if (all.length === 0 || there === 0) return 0;
  return there === all.length ? 3 : there * 2 > all.length ? 2 : 1;
}

/** Faults that differ between the two stages of a step; the fan, which comes with its own speed; and a held meter. */
function differences(lesson: Lesson, step: TaughtStep): number {
  const { from, to } = stagesOf(lesson, step);
  const keys = (faults: typeof from.faults) => new Set(faults.map((fault) => JSON.stringify(fault)));
  const [before, after] = [keys(from.faults), keys(to.faults)];
  const gone = [...before].filter((key) => !after.has(key)).length;
  const come = [...after].filter((key) => !before.has(key)).length;
  // The same fault made worse counts once, not as one gone and one come.
  return (
    Math.max(gone, come) +
    Number(from.fan !== to.fan || from.speed !== to.speed) +
    Number(from.held !== to.held)
  );
}

export function rubric(lesson: Lesson, { sections }: LessonText): Score[] {
  const taught = lesson.steps.filter(isTaught);
  const moving = taught.filter(changes);
  const role = (name: string) => lesson.steps.filter((step) => step.kind === 'case' && step.role === name);
  const entry = lesson.steps.find(({ kind }) => kind === 'entry');
  const transfer = role('transfer').filter((step) => step.kind === 'case' && step.rig !== undefined);
  const moved = transfer.filter((step) => step.kind === 'case' && step.to !== undefined);
  const compare = role('compare');
  const worked = role('worked');
  const mends = lesson.steps.some(({ kind }) => kind === 'mend');
  const alone = mends || moved.length > 0;
  const aimed = new Set(taught.flatMap(({ aim }) => (aim === undefined ? [] : [aim])));
  const unmarked = sections['not-marked'] !== undefined;
  const wrong = Object.entries(sections).filter(([, { idea }]) => idea !== undefined);
  // Two cases side by side are two runs, not one that changes.
  const many = moving.filter(
    (step) => !(compare as readonly Step[]).includes(step) && differences(lesson, step) > 1,
  );
  return [
    {
      row: 1,
      name: 'prediction before reveal',
      score: share(moving, ({ predict }) => predict !== undefined),
      where: names(moving),
    },
    {
      row: 2,
      name: 'commitment',
      score: share(moving, ({ predict }) => predict !== undefined),
      where: 'locked, with how sure; told again at the end',
    },
    {
      row: 5,
      name: 'observation check',
      score: share(moving, ({ observe }) => observe !== undefined),
      where: names(moving.filter(({ observe }) => observe)),
    },
    {
      row: 6,
      name: 'explanation built, chain tied to the picture',
      score: Math.min(3, 1 + share(moving, ({ chain }) => chain !== undefined)) as Score['score'],
      where: names(taught.filter(({ chain }) => chain)),
    },
    {
      row: 7,
      name: 'own reason for each wrong answer',
      score: wrong.length >= taught.length * 2 ? 3 : 0,
      where: `${wrong.length} named ideas`,
    },
    {
      row: 8,
      name: 'second attempt on a varied item',
      score: share(moving, ({ again }) => again !== undefined),
      where: names(taught.filter(({ again }) => again)),
    },
    { row: 9, name: 'safe to be wrong', score: unmarked ? 3 : 0, where: 'not-marked; ideas at the end' },
    {
      row: 10,
      name: 'one change at a time',
      // The highest mark is for a learner who can take any one away again, which is what the mending is.
      score: many.length > 0 ? 1 : mends ? 3 : 2,
      where: many.length ? `more than one: ${names(many)}` : names(moving),
    },
    {
      row: 19,
      name: 'short steps, five or fewer terms first',
      score: lesson.terms.length <= 5 ? 3 : 1,
      where: lesson.terms.join(', '),
    },
    {
      row: 21,
      name: 'aims and an entry check that steers',
      score: lesson.aims.length >= 2 ? (entry ? 3 : 2) : 1,
      where: entry ? entry.id : 'no entry check',
    },
    {
      row: 22,
      name: 'worked, faded, alone',
      score: (Number(worked.length > 0) + Number(moving.length > 0) + Number(alone)) as Score['score'],
      where: names([...worked, ...moved]),
    },
    {
      row: 23,
      name: 'recall asks for causes and sizes',
      score: (lesson.returns?.length ?? 0) >= 3 ? 3 : 1,
      where: names(lesson.returns ?? []),
    },
    {
      row: 24,
      name: 'returns at set gaps, missed ideas first',
      score: (lesson.returns?.length ?? 0) >= 3 ? 3 : 0,
      where: `${lesson.returns?.length ?? 0} questions`,
    },
    {
      row: 25,
      name: 'transfer to a new surface, and what is the same',
      score: moved.length ? 3 : transfer.length ? 2 : 0,
      where: names(transfer),
    },
    {
      row: 26,
      name: 'two cases compared, principle after',
      score: compare.length ? 3 : 0,
      where: names(compare),
    },
    {
      row: 27,
      name: 'evidence by aim, first and final answers, ideas',
      score: aimed.size === lesson.aims.length ? 3 : aimed.size ? 2 : 1,
      where: [...aimed].join(', ') || 'no step names its aim',
    },
  ];
}

/** Rows that must each reach 2, of those a machine can see. */
export const GATES = [1, 7, 25] as const;
