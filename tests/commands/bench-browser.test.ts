/** The arithmetic of the speed check. What it measures depends on the machine and is no test. */
import { describe, expect, test } from 'vitest';
import { percentile, shareUnder, withinBudget } from '../../src/commands/bench-browser/numbers.ts';
import { attribute, partOf, type CpuProfile } from '../../src/commands/bench-browser/profile.ts';
import { table, verdict, writes, type Measured } from '../../src/commands/bench-browser/report.ts';
import { framesOf, type TraceEvent } from '../../src/commands/bench-browser/trace.ts';

describe('percentiles', () => {
  test('are values that were measured, by nearest rank', () => {
    const values = Array.from({ length: 100 }, (_, i) => 100 - i);
    expect([0.5, 0.95, 0.99, 1].map((share) => percentile(values, share))).toEqual([50, 95, 99, 100]);
    expect(percentile([7], 0.5)).toBe(7);
    expect(percentile([], 0.5)).toBeNaN();
  });

  test('the budget asks for 95 frames of a hundred', () => {
    const frames = (slow: number) => Array.from({ length: 100 }, (_, i) => (i < slow ? 17 : 5));
    expect(shareUnder(frames(5), 16.7)).toBe(0.95);
    expect(withinBudget(frames(5))).toBe(true);
    expect(withinBudget(frames(6))).toBe(false);
    expect(withinBudget([])).toBe(false);
  });
});

const event = (name: string, ts: number, dur: number, tdur = dur): TraceEvent => ({
  name,
  ph: 'X',
  pid: 1,
  tid: 1,
  ts,
  dur,
  tdur,
});
const mark = (name: string, ts: number): TraceEvent => ({ name, ph: 'I', pid: 1, tid: 1, ts });

test('a frame is the processor time of its tasks, each moment booked to the innermost stage', () => {
  const { cpu_ms, stages } = framesOf([
    event('RunTask', 0, 900),
    event('RunTask', 1000, 10_000, 8000),
    event('FunctionCall', 1500, 5000, 4000),
    event('Layout', 2000, 1000),
    event('Paint', 8000, 1000),
    mark('bench-start', 1600),
    event('RunTask', 12_000, 500),
    mark('bench-end', 12_100),
    { ...event('RunTask', 1000, 90_000), tid: 2 },
  ]);
  expect(cpu_ms).toEqual([8]);
  expect(Object.fromEntries(stages.map(({ name, ms }) => [name, ms]))).toEqual({
    script: 3,
    layout: 1,
    paint: 1,
    'the rest': 3,
  });
  expect(framesOf([])).toEqual({ cpu_ms: [], stages: [] });
});

test('samples are booked to the nearest place in the source, and brought to the script’s own time', () => {
  const node = (id: number, functionName: string, url: string, children: number[] = []) => ({
    id,
    callFrame: { functionName, url, lineNumber: 0, columnNumber: 0 },
    children,
  });
  const profile: CpuProfile = {
    nodes: [
      node(1, '(root)', '', [2, 4, 5]),
      node(2, 'a', 'solve', [3]),
      node(3, 'map', ''),
      node(4, '(idle)', ''),
      node(5, '(garbage collector)', ''),
    ],
    samples: [2, 3, 4, 5],
    timeDeltas: [100, 200, 5000, 100],
  };
  const { parts, functions } = attribute(
    profile,
    (url) => (url === 'solve' ? 'src/physics/solve.ts:9' : undefined),
    8,
  );
  expect(parts).toEqual([
    { name: 'engine', ms: 6 },
    { name: 'collecting garbage', ms: 2 },
  ]);
  expect(functions[0]).toEqual({ name: 'map in src/physics/solve.ts:9', ms: 4 });
});

test('every part of the house has its line', () => {
  expect(partOf('node_modules/svelte/src/internal/client/runtime.js:1')).toBe('Svelte');
  expect(partOf('src/scene/layout/walls.ts:1')).toBe('scene, laying out');
  expect(partOf('src/scene/parts/Run.svelte:1')).toBe('scene, marks');
  expect(partOf('src/charts/walk.ts:1')).toBe('charts, laying out');
  expect(partOf('src/charts/Ledger.svelte:1')).toBe('charts, marks');
});

test('the report says plainly whether the budget is met', () => {
  const measured = (throttle: number, ms: number): Measured => ({
    throttle,
    cpu_ms: [ms, ms],
    frames_ms: [ms * 2],
    gaps_ms: [16.7],
    long_ms: [],
    stages: [{ name: 'script', ms }],
    bare: { cpu_ms: [ms / 2], stages: [] },
  });
  expect(verdict([measured(1, 3), measured(4, 12)])).toContain('budget met');
  expect(verdict([measured(1, 12), measured(4, 48)])).toContain('NOT MET');
  expect(verdict([measured(1, 3)])).toContain('NOT MET');
  const shown = table([measured(1, 3), measured(4, 12)]);
  expect(shown).toMatch(/frame to bare canvas.*2\.00x.*2\.00x/);
  expect(writes([{ name: 'scene, path d', times: 70.25 }])).toContain('70.3  scene, path d');
});
