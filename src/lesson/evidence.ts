/** What a learner has shown: right at the first try by aim, mistaken ideas tried and changed, first and last answers. */
import type { Journey } from './journey.ts';
import { judgePrediction } from './predictions.ts';
import { answersTo, recordOf } from './rules.ts';
import { guessesFlow, isTaught, type Lesson, type TaughtStep } from './schema.ts';

export interface AimEvidence {
  readonly aim: string;
  /** Questions answered so far, and how many of them rightly at the first try. */
  readonly asked: number;
  readonly right: number;
}

export interface IdeaHeld {
  readonly step: string;
  readonly aim?: string;
  /** Section of the text that names the idea, such as `sag/explain/climb`. */
  readonly section: string;
  /** Answered rightly at once when asked again on a varied item. */
  readonly changed: boolean;
}

/** What was said to one question. */
export interface Given {
  /** Section of the text that asks, such as `sag/explain`. */
  readonly section: string;
  readonly aim?: string;
  /** Id of a card, or a flow in L/s. */
  readonly first: string | number;
  readonly last: string | number;
  readonly right: boolean;
}

export interface Evidence {
  readonly aims: readonly AimEvidence[];
  readonly ideas: readonly IdeaHeld[];
  readonly answers: readonly Given[];
}

const PARTS = ['observe', 'explain', 'again'] as const;

/** Flows before and after a step's change, L/s at the outlet, for the judging of a predicted flow. */
export type Flows = (step: TaughtStep) => { readonly before_L_s: number; readonly after_L_s: number };

/** By aim, how many questions were answered and how many rightly at once; and every mistaken idea tried. */
export function evidence(lesson: Lesson, journey: Journey, flows: Flows): Evidence {
  const counts = new Map(lesson.aims.map((aim) => [aim, { asked: 0, right: 0 }]));
  const ideas: IdeaHeld[] = [];
  const answers: Given[] = [];
  const of = (aim: string | undefined) => (aim === undefined ? {} : { aim });
  /** `right`: at the first try. */
  const count = (
    section: string,
    aim: string | undefined,
    right: boolean,
    given: readonly (string | number)[],
  ) => {
    answers.push({ section, ...of(aim), first: given[0]!, last: given.at(-1)!, right });
    const kept = aim === undefined ? undefined : counts.get(aim);
    if (!kept) return;
    kept.asked += 1;
    if (right) kept.right += 1;
  };
  for (const step of lesson.steps) {
    const record = recordOf(journey, step.id);
    if (step.kind === 'entry') {
      for (const { id, aim, right } of step.questions) {
        const answer = record.entry?.[id];
        if (answer !== undefined) count(`${step.id}/${id}`, aim, answer === right, [answer]);
      }
    }
    if (!isTaught(step)) continue;
    const said = record.lockedPrediction;
    if (said && record.revealed && step.predict) {
      if (guessesFlow(step.predict)) {
        const { before_L_s, after_L_s } = flows(step);
        const flow = said.flow_L_s ?? 0;
        const right = judgePrediction(flow, before_L_s, after_L_s) === 'about-right';
        count(`${step.id}/predict`, step.aim, right, [flow]);
      } else {
        const right = said.option === step.predict.right;
        count(`${step.id}/predict`, step.aim, right, [said.option ?? '']);
      }
    }
    const second = record.again ?? [];
    for (const part of PARTS) {
      const question = step[part];
      const given = answersTo(record, part);
      if (!question || given.length === 0) continue;
      count(`${step.id}/${part}`, step.aim, given[0] === question.right, given);
      for (const wrong of new Set(given.filter((answer) => answer !== question.right)))
        ideas.push({
          step: step.id,
          ...of(step.aim),
          section: `${step.id}/${part}/${wrong}`,
          changed: part === 'explain' && second[0] !== undefined && second[0] === step.again?.right,
        });
    }
  }
  return {
    aims: [...counts].map(([aim, { asked, right }]) => ({ aim, asked, right })),
    ideas,
    answers,
  };
}
