/** From a flow that solves a run to the Solution a reader gets: pieces, stations, leaks, warnings. L/s and Pa. */
import { LAMINAR_LIMIT, TURBULENT_LIMIT } from './friction.ts';
import { boreArea, reynolds, velocityPressure, type Network } from './network.ts';
import type { Note, OperatingPoint, PieceResult, Solution, Station } from './types.ts';
import { emptyLog, walk, type PartWalk } from './walk.ts';

/** The station between what is wrong at the fan's inlet and the fan itself. */
export const FAN_INLET = 'fan inlet';
/** Share of free delivery below which the air stands. */
const STANDS_BELOW = 1e-4;

const STILL = (total: number): PartWalk => ({ flowIn: 0, flowOut: 0, totalOut: total, causes: [] });

/** `start` is the flow in m3/s at the start of the live run. */
export function report(network: Network, start: number, points: OperatingPoint[]): Solution {
  const log = emptyLog();
  const at = walk(network, start, log);
  const { fan, live, parts } = network;
  const flow = at.fanFlow;
  const litres = flow * 1000;
  const power = fan.power(flow);
  const first = log.parts[live[0]]!;
  const last = log.parts[live[1] - 1]!;
  const walks = parts.map((_, i) => log.parts[i] ?? STILL(i < live[0] ? 0 : network.outdoorPressure));
  return {
    outcome: 'solved',
    direction: directionOf(network, flow),
    flow_L_s: {
      room: live[0] > 0 ? 0 : first.flowIn * 1000,
      fan: litres,
      outdoors: live[1] < parts.length ? 0 : last.flowOut * 1000,
    },
    fan: {
      pressure_Pa: at.rise,
      staticPressure_Pa: at.rise - fan.velocityPressure(flow),
      power_W: power,
      litresPerWatt: power ? litres / power : null,
      speed: network.speed,
    },
    air: { density_kg_m3: network.air.density, kinematicViscosity_m2_s: network.air.viscosity },
    residual_Pa: at.total - network.endPressure,
    pieces: parts.map((_, i) => pieceOf(network, i, walks[i]!)),
    stations: stations(network, walks, at.rise),
    leaks: log.leaks,
    operatingPoints: points,
    warnings: warnings(network, walks, flow, points),
    assumptions: assumptions(network, walks),
  };
}

function directionOf(network: Network, flow: number): Solution['direction'] {
  if (Math.abs(flow) < STANDS_BELOW * network.fan.freeFlow) return 'stopped';
  if (flow > 0) return 'forward';
  // A flap that can fall shut lets back no more than its seat leaks.
  const shut = (part: Network['parts'][number]) =>
    part.kind === 'damper' && part.shape.stuck_deg === undefined;
  return network.parts.slice(...network.live).some(shut) ? 'stopped' : 'reversed';
}

function pieceOf(network: Network, index: number, walk: PartWalk): PieceResult {
  const part = network.parts[index]!;
  return {
    id: part.id,
    kind: part.kind,
    flow_L_s: walk.flowIn * 1000,
    velocity_m_s: walk.flowIn / boreArea(part.diameter),
    velocityPressure_Pa: velocityPressure(walk.flowIn, part.diameter, network.air.density),
    loss_Pa: walk.causes.reduce((sum, cause) => sum + cause.loss_Pa, 0),
    causes: walk.causes,
    shape: part.shape,
  };
}

function stations(network: Network, walks: PartWalk[], rise: number): Station[] {
  const list: Station[] = [
    {
      after: network.parts[0]!.kind === 'room' ? 'outside air' : 'room',
      flow_L_s: walks[0]!.flowIn * 1000,
      totalPressure_Pa: 0,
      staticPressure_Pa: 0,
      velocity_m_s: 0,
    },
  ];
  for (const [i, part] of network.parts.entries()) {
    const walk = walks[i]!;
    // In the room, outdoors and in the roof space the air has come to rest.
    const atRest =
      part.kind === 'room' || part.kind === 'terminal' || (part.kind === 'opening' && i > network.fanIndex);
    const place = (after: string, total: number): Station => ({
      after,
      flow_L_s: walk.flowOut * 1000,
      totalPressure_Pa: total,
      staticPressure_Pa:
        total - (atRest ? 0 : velocityPressure(walk.flowOut, part.diameter, network.air.density)),
      velocity_m_s: atRest ? 0 : walk.flowOut / boreArea(part.diameter),
    });
    if (i === network.fanIndex) {
      list.push(place(FAN_INLET, walk.totalOut));
      list.push(place(part.id, walk.totalOut + rise));
    } else list.push(place(part.id, walk.totalOut));
  }
  return list;
}

function assumptions(network: Network, walks: PartWalk[]): readonly Note[] {
  const back = walks.findIndex((walk) => walk.flowIn < 0 || walk.flowOut < 0);
  if (back < 0) return network.assumptions;
  return [...network.assumptions, { code: 'backward-flow', at: network.parts[back]!.id }];
}

function warnings(network: Network, walks: PartWalk[], flow: number, points: OperatingPoint[]): Note[] {
  const list: Note[] = [...network.warnings];
  const fan = network.parts[network.fanIndex]!.id;
  const [low, high] = network.fan.measured;
  if (flow < low || flow > high) list.push({ code: 'outside-fan-table', at: fan });
  if (points.length > 1) list.push({ code: 'several-points', at: fan });
  if (network.fan.stallsBelow > 0 && flow < network.fan.stallsBelow) list.push({ code: 'stall', at: fan });
  for (const [i, part] of network.parts.entries()) {
    const passing = Math.abs(walks[i]!.flowIn);
    const re = reynolds(passing, part.diameter, network.air.viscosity);
    if (part.kind === 'duct' && re > LAMINAR_LIMIT && re < TURBULENT_LIMIT)
      list.push({ code: 'transitional-flow', at: part.id });
  }
  const back = walks.findIndex((walk) => walk.flowOut < 0 || walk.flowIn < 0);
  if (back >= 0) list.push({ code: 'blown-back', at: network.parts[back]!.id });
  return list;
}
