/** The speed check in words and columns. */
import { loadavg } from 'node:os';
import { BUDGET, percentile, shareUnder, withinBudget } from './numbers.ts';
import type { Dragged, Written } from './drag.ts';
import type { Account, Cost } from './profile.ts';
import type { Frames } from './trace.ts';

export interface Measured extends Dragged {
  readonly throttle: number;
  readonly bare: Frames;
}

const two = (value: number) => (value >= 100 ? value.toFixed(0) : value.toFixed(value >= 10 ? 1 : 2));
const percents = (values: readonly number[]) =>
  [0.5, 0.95, 0.99].map((share) => two(percentile(values, share))).join(' / ');
const under = (values: readonly number[]) => `${(100 * shareUnder(values, BUDGET.most_ms)).toFixed(1)} %`;
const ratio = ({ cpu_ms, bare }: Measured) =>
  [0.5, 0.95]
    .map((share) => `${two(percentile(cpu_ms, share) / percentile(bare.cpu_ms, share))}x`)
    .join(' / ');

const rows: readonly (readonly [string, (each: Measured) => string])[] = [
  ['frames drawn', ({ cpu_ms }) => String(cpu_ms.length)],
  ['frame, processor time, ms: 50 / 95 / 99 %', ({ cpu_ms }) => percents(cpu_ms)],
  [`  under ${BUDGET.most_ms} ms`, ({ cpu_ms }) => under(cpu_ms)],
  ['frame, move to painted by the clock, ms', ({ frames_ms }) => percents(frames_ms)],
  [`  under ${BUDGET.most_ms} ms`, ({ frames_ms }) => under(frames_ms)],
  ['between frames, ms', ({ gaps_ms }) => percents(gaps_ms)],
  [
    'long tasks (over 50 ms by the clock)',
    ({ long_ms }) => `${long_ms.length}${long_ms.length ? `, longest ${two(Math.max(...long_ms))} ms` : ''}`,
  ],
  ['bare canvas, same geometry, ms: 50 / 95 / 99 %', ({ bare }) => percents(bare.cpu_ms)],
  ['frame to bare canvas, at 50 / at 95 %', ratio],
];

const LABEL = 50;
const COLUMN = 26;

export function table(measured: readonly Measured[]): string {
  const stages = [...new Set(measured.flatMap((each) => each.stages.map(({ name }) => name)))];
  const line = (label: string, cell: (each: Measured) => string) =>
    label.padEnd(LABEL) + measured.map((each) => cell(each).padStart(COLUMN)).join('');
  return [
    '',
    line('Throttle', ({ throttle }) => `${throttle}x`),
    ...rows.map(([label, value]) => line(label, value)),
    'mean of a frame by stage, processor time, ms',
    ...stages.map((stage) =>
      line(`  ${stage}`, (each) => two(each.stages.find(({ name }) => name === stage)?.ms ?? 0)),
    ),
  ].join('\n');
}

const costs = (list: readonly Cost[]) =>
  list
    .filter(({ ms }) => ms >= 0.005)
    .map(({ name, ms }) => `  ${ms.toFixed(2).padStart(6)}  ${name}`)
    .join('\n');

export function writes(list: readonly Written[], most = 12): string {
  const all = list.reduce((sum, { times }) => sum + times, 0);
  return [
    `\nChanges to the page in an update: ${all.toFixed(0)}`,
    ...list.slice(0, most).map(({ name, times }) => `  ${times.toFixed(1).padStart(6)}  ${name}`),
  ].join('\n');
}

export const account = ({ parts, functions }: Account): string =>
  [
    '\nScript of a frame by part of the house, unthrottled, ms of processor time, shares by sampling',
    costs(parts),
    '\nDearest places, own time',
    costs(functions),
  ].join('\n');

export function verdict(measured: readonly Measured[]): string {
  const judged = measured.find(({ throttle }) => throttle === BUDGET.throttle);
  const met = judged !== undefined && withinBudget(judged.cpu_ms);
  return [
    `\nBudget: ${BUDGET.share * 100} % of frames under ${BUDGET.most_ms} ms of processor time at ` +
      `${BUDGET.throttle}x: ${met ? 'budget met' : 'NOT MET'}`,
    `Machine load at the end ${loadavg()[0]!.toFixed(1)}: above the number of processors, other work slows ` +
      'what goes by the clock, and some of the rest.',
  ].join('\n');
}
