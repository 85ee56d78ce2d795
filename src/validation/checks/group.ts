/** Loss coefficients of one source that share a mark and an allowance. */
import type { SourceId } from '../sources.ts';
import type { Allowed, Check, CheckMark } from '../types.ts';
import { PRINTED } from '../engine.ts';

export type Line = readonly [
  id: string,
  where: string,
  quantity: string,
  published: number,
  ours: () => number,
];

export const group = (source: SourceId, mark: CheckMark, allowed: Allowed, lines: readonly Line[]): Check[] =>
  lines.map(([id, where, quantity, published, ours]) => ({
    id,
    source,
    where,
    mark,
    quantity,
    unit: '',
    published,
    ours,
    allowed,
  }));

export const rounding = (by: number, why: string = PRINTED): Allowed => ({ kind: 'absolute', by, why });
export const within = (by: number, why: string): Allowed => ({ kind: 'relative', by, why });
