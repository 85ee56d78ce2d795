/**
 * The walk along a run from where its air enters: pressure lost piece by piece, flow changed leak by
 * leak, the fan's rise on the way. The static pressure that drives a leak takes the speed of the air that
 * comes up to it; the sideways momentum of what leaks is left out (model assumption).
 */
import { leakFlow, type LeakPath } from './leakage.ts';
import { lossOf, termLoss, velocityPressure, type Network, type Part } from './network.ts';
import type { CauseLoss, Leak } from './types.ts';

/** What one walk passed. All in SI; `causes` in Pa. */
export interface PartWalk {
  flowIn: number;
  flowOut: number;
  /** Total pressure behind it; of the fan, before its rise. */
  totalOut: number;
  causes: CauseLoss[];
}

export interface WalkLog {
  /** By index of the part; parts that air does not pass are left out. */
  readonly parts: (PartWalk | undefined)[];
  readonly leaks: Leak[];
}

export const emptyLog = (): WalkLog => ({ parts: [], leaks: [] });

interface State {
  flow: number;
  total: number;
}

/** A walk from a flow at its start, and where it came out: flow and total pressure at the end, pressure rise and flow at the fan. */
export interface Walked extends State {
  readonly start: number;
  rise: number;
  fanFlow: number;
}

/**
 * The whole of the live run, for a flow in m3/s at its start. At a solution the total pressure is that of the
 * end. The more comes in, the less is left, save where the fan's curve rises.
 */
export function walk(network: Network, start: number, log?: WalkLog): Walked {
  const at: Walked = { start, flow: start, total: network.startPressure, rise: 0, fanFlow: 0 };
  const { fanIndex, live, fan } = network;
  for (let i = live[0]; i < live[1]; i++) {
    pass(network, i, at, log);
    if (i === fanIndex) {
      at.fanFlow = at.flow;
      at.rise = fan.totalPressure(at.flow);
      at.total += at.rise;
    }
  }
  return at;
}

/** The parts before the fan, its inlet losses included: flow that reaches it and total pressure there. */
export function toFan(network: Network, flow: number): State {
  const at: State = { flow, total: network.startPressure };
  for (let i = network.live[0]; i <= network.fanIndex; i++) pass(network, i, at);
  return at;
}

/** The parts behind the fan: total pressure left over at the end. */
export function fromFan(network: Network, flow: number, total: number): number {
  const at: State = { flow, total };
  for (let i = network.fanIndex + 1; i < network.live[1]; i++) pass(network, i, at);
  return at.total - network.endPressure;
}

function pass(network: Network, index: number, at: State, log?: WalkLog): void {
  const part = network.parts[index]!;
  const { leakage } = part;
  if (leakage && index > network.fanIndex) leakAt(network, part, index, leakage.joint, 'joint', at, log);
  const entry: PartWalk | undefined = log && { flowIn: at.flow, flowOut: at.flow, totalOut: 0, causes: [] };
  if (leakage && leakage.wall.length > 0) {
    for (let node = 0; node <= leakage.nodes; node++) {
      const share = (node === 0 || node === leakage.nodes ? 0.5 : 1) / leakage.nodes;
      lose(part, share, at, entry);
      if (node < leakage.nodes) leakAt(network, part, index, leakage.wall, `wall ${node + 1}`, at, log);
    }
  } else lose(part, 1, at, entry);
  if (leakage && index < network.fanIndex) leakAt(network, part, index, leakage.joint, 'joint', at, log);
  if (entry) {
    entry.flowOut = at.flow;
    entry.totalOut = at.total;
    log!.parts[index] = entry;
  }
}

function lose(part: Part, share: number, at: State, entry?: PartWalk): void {
  if (!entry) {
    at.total -= share * lossOf(part, at.flow);
    return;
  }
  for (let i = 0; i < part.terms.length; i++) {
    const term = part.terms[i]!;
    const loss_Pa = share * termLoss(term, at.flow);
    const before = entry.causes[i]?.loss_Pa ?? 0;
    entry.causes[i] = { cause: term.cause, loss_Pa: before + loss_Pa };
    at.total -= loss_Pa;
  }
}

function leakAt(
  network: Network,
  part: Part,
  index: number,
  paths: readonly LeakPath[],
  name: string,
  at: State,
  log?: WalkLog,
): void {
  if (paths.length === 0) return;
  // Air that runs backward comes up to the leak from the other side, where its speed is not known yet.
  const dynamic = velocityPressure(Math.max(0, at.flow), part.diameter, network.air.density);
  const pressure = at.total - dynamic - network.roofPressure;
  let out = 0;
  for (const path of paths) out += leakFlow(path, pressure);
  at.flow -= out;
  log?.leaks.push({
    id: `${part.id}/${name}`,
    at: part.id,
    side: index > network.fanIndex ? 'discharge' : 'suction',
    flow_L_s: out * 1000,
    static_Pa: pressure,
  });
}
