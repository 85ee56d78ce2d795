/**
 * The likely band of a rig: every coefficient within its published range, the fan within its rating's
 * error, walls within their roughness range. What a rig states outright counts as known.
 */
import type { Coefficients } from './central.ts';
import { COEFFICIENTS, type Coefficient } from './coefficients.ts';
import type { Input } from './distribution.ts';
import { isFailure, networkOf, soundRig } from './build.ts';
import { operate, type Operation } from './operate.ts';
import { solve } from './solve.ts';
import type { Failure, Rig, Solution, Stock } from './types.ts';
import { bands, type Band, type BandOptions, type Values } from './uncertainty.ts';

/** Scale on the pressure a fan's table states: 4 % standard uncertainty. */
export const FAN_PRESSURE: Coefficient = {
  value: 1,
  low: 1 - 1.96 * 0.04,
  high: 1 + 1.96 * 0.04,
  mark: 'model assumption',
  source:
    'a maker’s rating and one fan against the next; of the order of rating tolerances, no test of the fan at hand',
};

const FAN = 'fan pressure';
const wall = (material: string) => `roughness of ${material}`;

/** Everything uncertain about rigs made of this stock. No draw is below nothing. */
export function uncertainInputs(stock: Stock): Input[] {
  const coefficients = Object.entries(COEFFICIENTS as Readonly<Record<string, Coefficient>>);
  return [
    ...coefficients.map(([name, { value, low, high }]) => ({ name, value, low, high, least: 0 })),
    { name: FAN, value: FAN_PRESSURE.value, low: FAN_PRESSURE.low, high: FAN_PRESSURE.high, least: 0 },
    ...Object.entries(stock.materials).map(
      ([
        name,
        {
          roughness_mm,
          roughnessRange_mm: [low, high],
        },
      ]) => ({
        name: wall(name),
        value: roughness_mm,
        low: Math.min(low, roughness_mm),
        high: Math.max(high, roughness_mm),
        least: 0,
      }),
    ),
  ];
}

/**
 * A rig ready to be run at any draw of `uncertainInputs`. Copies of its fan and walls are made once and
 * written over for each draw: making them anew took a third of the time of a band. The first draw's answer,
 * which is the central one, is the guess for all others, so that none hangs on the draw before it.
 */
export function drawable(rig: Rig, stock: Stock): (values: Values) => Operation | Failure {
  const fan = rig.run.find((piece) => piece.kind === 'fan');
  const table =
    fan?.kind === 'fan' ? (typeof fan.fan === 'string' ? stock.fans[fan.fan] : fan.fan) : undefined;
  const points = (table?.points ?? []).map((point) => ({ ...point, stated_Pa: point.pressure_Pa }));
  const run = rig.run.map((piece) =>
    piece === fan && piece.kind === 'fan' && table ? { ...piece, fan: { ...table, points } } : piece,
  );
  const materials = Object.fromEntries(
    Object.entries(stock.materials).map(([name, material]) => [name, { ...material }]),
  );
  const walls = Object.entries(materials).map(([name, material]) => ({ input: wall(name), material }));
  const sound = soundRig({ ...rig, run }, { ...stock, materials });
  if (isFailure(sound)) return () => sound;
  let near: number | undefined;
  return (values) => {
    for (const { input, material } of walls) material.roughness_mm = values[input] ?? material.roughness_mm;
    for (const point of points) point.pressure_Pa = (values[FAN] ?? 1) * point.stated_Pa;
    // The inputs hold a value for every coefficient.
    const found = operate(networkOf(sound, values as unknown as Coefficients), near);
    if (!isFailure(found)) near ??= found.start;
    return found;
  };
}

const RESULTS = ({ flow_L_s, pressure_Pa }: Operation) => ({
  room_L_s: flow_L_s.room,
  fan_L_s: flow_L_s.fan,
  outdoors_L_s: flow_L_s.outdoors,
  pressure_Pa,
});

export type RigBands = Readonly<Record<keyof ReturnType<typeof RESULTS>, Band>>;

/** Bands of the three flows (L/s) and of the fan's total pressure (Pa); the Failure of a rig with no answer. */
export function rigBands(rig: Rig, stock: Stock, options?: BandOptions): RigBands | Failure {
  const run = drawable(rig, stock);
  const model = (values: Values) => {
    const found = run(values);
    return isFailure(found) ? null : RESULTS(found);
  };
  return bands(uncertainInputs(stock), model, options) ?? (solve(rig, stock) as Failure);
}

export interface DropBands {
  readonly before_L_s: Band;
  readonly after_L_s: Band;
  /** Before less after. */
  readonly drop_L_s: Band;
  /** Drop over before, 0 to 1; 0 where nothing moved before. */
  readonly dropShare: Band;
}

/**
 * Bands of a before and an after on the same draws, so that what is unknown about both cancels: a drop is
 * surer than a level. `flow` names which of the three flows, room when absent.
 */
export function dropBands(
  before: Rig,
  after: Rig,
  stock: Stock,
  { flow = 'room', ...options }: BandOptions & { readonly flow?: keyof Solution['flow_L_s'] } = {},
): DropBands | Failure {
  const [first, second] = [drawable(before, stock), drawable(after, stock)];
  const model = (values: Values) => {
    const was = first(values);
    const is = second(values);
    if (isFailure(was) || isFailure(is)) return null;
    const before_L_s = was.flow_L_s[flow];
    const after_L_s = is.flow_L_s[flow];
    const drop_L_s = before_L_s - after_L_s;
    return { before_L_s, after_L_s, drop_L_s, dropShare: before_L_s === 0 ? 0 : drop_L_s / before_L_s };
  };
  const found = bands(uncertainInputs(stock), model, options);
  if (found) return found;
  const was = solve(before, stock);
  return was.outcome === 'failed' ? was : (solve(after, stock) as Failure);
}
