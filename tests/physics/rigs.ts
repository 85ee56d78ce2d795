/**
 * Random legal rigs: a grille, up to three pieces each side of any fan, a terminal, any faults that fit.
 * Of one bore and tight, unless they are asked to be leaky.
 */
import fc from 'fast-check';
import {
  FAULTS,
  type Duct,
  type Fault,
  type FaultKind,
  type FanTable,
  type Piece,
  type Rig,
  type Solution,
  type Stock,
} from '#physics';
import { solve } from '#physics';
import fans from '../../seeds/fans.json' with { type: 'json' };
import materials from '../../seeds/materials.json' with { type: 'json' };

export const stock = { fans, materials } as unknown as Stock;
export const KINDS = Object.keys(FAULTS) as FaultKind[];
/** Faults that let air out or in on the way. */
export const LEAKS: readonly FaultKind[] = ['joint-weep', 'joint-open', 'joint-off'];
const TIGHT = KINDS.filter((kind) => !LEAKS.includes(kind));

/** One seed for all properties, so that a failure comes back. */
export const SEEDED = { seed: 20260101 } as const;

const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const maybe = <T>(value: fc.Arbitrary<T>) => fc.option(value, { nil: undefined });

export function solved(rig: Rig): Solution {
  const solution = solve(rig, stock);
  if (solution.outcome !== 'solved')
    throw new Error(`${solution.code} at ${solution.path}: ${solution.found}`);
  return solution;
}

export const flowOf = (rig: Rig): number => solved(rig).flow_L_s.fan;

/** A table that falls to nothing, or dips and recovers when it is an axial fan's. */
const fanTable: fc.Arbitrary<FanTable> = fc
  .record({
    pressure: fc.constantFrom('total' as const, 'static' as const),
    first: fc.constantFrom<number>(0, 0, 4),
    steps: fc.array(fc.tuple(number(3, 60), number(0, 1)), { minLength: 1, maxLength: 9 }),
    top: number(15, 800),
    end: fc.constantFrom(0, 0, 0.3),
    dip: maybe(number(0.2, 0.95)),
    powered: fc.boolean(),
    floor: maybe(number(0, 5)),
  })
  .map(({ pressure, first, steps, top, end, dip, powered, floor }) => {
    const total = steps.reduce((sum, [, fall]) => sum + fall + 0.01, 0);
    let flow: number = first;
    let gone = 0;
    const points = [{ flow_L_s: first, pressure_Pa: top, ...(powered ? { power_W: 40 } : {}) }];
    for (const [step, fall] of steps) {
      flow += step;
      gone += fall + 0.01;
      const share = 1 - (1 - end) * (gone / total);
      points.push({
        flow_L_s: flow,
        pressure_Pa: top * share,
        ...(powered ? { power_W: 40 + 20 * share } : {}),
      });
    }
    const middle = points[1];
    if (dip && points.length > 3 && middle)
      points[1] = { ...middle, pressure_Pa: points[2]!.pressure_Pa * dip };
    return {
      pressure,
      points,
      saddle: dip !== undefined,
      ...(floor === undefined ? {} : { motorFloor_W: floor }),
    };
  });

const bend = fc.record({ angle_deg: number(5, 180), radiusRatio: number(0.5, 10) });

