/** What can be seen of a step's change: both runs solved, and both curves read at the same flows. */
import { stagesOf, type Lesson, type Sight, type TaughtStep } from '#lesson';
import { fanCurveOf, judge, solve, systemCurve, type Rig, type Stock } from '#physics';
import { readMeter } from './lesson-numbers.ts';
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
    ...(required_L_s === undefined ? {} : { required_L_s, ...verdictOf(step, rig, stock, required_L_s) }),
  };
}

/** The rate is taken as the lesson states it: its source is the author's to check. */
function verdictOf(
  step: TaughtStep,
  { before, after }: { readonly before: Rig; readonly after: Rig },
  stock: Stock,
  required_L_s: number,
): Pick<Sight, 'verdict'> {
  const reading = step.kind === 'case' && step.meter && readMeter(step.meter, before, after, stock).last;
  if (!reading || reading.flow_L_s === null) return {};
  // The error of a speed is the same share of the flow it stands for.
  const error_L_s = (reading.error / reading.shown!) * reading.flow_L_s;
  const { verdict } = judge(reading.flow_L_s, error_L_s, { required_L_s, mark: 'published' });
  return verdict === 'not judged' ? {} : { verdict };
}
