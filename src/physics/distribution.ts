/**
 * An uncertain number: a value with 95 % limits that may lie unevenly about it, and what may be drawn from
 * it. Which shape a coefficient really has nobody has measured: both shapes here are model assumptions.
 */
import type { Random } from './random.ts';

export interface Input {
  readonly name: string;
  readonly value: number;
  /** 95 % limits: `low <= value <= high`. A limit that is the value itself leaves no room on that side. */
  readonly low: number;
  readonly high: number;
  /**
   * `split normal` (the default) joins two half bells of different width at the value; `triangular` is a
   * triangle with its peak there.
   */
  readonly spread?: 'split normal' | 'triangular';
  /** Draws are held at these: nothing rougher than smooth, no loss below nothing. */
  readonly least?: number;
  readonly most?: number;
}

/** Normal deviate that leaves 2.5 % above it. */
export const LIMIT_95 = 1.959964;
/** A triangle whose outermost twentieths are cut off keeps this share of each side: 1 - sqrt(0.05). */
const KEPT = 1 - Math.sqrt(0.05);

/** Half-widths below and above the value: standard deviations of the half bells, or sides of the triangle. */
function sides(input: Input): readonly [number, number] {
  const unit = input.spread === 'triangular' ? KEPT : LIMIT_95;
  return [(input.value - input.low) / unit, (input.high - input.value) / unit];
}

/** An input ready to be drawn from many times. Outside its limits lie 5 %, shared as the widths are. */
export function drawer(input: Input, random: Random): () => number {
  const [below, above] = sides(input);
  const { value, least = -Infinity, most = Infinity } = input;
  const held = (x: number) => Math.min(most, Math.max(least, x));
  if (input.spread === 'triangular')
    return () => held(random.triangular(value - below, value, value + above));
  const share = below + above > 0 ? below / (below + above) : 0.5;
  return () => {
    const size = Math.abs(random.normal());
    return held(random.even() < share ? value - below * size : value + above * size);
  };
}

/** Mean and standard deviation, holds left out. Split normal: John (1982), from memory; triangle: by hand. */
export function moments(input: Input): { readonly mean: number; readonly standard: number } {
  const [below, above] = sides(input);
  const lean = above - below;
  if (input.spread === 'triangular') {
    return {
      mean: input.value + lean / 3,
      standard: Math.sqrt((above ** 2 + below ** 2 + above * below) / 18),
    };
  }
  return {
    mean: input.value + Math.sqrt(2 / Math.PI) * lean,
    standard: Math.sqrt((1 - 2 / Math.PI) * lean ** 2 + above * below),
  };
}
