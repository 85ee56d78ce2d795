/**
 * Processor time of single frames out of the browser's own trace. A frame runs from the task in which the page
 * set its first mark to the task after it was painted. Time in which other work had the processor is not in it.
 */
import type { Cost } from './profile.ts';

export interface TraceEvent {
  readonly name: string;
  readonly ph: string;
  readonly pid: number;
  readonly tid: number;
  readonly ts: number;
  readonly dur?: number;
  /** Processor time of the thread, microseconds. */
  readonly tdur?: number;
}

export const MARKS = { start: 'bench-start', end: 'bench-end' } as const;
export const CATEGORIES = ['blink.user_timing', 'devtools.timeline', 'disabled-by-default-devtools.timeline'];

/** What the names of the browser's events mean; nested ones are booked to the innermost that is known. */
const STAGES: Readonly<Record<string, string>> = {
  EventDispatch: 'script',
  FunctionCall: 'script',
  RunMicrotasks: 'script',
  FireAnimationFrame: 'script',
  MajorGC: 'collecting garbage',
  MinorGC: 'collecting garbage',
  'V8.GC_MC_INCREMENTAL': 'collecting garbage',
  UpdateLayoutTree: 'style',
  Layout: 'layout',
  PrePaint: 'paint',
  Paint: 'paint',
  Layerize: 'paint',
  Commit: 'paint',
};

export interface Frames {
  readonly cpu_ms: readonly number[];
  /** Mean of a frame by stage, ms. */
  readonly stages: readonly Cost[];
}

/** Own time of every known stage among the events of one thread that lie in a task. */
function stagesOf(events: readonly TraceEvent[]): Map<string, number> {
  const own = new Map<string, number>();
  const open: { stage: string; end: number }[] = [];
  const add = (stage: string, us: number) => own.set(stage, (own.get(stage) ?? 0) + us);
  for (const event of events) {
    while (open.length > 0 && open.at(-1)!.end <= event.ts) open.pop();
    const stage = event.name === 'RunTask' ? 'the rest' : STAGES[event.name];
    if (stage === undefined) continue;
    const outer = open.at(-1);
    if (outer) add(outer.stage, -event.tdur!);
    add(stage, event.tdur!);
    open.push({ stage, end: event.ts + event.dur! });
  }
  return own;
}

export function framesOf(events: readonly TraceEvent[]): Frames {
  const marks = events
    .filter(({ name, ph }) => (name === MARKS.start || name === MARKS.end) && ph !== 'b' && ph !== 'e')
    .sort((a, b) => a.ts - b.ts);
  const thread = marks[0];
  if (!thread) return { cpu_ms: [], stages: [] };
  const own = events
    .filter(
      (event) =>
        event.pid === thread.pid && event.tid === thread.tid && event.ph === 'X' && event.tdur !== undefined,
    )
    .sort((a, b) => a.ts - b.ts || b.dur! - a.dur!);
  const tasks = own.filter(({ name }) => name === 'RunTask');
  const cpu_ms: number[] = [];
  const sums = new Map<string, number>();
  let task = 0;
  marks.forEach((mark, i) => {
    const end = marks[i + 1];
    if (mark.name !== MARKS.start || end?.name !== MARKS.end) return;
    while (task < tasks.length && tasks[task]!.ts + tasks[task]!.dur! < mark.ts) task += 1;
    let us = 0;
    const from = tasks[task]?.ts ?? mark.ts;
    let to = from;
    for (; task < tasks.length && tasks[task]!.ts + tasks[task]!.dur! < end.ts; task += 1) {
      us += tasks[task]!.tdur!;
      to = tasks[task]!.ts + tasks[task]!.dur!;
    }
    cpu_ms.push(us / 1000);
    for (const [stage, value] of stagesOf(own.filter(({ ts }) => ts >= from && ts < to)))
      sums.set(stage, (sums.get(stage) ?? 0) + value);
  });
  const stages = [...sums]
    .map(([name, us]) => ({ name, ms: us / 1000 / cpu_ms.length }))
    .sort((a, b) => b.ms - a.ms);
  return { cpu_ms, stages };
}
