/** What can be seen of a step's change: both runs solved, and both curves read at the same flows. */
import { stagesOf, type Lesson, type Sight, type TaughtStep } from '#lesson';
import { fanCurveOf, solve, systemCurve, type Rig, type Stock } from '#physics';
import { rigAt } from './lesson-run.ts';

/** Flows the curves are compared at, L/s: to 1.5 times the larger of both flows. */
const POINTS = 25;

/** Throws, naming step and place, where a stage does not solve. */
export function sightOf(
  lesson: Lesson,
  step: TaughtStep,
  rigs: Readonly<Record<string, Rig>>,
  stock: Stock,
): Sight {
  const { from, to } = stagesOf(lesson, step);
  const rig = { before: rigAt(rigs, from), after: rigAt(rigs, to) };
  const solved = (side: 'before' | 'after') => {
    const solution = solve(rig[side], stock);
    if (solution.outcome === 'failed')
      throw new Error(`${lesson.slug}, ${step.id}: ${solution.path}: ${solution.found}`);
    return solution;
  };
  const [before, after] = [solved('before'), solved('after')];
  const most = Math.max(before.flow_L_s.fan, after.flow_L_s.fan, 10) * 1.5;
  const flows = Array.from({ length: POINTS }, (_, i) => (most * i) / (POINTS - 1));
  const required_L_s = rig.after.required?.flow_L_s;
  return {
    before,
    after,
    system: {
      before: systemCurve(rig.before, stock, flows) ?? [],
      after: systemCurve(rig.after, stock, flows) ?? [],
    },
    fan: {
      before: fanCurveOf(rig.before, stock, flows) ?? [],
      after: fanCurveOf(rig.after, stock, flows) ?? [],
    },
    ...(required_L_s === undefined ? {} : { required_L_s }),
  };
}
