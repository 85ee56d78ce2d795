/** The values of a step's words that are worked out while the pages are built. */
import { BUILT, subjectOf, type BuiltName, type BuiltValues, type Meter, type TaughtStep } from '#lesson';
import { instruments } from '#catalogue';
import {
  consequences,
  figuresOf,
  holdMeter,
  meter,
  solve,
  type Reading,
  type Rig,
  type Solution,
  type Stock,
} from '#physics';
import type { Quantity } from '#units';

/** All that leaves the duct for the roof space, L/s. */
const leaking = (solution: Solution) =>
  solution.leaks.reduce((sum, { flow_L_s }) => sum + Math.max(0, flow_L_s), 0);

/** Each by its name without `_before`. */
const NUMBERS: Record<string, (rig: Rig, solution: Solution, subject: string | undefined) => number | null> =
  {
    power: (_, { fan }) => fan.power_W,
    efficacy: (_, { fan }) => fan.litresPerWatt,
    leak: (_, solution) => leaking(solution),
    room: (_, { flow_L_s }) => flow_L_s.room,
    velocity: (_, { pieces }, subject) => pieces.find(({ id }) => id === subject)?.velocity_m_s ?? null,
    clear: (rig, solution) => consequences(solution, rig.room).room.runOnNeeded_min,
    dry: (rig, solution) => consequences(solution, rig.room).room.wallsDry_min,
    roof_water: (rig, solution) => consequences(solution, rig.room).roof.carried_kg * 1000,
  };

/** Values of the names asked for (all of them when no set is given), as far as the engine has them. */
export function builtValues(
  step: TaughtStep,
  from: Rig,
  to: Rig,
  stock: Stock,
  asked?: ReadonlySet<string>,
): BuiltValues {
  const values: Partial<Record<BuiltName, readonly [Quantity, number]>> = {};
  const sides = {
    before: { rig: from, solution: solve(from, stock) },
    after: { rig: to, solution: solve(to, stock) },
  };
  for (const name of Object.keys(BUILT) as (keyof typeof BUILT)[]) {
    if (asked && !asked.has(name)) continue;
    const { rig, solution } = sides[name.endsWith('_before') ? 'before' : 'after'];
    const number = NUMBERS[name.replace('_before', '')];
    const value = solution.outcome === 'solved' ? number?.(rig, solution, subjectOf(step)) : undefined;
    if (value !== null && value !== undefined) values[name] = [BUILT[name], value];
  }
  if (step.kind === 'case' && step.meter) Object.assign(values, readingsOf(step.meter, from, to, stock));
  return values;
}

const QUANTITY = { 'L/s': 'flow', 'm/s': 'velocity', Pa: 'pressure' } as const satisfies Record<
  string,
  Quantity
>;

/**
 * What one meter shows at each stage it is held at, one after the other; null where it is out of its range.
 * What it costs is its own affair, so a rig it is already held to is read as it is without.
 */
export function readMeter(
  { kind, at, seed, of }: Meter,
  from: Rig,
  to: Rig,
  stock: Stock,
): { readonly before: Reading | null; readonly last: Reading | null } {
  const nothing = { before: null, last: null };
  const figures = instruments[kind];
  if (!figures) return nothing;
  const held = meter(kind, figuresOf({ ...figures }), seed);
  const read = (rig: Rig) => {
    const reading = held.read({ rig: holdMeter(rig, undefined), stock }, at);
    return 'outcome' in reading || reading.shown === null ? null : reading;
  };
  if (of === 'both') return { before: read(from), last: read(to) };
  return { before: null, last: read(of === 'from' ? from : to) };
}

/** What a meter shows, and where by its error the truth lies. */
function readingsOf(held: Meter, from: Rig, to: Rig, stock: Stock): BuiltValues {
  const { before, last } = readMeter(held, from, to, stock);
  const first = before && band(before);
  const [shown, low, high] = last ? band(last) : [];
  return {
    ...(first
      ? { reading_before: first[0], reading_before_low: first[1], reading_before_high: first[2] }
      : {}),
    ...(shown ? { reading: shown, reading_low: low!, reading_high: high! } : {}),
  };
}

function band({ unit, shown, error }: Reading) {
  const at = (value: number) => [QUANTITY[unit], value] as const;
  return [at(shown!), at(shown! - error), at(shown! + error)] as const;
}
