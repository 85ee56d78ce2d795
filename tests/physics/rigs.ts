/** Random legal rigs: one bore, a grille, up to three pieces each side of any fan, a terminal, any faults that fit. */
import fc from 'fast-check';
import {
  FAULTS,
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
            fc.constantFrom(...KINDS),
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
