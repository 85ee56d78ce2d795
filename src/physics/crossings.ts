/** Where fan and run agree: every flow at which what is left over is nothing, from the least to the most. */
import type { Network } from './network.ts';
import { bracketedRoot } from './root.ts';

/** Pa; far below what any instrument or drawing shows. */
const TOLERANCE = 1e-9;
/** Intervals searched when a curve may cross more than once. */
const SCAN_STEPS = 240;
/** Doublings of a bracket: from a millionth of free delivery to far beyond any wind. */
const WIDENINGS = 60;

/**
 * Flows in m3/s at the start of the live run. `surplus` in Pa at such a flow falls as the flow grows, save
 * where the fan's curve rises.
 */
export function crossings(network: Network, surplus: (flow: number) => number): number[] {
  if (network.leaky) return anywhere(network, surplus);
  const start = network.fan.freeFlow * 1e-6;
  const forward = surplus(start) > 0;
  const roots = forward ? [] : [below(surplus, start)];
  if (!forward && network.fan.falling) return roots;
  let end = network.fan.freeFlow;
  for (let i = 0; i < WIDENINGS && surplus(end) >= 0; i++) end *= 1.5;
  if (!(surplus(end) < 0)) return roots;
  if (network.fan.falling) return [bracketedRoot(surplus, start, end, TOLERANCE)];
  scan(surplus, brackets(network, start, end), start, roots);
  return roots;
}

/** The root below `start`, where the surplus is not above nothing: the wind drives the air back. */
function below(surplus: (flow: number) => number, start: number): number {
  let size = start;
  for (let i = 0; i < WIDENINGS && !(surplus(-size) > 0); i++) size *= 2;
  return bracketedRoot(surplus, -size, start, TOLERANCE);
}

/** With leaks the room's flow may be of either sign, whatever the fan does. */
function anywhere(network: Network, surplus: (flow: number) => number): number[] {
  const unit = network.fan.freeFlow;
  let low = 0;
  let high = unit;
  for (let i = 0; i < WIDENINGS && !(surplus(low) > 0); i++) low = low === 0 ? -unit * 1e-3 : low * 2;
  for (let i = 0; i < WIDENINGS && !(surplus(high) < 0); i++) high *= 1.5;
  if (network.fan.falling) return [bracketedRoot(surplus, low, high, TOLERANCE)];
  const edges = Array.from({ length: SCAN_STEPS }, (_, i) => low + ((high - low) * (i + 1)) / SCAN_STEPS);
  const roots: number[] = [];
  scan(surplus, edges, low, roots);
  return roots;
}

function scan(
  surplus: (flow: number) => number,
  edges: readonly number[],
  start: number,
  roots: number[],
): void {
  let left = start;
  let atLeft = surplus(left);
  for (const right of edges) {
    const atRight = surplus(right);
    if (atLeft * atRight <= 0 && atRight !== 0) roots.push(bracketedRoot(surplus, left, right, TOLERANCE));
    left = right;
    atLeft = atRight;
  }
}

/**
 * Ends of the brackets to search, in order. What the run asks for grows with flow, so where the fan's
 * pressure falls there is one crossing at most and the stretch is one bracket; where it rises it is cut fine.
 */
function brackets(network: Network, start: number, end: number): number[] {
  const edges: number[] = [];
  let flow = start;
  let pressure = network.fan.totalPressure(start);
  let rose = false;
  for (let i = 1; i <= SCAN_STEPS; i++) {
    const next = start + ((end - start) * i) / SCAN_STEPS;
    const atNext = network.fan.totalPressure(next);
    const rises = atNext > pressure;
    if ((rises || rose) && i > 1) edges.push(flow);
    flow = next;
    pressure = atNext;
    rose = rises;
  }
  edges.push(end);
  return edges;
}
