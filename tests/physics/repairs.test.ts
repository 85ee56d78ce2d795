/** The put-right list against every order tried, and its objective against a hand-worked case. */
import { describe, expect, test } from 'vitest';
import {
  bestOrder,
  FAULTS,
  LABOUR,
  putRight,
  randomFrom,
  solveSubsets,
  type PutRight,
  type Rig,
} from '#physics';
import { five, orders, six, ten } from './orders.ts';
import { flowOf, stock } from './rigs.ts';

function listed(rig: Rig, minutes?: Record<string, number>): PutRight {
  const found = putRight(rig, stock, minutes ? { minutes } : {});
  if (found.outcome !== 'solved') throw new Error(JSON.stringify(found));
  return found;
}

/** Area under flow against minutes for one order; `flow[present]`. */
function area(order: readonly number[], minutes: readonly number[], flows: ArrayLike<number>): number {
  let present = 2 ** order.length - 1;
  return order.reduce((sum, job) => {
    const worked = flows[present]! * minutes[job]!;
    present &= ~(1 << job);
    return sum + worked;
  }, 0);
}

describe('best order', () => {
  test('by hand: two jobs, 10 L/s in 10 min against 15 in 20: the quick one first', () => {
    // Flow 50 with both in, 60 and 65 with one mended, 75 clean: 50 x 10 + 60 x 20 = 1700 against 1650.
    const flows = [75, 65, 60, 50];
    expect(bestOrder([10, 20], flows)).toEqual({ order: [0, 1], area: 1700 });
    expect(bestOrder([10, 5], flows)).toEqual({ order: [1, 0], area: 50 * 5 + 65 * 10 });
  });

  test.each([5, 6])('%d jobs with random flows and minutes: no order of all does better', (jobs) => {
    const random = randomFrom(jobs);
    for (let round = 0; round < 20; round++) {
      const flows = Array.from({ length: 2 ** jobs }, () => 100 * random.even());
      const minutes = Array.from({ length: jobs }, () => 5 + 40 * random.even());
      const found = bestOrder(minutes, flows);
      const best = Math.max(...orders(jobs).map((order) => area(order, minutes, flows)));
      expect(found.area).toBeCloseTo(best, 8);
      expect(area(found.order, minutes, flows)).toBeCloseTo(best, 8);
    }
  });

  test('equal jobs keep the order of the list; no jobs, no order', () => {
    expect(bestOrder([7, 7, 7], [3, 2, 2, 1, 2, 1, 1, 0]).order).toEqual([0, 1, 2]);
    expect(bestOrder([], [9])).toEqual({ order: [], area: 0 });
  });
});

describe('put-right list', () => {
  test.each([
    ['five', five],
    ['six', six],
  ])('%s faults: against every order, each step solved anew', (_name, rig) => {
    const found = listed(rig);
    const faults = rig.faults!;
    const subsets = solveSubsets(rig, stock);
    if (subsets.outcome !== 'solved') throw new Error(subsets.code);
    const minutes = faults.map(({ kind }) => LABOUR[kind]!.minutes);
    const tried = orders(faults.length).map((order) => area(order, minutes, subsets.flows_L_s));
    expect(found.moved_L / 60).toBeCloseTo(Math.max(...tried), 8);
    expect(Math.max(...tried)).toBeGreaterThan(Math.min(...tried) + 1);
    let left = faults;
    let flow = found.before_L_s;
    // A subset starts from a guess and a solve does not: they may end some roundings apart.
    expect(flow).toBeCloseTo(flowOf(rig), 10);
    for (const step of found.repairs) {
      left = left.filter((fault) => fault !== step.fault);
      expect(step.flow_L_s).toBeCloseTo(flowOf({ ...rig, faults: left }), 10);
      expect(step.gain_L_s).toBeCloseTo(step.flow_L_s - flow, 12);
      expect(step.gainRate_L_s_min).toBeCloseTo(step.gain_L_s / step.minutes, 12);
      flow = step.flow_L_s;
    }
    expect(left).toEqual([]);
    expect(found.after_L_s).toBeCloseTo(flowOf({ ...rig, faults: [] }), 10);
    expect(found.minutes).toBe(minutes.reduce((sum, each) => sum + each, 0));
  });

  test('own minutes change the order', () => {
    const quickest = (kind: string) =>
      listed(five, {
        sag: 500,
        crimp: 500,
        'flexible-swap': 500,
        'tight-ties': 500,
        'extra-length': 500,
        [kind]: 1,
      });
    expect(quickest('crimp').repairs[0]!.fault.kind).toBe('crimp');
    expect(quickest('tight-ties').repairs[0]!.fault.kind).toBe('tight-ties');
    expect(quickest('crimp').repairs[0]!.minutes).toBe(1);
  });

  test('ten faults: all of them, once each', () => {
    const found = listed(ten);
    expect(new Set(found.repairs.map(({ fault }) => fault)).size).toBe(10);
  });

  test('minutes that are none are refused', () => {
    for (const slip of [0, -5, NaN, Infinity])
      expect(putRight(five, stock, { minutes: { sag: slip } })).toMatchObject({
        outcome: 'refused',
        code: 'minutes-not-positive',
        found: slip,
      });
  });

  test('every kind of fault has minutes of its own, marked invented', () => {
    for (const kind of Object.keys(FAULTS)) {
      expect(LABOUR[kind]?.minutes, kind).toBeGreaterThan(0);
      expect(LABOUR[kind]?.mark, kind).toBe('invented');
    }
  });
});
