/** What must hold in every state of a lesson, said apart from the code that keeps it. */
import { phase, type Lesson, type LessonSnapshot } from '#lesson';

/** Everything that is wrong with a state; an empty list when all holds. */
export function broken(lesson: Lesson, snapshot: LessonSnapshot): string[] {
  const { stepIndex, furthest, records, repairs, finished } = snapshot.context;
  const now = phase(snapshot);
  const here = lesson.steps[stepIndex]!;
  const record = records[here.id];
  const wrong: string[] = [];
  const must = (holds: boolean, rule: string) => {
    if (!holds) wrong.push(`${now} of ${here.id}: ${rule}`);
  };
  must(now !== ('arriving' as string), 'arriving is passed through');
  must(stepIndex >= 0 && stepIndex <= furthest && furthest < lesson.steps.length, 'steps in range');
  const last = lesson.steps.length - 1;
  const mend = lesson.steps.findIndex(({ kind }) => kind === 'mend');
  must(now !== 'mending' || here.kind === 'mend', 'mending on its own step only');
  must(now !== 'finished' || (finished && stepIndex === last), 'finished on the last step only');
  const moving = here.kind === 'fault' || (here.kind === 'case' && here.to !== undefined);
  if (moving && ['locked', 'reveal', 'observe', 'explain', 'again', 'settled'].includes(now)) {
    must(record?.lockedPrediction !== undefined, 'a locked prediction');
  }
  if (here.kind === 'fault' || here.kind === 'case') {
    if (here.observe && ['explain', 'again', 'settled'].includes(now))
      must(record?.observations.at(-1) === here.observe.right, 'a right observation');
    if (['again', 'settled'].includes(now))
      must(record?.explanations.at(-1) === here.explain.right, 'a right explanation');
    if (now === 'settled' && here.again && (record?.explanations.length ?? 0) > 1)
      must(record?.again?.at(-1) === here.again.right, 'a right answer to the second question');
  }
  const entry = lesson.steps[0];
  const leaps =
    entry?.kind === 'entry' &&
    entry.questions.every(({ id, right }) => records[entry.id]?.entry?.[id] === right);
  const ahead = leaps ? lesson.steps.findIndex(({ id }) => id === entry.skipTo) : 0;
  for (const [i, step] of lesson.steps.entries()) {
    if (step.kind !== 'fault' && step.kind !== 'case') continue;
    const it = records[step.id];
    must(!it?.revealed || it.lockedPrediction !== undefined, `${step.id}: no reveal before the lock`);
    if (i < furthest && i >= ahead)
      must(it?.explanations.at(-1) === step.explain.right, `${step.id}: no step passed unexplained`);
  }
  must(repairs.length === 0 || furthest >= mend, 'no repair before the mending');
  must(new Set(repairs).size === repairs.length, 'no fault mended twice');
  const faults = lesson.steps.filter(({ kind }) => kind === 'fault').length;
  must(!finished || mend < 0 || repairs.length === faults, 'finished only when all is mended');
  must(
    JSON.stringify(JSON.parse(JSON.stringify(snapshot.context))) === JSON.stringify(snapshot.context),
    'plain JSON',
  );
  return wrong;
}