function piece(bore: number, taut: boolean): fc.Arbitrary<(id: string) => Piece> {
  const duct = fc
    .record({
      material: fc.constantFrom('rigid', 'spiral', 'pvc', 'semi-rigid', 'flexible', 'flexible'),
      path_m: number(0.05, 15),
      slack: taut ? fc.constant(0) : number(0, 0.6),
      supports: maybe(
        fc.record({ spacing_m: number(0.3, 3), width_mm: fc.oneof(number(5, 60), number(5, 300)) }),
      ),
      bends: fc.array(bend, { maxLength: 3 }),
      // A taut run is one that flexible duct (0.9 mm) makes worse, so none of its walls is stated rougher.
      roughness_mm: maybe(number(0.01, taut ? 0.9 : 3)),
    })
    .map(({ path_m, slack, roughness_mm, supports, ...rest }) => {
      // At least as long as the arcs of its bends.
      const arcs = rest.bends.map(
        (one) => (((one.angle_deg * Math.PI) / 180) * one.radiusRatio * bore) / 1000,
      );
      const length = arcs.reduce((sum, arc) => sum + arc, path_m);
      return (id: string): Piece => ({
        id,
        kind: 'duct',
        diameter_mm: bore,
        path_m: length,
        ...rest,
        ...(slack > 0 ? { fullLength_m: length / (1 - slack) } : {}),
        ...(supports ? { supports } : {}),
        ...(roughness_mm ? { roughness_mm } : {}),
      });
    });
  const elbow = fc
    .record({
      form: fc.constantFrom(
        'gored' as const,
        'pressed' as const,
        'mitred' as const,
        'adjustable' as const,
        'flexible' as const,
      ),
      angle_deg: number(5, 90),
      radiusRatio: number(0.5, 3),
    })
    .map((rest) => (id: string): Piece => ({ id, kind: 'elbow', diameter_mm: bore, ...rest }));
  const fitting = number(0, 30).map((lossCoefficient) => (id: string): Piece => ({
    id,
    kind: 'fitting',
    diameter_mm: bore,
    lossCoefficient,
  }));
  return fc.oneof(
    { weight: 4, arbitrary: duct },
    { weight: 1, arbitrary: elbow },
    { weight: 1, arbitrary: fitting },
  );
}

/** `taut` leaves no slack in any duct; without it a duct's full length may be 2.5 times its path. */
export function rigs({ taut = false, faulty = true } = {}): fc.Arbitrary<Rig> {
  return fc.constantFrom(80, 100, 125, 150, 200, 250, 315).chain((bore) =>
    fc
      .record({
        air: fc.record({
          temperature_C: number(-5, 45),
          relativeHumidity: number(0, 1),
          pressure_Pa: number(70_000, 105_000),
        }),
        makeUp: maybe(number(500, 60_000)),
        freeArea: maybe(number(0.1, 1)),
        before: fc.array(piece(bore, taut), { maxLength: 3 }),
        fan: fc.oneof(fc.constantFrom(...Object.keys(stock.fans)), fanTable),
        speed: number(0.1, 1.5),
        after: fc.array(piece(bore, taut), { maxLength: 3 }),
        form: fc.constantFrom(
          'open-end' as const,
          'wall-cowl' as const,
          'rain-cap' as const,
          'high-rain-cap' as const,
          'louvre' as const,
        ),
        faults: fc.array(
          fc.tuple(
            fc.constantFrom(...TIGHT),
            number(0, 1),
            number(0, 1),
            fc.boolean(),
            maybe(number(0.3, 4)),
          ),
          { maxLength: faulty ? 6 : 0 },
        ),
      })
      .map(({ air, makeUp, freeArea, before, fan, speed, after, form, faults }): Rig => {
        const run: Piece[] = [
          { id: 'grille', kind: 'grille', diameter_mm: bore, ...(freeArea ? { freeArea } : {}) },
          ...before.map((make, i) => make(`before ${i}`)),
          { id: 'fan', kind: 'fan', fan, speed },
          ...after.map((make, i) => make(`after ${i}`)),
          { id: 'terminal', kind: 'terminal', form, diameter_mm: bore },
        ];
        return {
          name: 'random',
          air,
          ...(makeUp ? { room: { volume_m3: 12, makeUpFreeArea_mm2: makeUp } } : {}),
          run,
          faults: faults.flatMap(([kind, where, amount, draped, span_m]): Fault[] => {
            const places = run.filter((candidate) => FAULTS[kind].fits(candidate, stock));
            const at = places[Math.min(places.length - 1, Math.floor(where * places.length))];
            if (!at) return [];
            return [
              {
                kind,
                at: at.id,
                amount,
                ...(draped ? { manner: 'draped' } : {}),
                ...(span_m && kind === 'sag' ? { span_m } : {}),
              },
            ];
          }),
        };
      }),
  );
}

