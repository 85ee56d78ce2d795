/**
 * A straight scale with d3's ticks. d3's `scaleLinear` does the same and brings colours, dates and number
 * formats along: 9 kB of gzipped script no chart here uses.
 */
import { tickStep, ticks } from 'd3';
import { numeral } from '#i18n';

export interface LinearScale {
  (value: number): number;
  readonly ticks: (count: number) => number[];
  /** Words for a tick, with the digits its step needs. */
  readonly tickText: (count: number) => (value: number) => string;
}

/** `clamp` holds results inside the range. A domain of no length maps to the start of the range. */
export function linearScale(
  [d0, d1]: readonly [number, number],
  [r0, r1]: readonly [number, number],
  { clamp = false } = {},
): LinearScale {
  const share = (value: number): number => (d1 === d0 ? 0 : (value - d0) / (d1 - d0));
  const scale = (value: number): number => {
    const t = share(value);
    return r0 + (clamp ? Math.min(1, Math.max(0, t)) : t) * (r1 - r0);
  };
  return Object.assign(scale, {
    ticks: (count: number) => ticks(d0, d1, count),
    tickText: (count: number) => {
      const digits = Math.max(0, -Math.floor(Math.log10(tickStep(d0, d1, count)) + 1e-9));
      return (value: number) => numeral(value.toFixed(Number.isFinite(digits) ? digits : 0));
    },
  });
}
