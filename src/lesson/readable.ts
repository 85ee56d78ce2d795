/** Of a journey through another version of a lesson, what this version can still read. */
import { START, type Journey, type StepRecord } from './journey.ts';
import { isTaught, type Lesson, type Question, type Step } from './schema.ts';

/** Answers to a question, where all of them are still on offer: half of them would be another story. */
function offered(answers: readonly string[] | undefined, question: Question | undefined): readonly string[] {
  const all = answers ?? [];
  return all.every((answer) => question?.options.includes(answer)) ? all : [];
}

function recordOf(step: Step, record: StepRecord): StepRecord | undefined {
  const bare: StepRecord = { begun: record.begun, revealed: false, observations: [], explanations: [] };
  if (step.kind === 'entry') {
    const entry = Object.entries(record.entry ?? {}).filter(([id, option]) =>
      step.questions.some((item) => item.id === id && item.options.includes(option)),
    );
    return { ...bare, entry: Object.fromEntries(entry) };
  }
  if (!isTaught(step)) return undefined;
  return {
    ...bare,
    observations: offered(record.observations, step.observe),
    explanations: offered(record.explanations, step.explain),
    again: offered(record.again, step.again),
  };
}

/**
 * Answers by the steps that are still there. Predictions are left out: whether they were right hangs on the
 * run as it then was.
 */
export function readable(lesson: Lesson, { records }: Journey): Journey {
  const kept = lesson.steps.flatMap((step): [string, StepRecord][] => {
    const record = records[step.id] && recordOf(step, records[step.id]!);
    return record ? [[step.id, record]] : [];
  });
  return { ...START, records: Object.fromEntries(kept) };
}
