/** Small sums shared by the drawing: clamping, smooth steps, and path strings with one decimal. */
import type { Point } from '../types.ts';

export const clamp = (value: number, low: number, high: number) => Math.min(high, Math.max(low, value));
export const lerp = (a: number, b: number, t: number) => a + (b - a) * t;

/** 0 to 1 with flat ends. */
export function ease(t: number): number {
  const u = clamp(t, 0, 1);
  return u * u * (3 - 2 * u);
}

/** 1 at 0, falling smoothly to 0 at 1 and beyond. */
export const bump = (distance: number) => 1 - ease(Math.abs(distance));

/**
 * One decimal: a tenth of a pixel is finer than any screen shows. Put together from whole numbers, which
 * print several times faster than fractions; a drawing prints some five thousand.
 */
export function n(value: number): string {
  const tenths = Math.round(value * 10);
  if (!Number.isFinite(tenths)) return String(tenths);
  const size = Math.abs(tenths);
  const whole = Math.trunc(size / 10);
  const rest = size - whole * 10;
  const text = rest === 0 ? `${whole}` : `${whole}.${rest}`;
  return tenths < 0 ? `-${text}` : text;
}

export const at = (x: number, y: number) => `${n(x)} ${n(y)}`;

export function line(points: readonly Point[], close = false): string {
  if (points.length === 0) return '';
  let path = '';
  for (const point of points) path += `${path ? 'L' : 'M'}${n(point.x)} ${n(point.y)}`;
  return close ? `${path}Z` : path;
}

export const segment = (x1: number, y1: number, x2: number, y2: number) => `M${at(x1, y1)}L${at(x2, y2)}`;

export const rectangle = (x: number, y: number, width: number, height: number) =>
  `M${at(x, y)}h${n(width)}v${n(height)}h${n(-width)}Z`;

/** Two diagonals: how a drafter marks timber cut across. */
export const cross = (x: number, y: number, width: number, height: number) =>
  segment(x, y, x + width, y + height) + segment(x + width, y, x, y + height);

/** A steady scatter in 0 to 1 for things that must look loose and stay put. */
export function scatter(index: number): number {
  const value = Math.sin(index * 127.1 + 11.7) * 43758.5453;
  return value - Math.floor(value);
}

const kept = new Map<string, unknown>();
/** Drawings a page may have open at a time, times the few parts each keeps. */
const KEPT_MOST = 48;

/**
 * What was made for the same key before, or made now. For parts that do not change from frame to frame: the
 * same object comes back, so that what shows it has nothing to do. The key must say all `make` goes by.
 */
export function remember<Value>(key: string, make: () => Value): Value {
  const found = kept.get(key);
  if (found !== undefined) return found as Value;
  const made = make();
  if (kept.size >= KEPT_MOST) kept.delete(kept.keys().next().value!);
  kept.set(key, made);
  return made;
}
