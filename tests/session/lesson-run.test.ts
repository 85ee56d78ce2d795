/** A lesson's rig at its stages: kept answers are the engine's own, and the little stock sent along is enough. */
import { describe, expect, test } from 'vitest';
import { seedRig, seedRigIds, stock } from '#catalogue';
import { faultSteps, pile, type Lesson } from '#lesson';
import { loadLesson } from '#lesson-load';
import { FAULTS, solve } from '#physics';
import { LessonRuns, lessonRigs, stockFor } from '#session';

const { lesson } = loadLesson('five-small-faults');
const steps = faultSteps(lesson);
const rig = seedRig('upstairs-bathroom');
const rigs = lessonRigs(lesson);
const runs = new LessonRuns(lesson, rigs, stockFor(lesson, rigs));
const on = (id: string): Lesson => ({ ...lesson, rig: id, steps: [{ id: 'mend', kind: 'mend' }] });

describe('the runs of a lesson', () => {
  test.each([0, 1, 2, 3, 4, 5])('with %i faults: kept, passing and the engine agree', (count) => {
    const engine = solve({ ...rig, faults: pile(lesson, count).faults }, stock);
    if (engine.outcome === 'failed') throw new Error(engine.found);
    expect(runs.at(pile(lesson, count)).flow_L_s).toEqual(engine.flow_L_s);
    expect(runs.passing(pile(lesson, count)).flow_L_s).toEqual(engine.flow_L_s);
    expect(runs.at(structuredClone(pile(lesson, count)))).toBe(runs.at(pile(lesson, count)));
    expect(runs.curveAt(pile(lesson, count))).toEqual(runs.curve(pile(lesson, count)));
  });

  test('every operating point stands on both curves and inside the axes', () => {
    for (let count = 0; count <= steps.length; count += 1) {
      const { fan, flow_L_s } = runs.at(pile(lesson, count));
      expect(flow_L_s.fan).toBeLessThan(runs.extent(pile(lesson)).flow_L_s);
      expect(fan.pressure_Pa).toBeLessThan(runs.extent(pile(lesson)).pressure_Pa);
      for (const points of [runs.fan(pile(lesson, count)), runs.curve(pile(lesson, count))]) {
        const next = points.findIndex((point) => point.flow_L_s >= flow_L_s.fan);
        const [left, right] = [points[next - 1]!, points[next]!];
        const share = (flow_L_s.fan - left.flow_L_s) / (right.flow_L_s - left.flow_L_s);
        const between = left.pressure_Pa + share * (right.pressure_Pa - left.pressure_Pa);
        expect(Math.abs(between - fan.pressure_Pa)).toBeLessThan(1);
      }
    }
  });

  test('says where, for a fault on a piece the rig does not have', () => {
    expect(() => runs.passing({ rig: lesson.rig, faults: [{ ...steps[0]!.fault, at: 'attic' }] })).toThrow(
      /faults/,
    );
  });

  test('takes no notice of faults the rig came with', () => {
    const worn = { ...rigs, [lesson.rig]: { ...rig, faults: pile(lesson).faults } };
    const bare = pile(lesson, 0);
    expect(new LessonRuns(lesson, worn, stock).at(bare).flow_L_s).toEqual(runs.at(bare).flow_L_s);
  });
});

describe('the stock of a lesson', () => {
  test.each(seedRigIds)('%s: holds its own fan alone, and every material', (id) => {
    const small = stockFor(on(id), lessonRigs(on(id)));
    const named = seedRig(id).run.flatMap((piece) =>
      piece.kind === 'fan' && typeof piece.fan === 'string' ? [piece.fan] : [],
    );
    expect(Object.keys(small.fans)).toEqual(named);
    expect(small.materials).toEqual(stock.materials);
  });

  test('an unknown rig is refused by name', () => {
    expect(lessonRigs(on('upstairs-bathroom'))['upstairs-bathroom']?.name).toBe(rig.name);
    expect(() => lessonRigs(on('downstairs'))).toThrow(/"downstairs".*upstairs-bathroom/);
    expect(Object.keys(FAULTS)).toEqual(expect.arrayContaining(steps.map((step) => step.fault.kind)));
  });
});
