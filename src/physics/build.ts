/** From a rich rig with faults to the plain series network it is solved on, or the reason it cannot be. */
import { airState } from './air.ts';
import type { Coefficients } from './central.ts';
import { bareEntry, withBareEnds } from './ends.ts';
import { applyFaults, FAULTS } from './faults/index.ts';
import { fanCurve } from './fan.ts';
import { partOf } from './fittings/index.ts';
import { roomPart } from './fittings/room.ts';
import { rememberedFriction } from './friction.ts';
import type { Context, Network, Part } from './network.ts';
import type { Failure, Fan, FanTable, Note, Rig, Stock } from './types.ts';

export function isFailure(value: object): value is Failure {
  return 'outcome' in value && value.outcome === 'failed';
}

function failed(code: Failure['code'], path: string, found: string, allowed: string): Failure {
  return { outcome: 'failed', code, path, found, allowed };
}

/** Bore in m with which the piece at `index` begins: its own, else that of the nearest before it, else after. */
function boreAt(rig: Rig, index: number): number {
  const own = rig.run[index]?.diameter_mm;
  if (own !== undefined) return own / 1000;
  for (let i = Math.min(index, rig.run.length) - 1; i >= 0; i--) {
    const piece = rig.run[i]!;
    if (piece.kind === 'reducer') return piece.toDiameter_mm / 1000;
    if (piece.diameter_mm !== undefined) return piece.diameter_mm / 1000;
  }
  for (const piece of rig.run.slice(index + 1))
    if (piece.diameter_mm !== undefined) return piece.diameter_mm / 1000;
  return 0.1;
}

/**
 * Path and text of the first number in a value that is none: a file cannot hold one, a caller's slip can.
 * The path is put together on the way out, so that a sound rig costs no strings.
 */
function notFinite(value: unknown): { path: string; found: string } | null {
  if (typeof value === 'number') return Number.isFinite(value) ? null : { path: '', found: String(value) };
  if (typeof value !== 'object' || value === null) return null;
  for (const key in value) {
    const inner = notFinite((value as Record<string, unknown>)[key]);
    if (inner)
      return { path: `${Array.isArray(value) ? `[${key}]` : `.${key}`}${inner.path}`, found: inner.found };
  }
  return null;
}

function check(rig: Rig, stock: Stock): Failure | { fan: Fan; fanIndex: number; table: FanTable } {
  const slip = notFinite(rig);
  if (slip) return failed('not-a-number', slip.path.slice(1), slip.found, 'a finite number');
  const fanIndex = rig.run.findIndex((piece) => piece.kind === 'fan');
  const fan = rig.run[fanIndex];
  if (fan?.kind !== 'fan') return failed('no-fan', 'run', 'no fan', 'exactly one piece of kind "fan"');
  const table = typeof fan.fan === 'string' ? stock.fans[fan.fan] : fan.fan;
  if (!table)
    return failed('unknown-fan', `run[${fanIndex}].fan`, String(fan.fan), Object.keys(stock.fans).join(', '));
  for (const [i, piece] of rig.run.entries()) {
    if (piece.kind !== 'duct') continue;
    if (!stock.materials[piece.material]) {
      return failed(
        'unknown-material',
        `run[${i}].material`,
        piece.material,
        Object.keys(stock.materials).join(', '),
      );
    }
    if (piece.fullLength_m !== undefined && piece.fullLength_m < piece.path_m) {
      return failed(
        'does-not-reach',
        `run[${i}].fullLength_m`,
        `${piece.fullLength_m} m`,
        `at least the path, ${piece.path_m} m`,
      );
    }
  }
  for (const [i, fault] of (rig.faults ?? []).entries()) {
    const piece = rig.run.find((candidate) => candidate.id === fault.at);
    if (!piece)
      return failed('unknown-place', `faults[${i}].at`, fault.at, rig.run.map((p) => p.id).join(', '));
    if (!FAULTS[fault.kind].fits(piece, stock)) {
      const places = rig.run.filter((p) => FAULTS[fault.kind].fits(p, stock)).map((p) => p.id);
      return failed(
        'wrong-place',
        `faults[${i}].at`,
        fault.at,
        places.length ? places.join(', ') : `no piece of this run can have "${fault.kind}"`,
      );
    }
  }
  return { fan, fanIndex, table };
}

/** A rig found sound, with its faults put in: all of its network that hangs on no coefficient. */
export interface Sound {
  readonly rig: Rig;
  readonly worked: Rig;
  readonly stock: Stock;
  readonly fan: Fan;
  readonly fanIndex: number;
  readonly table: FanTable;
}

/** Read again at every network made of it: tables and materials in it may be written over in between. */
export function soundRig(rig: Rig, stock: Stock): Sound | Failure {
  const checked = check(rig, stock);
  return isFailure(checked) ? checked : { rig, worked: applyFaults(rig), stock, ...checked };
}

/** The network of a rig. `stock` names fans and materials; `coefficients` is one full set. */
export function buildNetwork(rig: Rig, stock: Stock, coefficients: Coefficients): Network | Failure {
  const sound = soundRig(rig, stock);
  return isFailure(sound) ? sound : networkOf(sound, coefficients);
}

export function networkOf(sound: Sound, coefficients: Coefficients): Network {
  const { rig, worked, stock, table, fanIndex } = sound;
  const air = airState(rig.air);
  const assumptions = new Map<string, Note>();
  const warnings = new Map<string, Note>();
  const context: Context = {
    air,
    stock,
    coefficients,
    rig,
    friction: rememberedFriction(),
    assume: (code, at) => assumptions.set(`${code}@${at}`, { code, at }),
    warn: (code, at) => warnings.set(`${code}@${at}`, { code, at }),
  };
  const parts: Part[] = worked.run.map((piece, i) => partOf(piece, context, boreAt(worked, i)));
  const first = worked.run[0]!;
  if (first.kind !== 'grille' && first.kind !== 'terminal') {
    const entry = bareEntry(context, parts[0]!.diameter);
    parts[0] = { ...parts[0]!, terms: [entry, ...parts[0]!.terms] };
  }
  const sealed = first.kind === 'grille' ? first.condition?.sealed : undefined;
  const room = roomPart(rig.room, sealed ?? 0, context, parts[0]!.diameter);
  if (room) parts.unshift(room);
  const fan = worked.run[fanIndex] as Fan;
  const speed = sound.fan.speed ?? 1;
  const outlet = sound.fan.diameter_mm ? sound.fan.diameter_mm / 1000 : boreAt(worked, fanIndex + 1);
  const ends = withBareEnds(parts, fanIndex + (room ? 1 : 0), worked, context);
  return {
    air,
    ...ends,
    leaky: ends.parts.some((part, i) => part.leakage && i >= ends.live[0] && i < ends.live[1]),
    fan: fanCurve(table, air.density, speed * (fan.condition?.strength ?? 1), outlet),
    speed,
    assumptions: [...assumptions.values()],
    warnings: [...warnings.values()],
  };
}
