/**
 * A lesson as it stands in `lesson.json`: structure only, every word is in `text.<language>.md`. A step
 * inherits the rig of the step before, so faults pile up until the mending half.
 */
import * as v from 'valibot';
import type { FaultKind } from '#physics';
import { CHECK_NAMES } from './checks.ts';

const FAULT_KINDS = [
  'sag',
  'crimp',
  'flexible-swap',
  'tight-ties',
  'extra-length',
] as const satisfies FaultKind[];
/** Pictures a link of a cause chain may point at, besides a piece of the run. */
export const CHARTS = ['crossing', 'pressure-walk', 'ledger', 'big-number'] as const;

const id = v.pipe(v.string(), v.regex(/^[a-z][a-z0-9]*(-[a-z0-9]+)*$/, 'small letters, digits and hyphens'));
const count = v.pipe(v.number(), v.integer(), v.minValue(1));
const flow = v.pipe(v.number(), v.finite(), v.minValue(0));
const share = v.pipe(v.number(), v.minValue(0), v.maxValue(1));
const options = v.pipe(v.array(id), v.minLength(3, 'at least 3 options'));
const ids = v.pipe(v.array(id), v.minLength(1, 'at least one id'));

const fault = v.strictObject({
  kind: v.picklist(FAULT_KINDS),
  at: id,
  amount: v.pipe(share, v.gtValue(0, 'more than 0')),
  span_m: v.optional(v.pipe(v.number(), v.finite(), v.gtValue(0, 'more than 0'))),
  manner: v.optional(v.picklist(['bunched', 'draped'])),
});

const link = v.union([v.strictObject({ id, piece: id }), v.strictObject({ id, chart: v.picklist(CHARTS) })]);

const faultStep = v.strictObject({
  id,
  kind: v.literal('fault'),
  fault,
  predict: v.strictObject({
    low_L_s: flow,
    high_L_s: flow,
    step_L_s: v.pipe(flow, v.gtValue(0, 'more than 0')),
  }),
  observe: v.strictObject({ check: v.picklist(CHECK_NAMES), options, right: id }),
  explain: v.strictObject({ options, right: id }),
  chain: v.pipe(v.array(link), v.minLength(3, '3 or 4 links'), v.maxLength(4, '3 or 4 links')),
});

const mendStep = v.strictObject({ id, kind: v.literal('mend') });

export const lessonSchema = v.strictObject({
  format: v.literal(1),
  version: count,
  slug: id,
  number: count,
  /** Id of a rig in `seeds/rigs`. */
  rig: id,
  minutes: count,
  aims: ids,
  terms: v.pipe(ids, v.maxLength(5, 'five terms or fewer')),
  cautions: ids,
  steps: v.pipe(
    v.array(v.variant('kind', [faultStep, mendStep])),
    v.minLength(2, 'at least one fault and the mending'),
  ),
});

export type Lesson = v.InferOutput<typeof lessonSchema>;
export type FaultStep = v.InferOutput<typeof faultStep>;
export type MendStep = v.InferOutput<typeof mendStep>;
export type Step = FaultStep | MendStep;
export type ChainLink = v.InferOutput<typeof link>;
export type ChartName = (typeof CHARTS)[number];
