/** A lesson's rig at its stages: kept answers are the engine's own, and the little stock sent along is enough. */
import { describe, expect, test } from 'vitest';
import { seedRig, seedRigIds, stock } from '#catalogue';
import { faultSteps } from '#lesson';
import { loadLesson } from '#lesson-load';
import { FAULTS, solve } from '#physics';
import { lessonRig, RunSolver, stockFor } from '#session';

const steps = faultSteps(loadLesson('five-small-faults').lesson);
const rig = seedRig('upstairs-bathroom');
const run = new RunSolver(rig, stockFor(rig));
const faultsOf = (count: number) => steps.slice(0, count).map((step) => step.fault);

describe('RunSolver', () => {
  test.each([0, 1, 2, 3, 4, 5])('with %i faults: kept, passing and the engine agree', (count) => {
    const engine = solve({ ...rig, faults: faultsOf(count) }, stock);
    if (engine.outcome === 'failed') throw new Error(engine.found);
    expect(run.at(faultsOf(count)).flow_L_s).toEqual(engine.flow_L_s);
    expect(run.passing(faultsOf(count)).flow_L_s).toEqual(engine.flow_L_s);
    expect(run.at(structuredClone(faultsOf(count)))).toBe(run.at(faultsOf(count)));
    expect(run.curveAt(faultsOf(count))).toEqual(run.curve(faultsOf(count)));
  });

  test('every operating point stands on both curves and inside the axes', () => {
    for (let count = 0; count <= steps.length; count += 1) {
      const { fan, flow_L_s } = run.at(faultsOf(count));
      expect(flow_L_s.fan).toBeLessThan(run.extent.flow_L_s);
      expect(fan.pressure_Pa).toBeLessThan(run.extent.pressure_Pa);
      for (const points of [run.fan, run.curve(faultsOf(count))]) {
        const next = points.findIndex((point) => point.flow_L_s >= flow_L_s.fan);
        const [left, right] = [points[next - 1]!, points[next]!];
        const share = (flow_L_s.fan - left.flow_L_s) / (right.flow_L_s - left.flow_L_s);
        const between = left.pressure_Pa + share * (right.pressure_Pa - left.pressure_Pa);
        expect(Math.abs(between - fan.pressure_Pa)).toBeLessThan(1);
      }
    }
  });

  test('says where, for a fault on a piece the rig does not have', () => {
    expect(() => run.passing([{ ...steps[0]!.fault, at: 'attic' }])).toThrow(/faults/);
  });

  test('takes no notice of faults the rig came with', () => {
    const worn = new RunSolver({ ...rig, faults: faultsOf(5) }, stockFor(rig));
    expect(worn.at([]).flow_L_s).toEqual(run.at([]).flow_L_s);
  });
});

describe('the stock of a lesson', () => {
  test.each(seedRigIds)('%s: holds its own fan alone, and every material', (id) => {
    const small = stockFor(seedRig(id));
    const named = seedRig(id).run.flatMap((piece) =>
      piece.kind === 'fan' && typeof piece.fan === 'string' ? [piece.fan] : [],
    );
    expect(Object.keys(small.fans)).toEqual(named);
    expect(small.materials).toEqual(stock.materials);
  });

  test('an unknown rig is refused by name', () => {
    expect(lessonRig('upstairs-bathroom').name).toBe(rig.name);
    expect(() => lessonRig('downstairs')).toThrow(/"downstairs".*upstairs-bathroom/);
    expect(Object.keys(FAULTS)).toEqual(expect.arrayContaining(steps.map((step) => step.fault.kind)));
  });
});
