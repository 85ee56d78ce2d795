/** A meter in a lesson: what it shows, what it costs while it is held, and what it says of the rate. */
import { describe, expect, test } from 'vitest';
import { stagesOf, type CaseStep, type Lesson } from '#lesson';
import { builtValues, lessonRigs, rigAt, sightOf, stock } from '#lesson-engine';
import { solve, solveWithHood } from '#physics';
import { loadLesson } from '#lesson-load';

const { lesson: taught } = loadLesson('hang-it-straight');
const sag = { kind: 'sag', at: 'out', amount: 1 } as const;

function trial(change: Partial<CaseStep>) {
  const step: CaseStep = {
    id: 'trial',
    kind: 'case',
    role: 'case',
    explain: { options: ['a', 'b', 'c'], right: 'a' },
    from: { faults: [] },
    ...change,
  };
  const lesson: Lesson = { ...taught, steps: [step] };
  const rigs = lessonRigs(lesson);
  const { from, to } = stagesOf(lesson, step);
  const [before, after] = [rigAt(rigs, from), rigAt(rigs, to)];
  return {
    before,
    after,
    values: builtValues(step, before, after, stock),
    sight: sightOf(lesson, step, rigs, stock),
  };
}
const outdoors = (rig: Parameters<typeof solve>[0]) => {
  const answer = solve(rig, stock);
  if (answer.outcome === 'failed') throw new Error(answer.found);
  return answer.flow_L_s.outdoors;
};

describe('a meter held over the grille', () => {
  test('a passive hood takes what the engine says that a hood takes; a powered one takes nothing', () => {
    const { before, after } = trial({ to: { held: 'passive-hood' } });
    const hood = solveWithHood({ rig: before, stock }, 'grille', 0.5);
    if (hood.outcome === 'failed') throw new Error(hood.found);
    expect(outdoors(after)).toBeCloseTo(hood.flow_L_s.outdoors, 9);
    expect(outdoors(after)).toBeLessThan(outdoors(before) - 0.1);
    const powered = trial({ to: { held: 'powered-hood' } });
    expect(outdoors(powered.after)).toBe(outdoors(powered.before));
  });

  test('stays held whatever faults go in beside it', () => {
    const { before, after } = trial({
      from: { held: 'passive-hood', faults: [] },
      to: { faults: [{ kind: 'blocked-grille', at: 'grille', amount: 0.5 }] },
    });
    expect(after.run[0]).toEqual(before.run[0]);
    expect(outdoors(after)).toBeLessThan(outdoors(before));
  });

  test('is not charged twice when it is read', () => {
    const meter = { kind: 'passive-hood', at: 'grille', seed: 1, of: 'to' } as const;
    const held = trial({ to: { held: 'passive-hood' }, meter });
    const plain = trial({ to: { speed: 1 }, meter });
    expect(held.values.reading).toEqual(plain.values.reading);
  });
});

describe('the readings of a step', () => {
  const meter = { kind: 'powered-hood', at: 'grille', seed: 1 } as const;
  test('are two of one meter where it is held on both sides of the change', () => {
    const { values, before, after } = trial({ to: { faults: [sag] }, meter: { ...meter, of: 'both' } });
    for (const [name, rig] of [
      ['reading_before', before],
      ['reading', after],
    ] as const) {
      const [quantity, shown] = values[name]!;
      expect(quantity).toBe('flow');
      expect(Math.abs(shown / outdoors(rig) - 1)).toBeLessThan(0.12);
      expect(values[`${name}_low`]![1]).toBeCloseTo(shown * 0.94, 1);
      expect(values[`${name}_high`]![1]).toBeCloseTo(shown * 1.06, 1);
    }
    expect(values.reading![1]).toBeLessThan(values.reading_before![1]);
  });

  test('are of the side that is asked for', () => {
    const before = trial({ to: { faults: [sag] }, meter: { ...meter, of: 'from' } }).values;
    const after = trial({ to: { faults: [sag] }, meter: { ...meter, of: 'to' } }).values;
    expect(before.reading_before).toBeUndefined();
    expect(before.reading![1]).toBeGreaterThan(after.reading![1]);
  });

  test.each([
    [1, 'pass'],
    [0.63, 'marginal'],
    [0.5, 'fail'],
  ] as const)('at %s of its speed the run of 25 L/s is judged: %s', (speed, verdict) => {
    expect(trial({ from: { faults: [], speed }, meter: { ...meter, of: 'from' } }).sight.verdict).toBe(
      verdict,
    );
  });

  test('judge nothing where there is no meter, or one that reads no flow', () => {
    expect(trial({}).sight.verdict).toBeUndefined();
    const pressure = { kind: 'manometer', at: 'out', seed: 1, of: 'from' } as const;
    expect(trial({ meter: pressure }).sight.verdict).toBeUndefined();
  });
});
