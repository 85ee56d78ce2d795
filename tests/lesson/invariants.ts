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
  must((here.kind === 'mend') === ['mending', 'finished'].includes(now), 'mending on its own step only');
  if (['locked', 'reveal', 'observe', 'explain', 'settled'].includes(now)) {
    must(record?.lockedPrediction !== undefined, 'a locked prediction');
  }
  if (here.kind === 'fault' && ['explain', 'settled'].includes(now)) {
    must(record?.observations.at(-1) === here.observe.right, 'a right observation');
  }
  if (here.kind === 'fault' && now === 'settled') {
    must(record?.explanations.at(-1) === here.explain.right, 'a right explanation');
  }
  for (const [i, step] of lesson.steps.entries()) {
    if (step.kind !== 'fault') continue;
    const it = records[step.id];
    must(!it?.revealed || it.lockedPrediction !== undefined, `${step.id}: no reveal before the lock`);
    if (i < furthest)
      must(it?.explanations.at(-1) === step.explain.right, `${step.id}: no step passed unexplained`);
  }
  must(repairs.length === 0 || furthest === lesson.steps.length - 1, 'no repair before the mending');
  must(new Set(repairs).size === repairs.length, 'no fault mended twice');
  must(!finished || repairs.length === lesson.steps.length - 1, 'finished only when all is mended');
  must(
    JSON.stringify(JSON.parse(JSON.stringify(snapshot.context))) === JSON.stringify(snapshot.context),
    'plain JSON',
  );
  return wrong;
}
