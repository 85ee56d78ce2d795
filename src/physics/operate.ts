/**
 * Where a rig runs: the flow at which what the fan lifts and what the run asks for agree, and the flows
 * that go with it. Bands and fair shares need no more than this, a thousand times over; `solve` reports on it.
 */
import { crossings } from './crossings.ts';
import { lossOf, type Network } from './network.ts';
import { bracketedRoot } from './root.ts';
import type { Failure, Solution } from './types.ts';
import { fromFan, toFan, walk, type Walked } from './walk.ts';

/**
 * Where a run leaks nearly all its air on the way, what is left at its end hangs on digits a number does
 * not hold, and the walk cannot be closed: a residual above this is no solution.
 */
const UNSETTLED_PA = 1e-6;

export interface Operation {
  /** Pa left over at a flow in m3/s at the start of the live run; nothing at an operating point. */
  readonly surplus: (flow: number) => number;
  /** Such flows at which it is nothing, rising. */
  readonly roots: readonly number[];
  /** The one the rig runs at. */
  readonly start: number;
  readonly flow_L_s: Solution['flow_L_s'];
  /** Total pressure the fan lifts. */
  readonly pressure_Pa: number;
}

/** Where a leaky run stood at a flow near by: a guess that spares most of the search, and changes no answer. */
interface Near {
  /** Flow at the room less flow at the fan, m3/s. */
  lost: number;
  /** Total pressure behind the fan, Pa. */
  behind: number;
}

/** Total pressure in Pa that the run asks of the fan at a flow through the fan in m3/s; `near` is brought up to date. */
export function systemPressure(network: Network, flow: number, near?: Near): number {
  if (network.leaky) return leakySystemPressure(network, flow, near);
  let sum = 0;
  for (let i = network.live[0]; i < network.live[1]; i++) sum += lossOf(network.parts[i]!, flow);
  return sum + (network.endPressure - network.startPressure);
}

/** The same where flow is lost or gained on the way: both sides of the fan are solved for their far ends. */
function leakySystemPressure(network: Network, flow: number, near: Near = { lost: 0, behind: 0 }): number {
  const room = root((start) => toFan(network, start).flow - flow, flow + near.lost);
  near.lost = room - flow;
  near.behind = root((total) => fromFan(network, flow, total), near.behind);
  return near.behind - toFan(network, room).total;
}

/**
 * Root of a function that grows with x at least as fast as x does, leaks adding to it: it lies no farther off
 * than the value at `near`. Where rounding says otherwise the step is doubled.
 */
function root(f: (x: number) => number, near: number): number {
  const here = f(near);
  let step = -here;
  let there = f(near + step);
  for (let i = 0; i < 60 && here * there > 0; i++) there = f(near + (step *= 2));
  return bracketedRoot(f, near, near + step, 1e-13, here, there);
}

/**
 * The operating point alone. `near`, the start flow of a rig much like this one, saves half the walks; it
 * changes no answer by more than the tolerance.
 */
export function operate(network: Network, near?: number): Operation | Failure {
  let last: Walked | undefined;
  const surplus = network.leaky
    ? (flow: number) => (last = walk(network, flow)).total - network.endPressure
    : (flow: number) => network.fan.totalPressure(flow) - systemPressure(network, flow);
  const roots = crossings(network, surplus, near);
  if (roots.length === 0) {
    const [first] = network.parts;
    if (first!.kind === 'room' && lossOf(first!, 1) === Infinity)
      return noCrossing(
        'room.makeUpFreeArea_mm2',
        '0 mm2: with no way into the room no air can leave it',
        'more than 0, such as 14000 for a 20 mm gap under a 700 mm door; left out where air comes in freely',
      );
    return noCrossing('run', 'fan and system curve do not meet', 'a fan with some pressure at some flow');
  }
  // Starting from rest a fan settles on the first stable crossing.
  const start =
    roots.length === 1 ? roots[0]! : (roots.find((flow) => isStable(network, surplus, flow)) ?? roots[0]!);
  // The last walk was mostly the root's own.
  const at = last?.start === start ? last : walk(network, start);
  if (network.leaky && !(Math.abs(at.total - network.endPressure) < UNSETTLED_PA))
    return noCrossing(
      'run',
      'leaks so large that next to nothing gets past them',
      'leakage that leaves air to follow along the run',
    );
  const { live, parts } = network;
  return {
    surplus,
    roots,
    start,
    flow_L_s: {
      room: live[0] > 0 ? 0 : start * 1000,
      fan: at.fanFlow * 1000,
      outdoors: live[1] < parts.length ? 0 : at.flow * 1000,
    },
    pressure_Pa: at.rise,
  };
}

function noCrossing(path: string, found: string, allowed: string): Failure {
  return { outcome: 'failed', code: 'no-crossing', path, found, allowed };
}

/** On a falling fan curve every crossing is: the run asks for more at more flow. */
export function isStable(network: Network, surplus: (flow: number) => number, start: number): boolean {
  const step = Math.max(1e-7, Math.abs(start) * 1e-5);
  return network.fan.falling || surplus(start + step) < surplus(start - step);
}
