/** Where fan and run agree: every flow at which what is left over is nothing, from the least to the most. */
import type { Network } from './network.ts';
import { bracketedRoot } from './root.ts';
import { toFan } from './walk.ts';

/** Pa; so that slopes taken over small steps, and answers from different guesses, agree to rounding. */
const TOLERANCE = 1e-11;
/** Intervals searched when a curve may cross more than once. */
const SCAN_STEPS = 240;
/** Doublings of a bracket: from a millionth of free delivery to far beyond any wind. */
const WIDENINGS = 60;

type Surplus = (flow: number) => number;

/**
 * Flows in m3/s at the start of the live run. `surplus` in Pa at such a flow falls as the flow grows, save
 * where the fan's curve rises. `near` is a guess, of use where there is but one crossing.
 */
export function crossings(network: Network, surplus: Surplus, near?: number): number[] {
  const { fan } = network;
  const least = fan.freeFlow * 1e-6;
  if (!(fan.totalPressure(least) > 0)) return [];
  const guessed = near !== undefined && fan.falling ? nearby(network, surplus, near) : null;
  if (guessed !== null) return [guessed];
  const atLeast = surplus(least);
  // A run shut so fast that no flow passes it at any pressure.
  if (!Number.isFinite(atLeast)) return [];
  if (network.leaky) return anywhere(network, surplus);
  const roots = atLeast > 0 ? [] : [below(surplus, least, atLeast)];
  if (roots.length > 0 && fan.falling) return roots;
  let end = fan.freeFlow;
  let atEnd = surplus(end);
  for (let i = 0; i < WIDENINGS && atEnd >= 0; i++) atEnd = surplus((end *= 1.5));
  if (!(atEnd < 0)) return roots;
  if (fan.falling) return [bracketedRoot(surplus, least, end, TOLERANCE, atLeast, atEnd)];
  scan(surplus, cuts(network, least, end), least, roots);
  return roots;
}

/**
 * The one crossing, from a guess. Were the fan's pressure level, the step below would lead to the root, for
 * what the run asks grows as the square of flow; the fan's curve falls, so the step goes past it, and the
 * root lies between. Null where it does not, even at four steps.
 */
function nearby(network: Network, surplus: Surplus, near: number): number | null {
  const lift = network.fan.totalPressure(near);
  if (!(near > 0 && lift > 0)) return null;
  const here = surplus(near);
  for (const steps of [1, 4]) {
    const there = near + (steps * here * near) / (2 * lift);
    const atThere = surplus(there);
    if (here * atThere <= 0) return bracketedRoot(surplus, near, there, TOLERANCE, here, atThere);
  }
  return null;
}

/** The root below `start`, where the surplus is not above nothing: the wind drives the air back. */
function below(surplus: Surplus, start: number, atStart: number): number {
  let size = start;
  let atSize = surplus(-size);
  for (let i = 0; i < WIDENINGS && !(atSize > 0); i++) atSize = surplus(-(size *= 2));
  return bracketedRoot(surplus, -size, start, TOLERANCE, atSize, atStart);
}

/** With leaks the room's flow may be of either sign, whatever the fan does. */
function anywhere(network: Network, surplus: Surplus): number[] {
  const unit = network.fan.freeFlow;
  let low = 0;
  let high = unit;
  let atLow = surplus(low);
  let atHigh = surplus(high);
  for (let i = 0; i < WIDENINGS && !(atLow > 0); i++)
    atLow = surplus((low = low === 0 ? -unit * 1e-3 : low * 2));
  for (let i = 0; i < WIDENINGS && !(atHigh < 0); i++) atHigh = surplus((high *= 1.5));
  if (network.fan.falling) return [bracketedRoot(surplus, low, high, TOLERANCE, atLow, atHigh)];
  const roots: number[] = [];
  scan(surplus, cuts(network, low, high), low, roots);
  return roots;
}

function scan(surplus: Surplus, edges: readonly number[], start: number, roots: number[]): void {
  let left = start;
  let atLeft = surplus(left);
  for (const right of edges) {
    const atRight = surplus(right);
    if (atLeft * atRight <= 0 && atRight !== 0)
      roots.push(bracketedRoot(surplus, left, right, TOLERANCE, atLeft, atRight));
    left = right;
    atLeft = atRight;
  }
}

/**
 * Ends of the brackets to search, in order, for a start between two others. What the run asks for grows with
 * flow, so where the fan's pressure falls there is one crossing at most and the stretch is one bracket; where
 * it rises, and a step to either side, it is cut fine. The fan's flow grows with the start's, leaks or none.
 */
function cuts(network: Network, low: number, high: number): number[] {
  const start = (step: number) => low + ((high - low) * step) / SCAN_STEPS;
  const atFan = (step: number) => (network.leaky ? toFan(network, start(step)).flow : start(step));
  const edges: number[] = [];
  let next = 1;
  for (const [from, to] of rises(network)) {
    const last = Math.min(SCAN_STEPS - 1, firstStep(atFan, to) + 1);
    for (next = Math.max(next, firstStep(atFan, from) - 2); next <= last; next++) edges.push(start(next));
  }
  edges.push(high);
  return edges;
}

/** Stretches of flow over which the fan's pressure rises; past free delivery it never does. */
function rises({ fan }: Network): [number, number][] {
  const stretches: [number, number][] = [];
  let from = 0;
  for (let i = 1; i <= SCAN_STEPS; i++) {
    const to = (fan.freeFlow * i) / SCAN_STEPS;
    if (fan.totalPressure(to) > fan.totalPressure(from)) {
      const last = stretches.at(-1);
      if (last?.[1] === from) last[1] = to;
      else stretches.push([from, to]);
    }
    from = to;
  }
  return stretches;
}

/** The first step of the search at which the flow is no less than one named; found by halving. */
function firstStep(flowAt: (step: number) => number, flow: number): number {
  let [below, above] = [0, SCAN_STEPS];
  while (below < above) {
    const middle = (below + above) >> 1;
    if (flowAt(middle) < flow) below = middle + 1;
    else above = middle;
  }
  return above;
}