const leakage: fc.Arbitrary<Partial<Duct>> = fc.oneof(
  fc.constant({}),
  fc.constantFrom('A' as const, 'B' as const, 'C' as const, 'D' as const).map((leakClass) => ({ leakClass })),
  fc.record({ leakCoefficient_L_s_m2: number(0, 0.1), leakExponent: number(0.5, 0.8) }),
  fc.record({ jointLeak: fc.record({ coefficient_L_s: number(0, 5), exponent: maybe(number(0.5, 1)) }) }),
);

const damper = (bore: number): fc.Arbitrary<(id: string) => Piece> =>
  fc
    .record({ openingPressure_Pa: maybe(number(0, 20)), lossCoefficient: maybe(number(0, 3)) })
    .map((rest) => (id: string): Piece => ({ id, kind: 'damper', diameter_mm: bore, ...rest }));

/** Any leaks, changes of bore, flaps, screens, gores, wind, roof spaces under pressure, and every kind of fault. */
export function leakyRigs(): fc.Arbitrary<Rig> {
  const weather = fc.record({
    seal: fc.array(leakage, { minLength: 8, maxLength: 8 }),
    to: fc.tuple(fc.constantFrom(0.7, 0.8, 1, 1, 1.25), fc.constantFrom(0.7, 1, 1, 1.25, 1.5)),
    form: fc.constantFrom('sudden' as const, 'conical' as const),
    angle_deg: number(5, 180),
    gores: fc.constantFrom(3 as const, 5 as const, 7 as const),
    wind_Pa: fc.oneof(fc.constant(0), number(-30, 30), number(-500, 500)),
    roof_Pa: fc.oneof(fc.constant(0), number(-20, 20)),
    screen: maybe(number(0.2, 1)),
    flap: maybe(damper(100)),
    faults: fc.array(
      fc.record({
        kind: fc.constantFrom(...KINDS, ...LEAKS),
        where: number(0, 1),
        amount: fc.oneof(number(0, 1), fc.constant(1)),
        straight_m: maybe(number(0, 1)),
      }),
      { maxLength: 8 },
    ),
  });
  return fc.tuple(rigs({ faulty: false }), weather).map(([rig, extra]): Rig => {
    const { seal, to, form, angle_deg, gores, screen, flap } = extra;
    const fan = rig.run.findIndex(({ kind }) => kind === 'fan');
    const first = rig.run[0]!.diameter_mm!;
    const second = first * to[0];
    const third = second * to[1];
    const step = (id: string, from: number, next: number): Piece[] =>
      from === next ? [] : [{ id, kind: 'reducer', diameter_mm: from, toDiameter_mm: next, form, angle_deg }];
    const rebored = rig.run.map((piece, i): Piece => {
      const bore = i < fan ? first : third;
      if (piece.kind === 'fan') return { ...piece, diameter_mm: second };
      if (piece.kind === 'duct') return { ...piece, diameter_mm: bore, ...seal[i % seal.length] };
      if (piece.kind === 'elbow' && piece.form === 'gored') return { ...piece, diameter_mm: bore, gores };
      if (piece.kind === 'terminal')
        return { ...piece, diameter_mm: bore, ...(screen ? { screen: { freeArea: screen } } : {}) };
      return { ...piece, diameter_mm: bore };
    });
    const run = [
      ...rebored.slice(0, fan),
      ...step('step in', first, second),
      rebored[fan]!,
      ...step('step out', second, third),
      ...rebored.slice(fan + 1, -1),
      ...(flap ? [{ ...flap('flap'), diameter_mm: third } as Piece] : []),
      rebored[rebored.length - 1]!,
    ];
    return {
      ...rig,
      outdoors: { wind_Pa: extra.wind_Pa },
      roofSpace: { pressure_Pa: extra.roof_Pa },
      run,
      faults: extra.faults.flatMap(({ kind, where, amount, straight_m }): Fault[] => {
        const places = run.filter((piece) => FAULTS[kind].fits(piece, stock));
        const at = places[Math.min(places.length - 1, Math.floor(where * places.length))];
        if (!at) return [];
        return [{ kind, at: at.id, amount, ...(straight_m && kind === 'bend-at-fan' ? { straight_m } : {}) }];
      }),
    };
  });
}
