/**
 * Common practice for which no source was found, held against the model with wide allowance. The bench
 * run and its fan are invented: the fan is of ordinary mixed-flow shape, sized once so that the run put
 * up well moves about 120 L/s. Nothing in the model was set by these rows.
 */
import type { FanTable, Fault, Rig } from '#physics';
import { stock } from '#catalogue';
import type { Check } from '../types.ts';
import { only, solved } from '../engine.ts';

const BORE = 150;
/** Free flow and shut-off pressure of the invented EC fan over those of the catalogue's 150 mm mixed-flow one. */
const SIZED = { flow: 0.95, pressure: 0.83 };

function benchFan(): FanTable {
  const like = stock.fans['mixed-150']!;
  return {
    name: 'bench fan',
    pressure: like.pressure,
    motor: 'EC',
    outletDiameter_mm: BORE,
    origin: 'invented',
    points: like.points.map((point) => ({
      flow_L_s: SIZED.flow * point.flow_L_s,
      pressure_Pa: SIZED.pressure * point.pressure_Pa,
    })),
  };
}

/** Light ends: a wide open grille and a bare end. Semi-rigid to the fan, taut flexible after it. */
export function benchRig(faults: readonly Fault[] = [], tight = false): Rig {
  const bend = { angle_deg: 90, radiusRatio: tight ? 0.75 : 2 };
  return {
    name: 'bench run',
    air: { temperature_C: 20, relativeHumidity: 0.5 },
    run: [
      { id: 'grille', kind: 'grille', diameter_mm: BORE, freeArea: 0.85 },
      { id: 'inlet', kind: 'duct', material: 'semi-rigid', diameter_mm: BORE, path_m: 1.5, bends: [bend] },
      { id: 'fan', kind: 'fan', fan: benchFan() },
      {
        id: 'out',
        kind: 'duct',
        material: 'flexible',
        diameter_mm: BORE,
        path_m: 4.5,
        supports: { spacing_m: 1.2, width_mm: 75 },
        bends: [bend],
      },
      { id: 'end', kind: 'terminal', form: 'open-end', diameter_mm: BORE },
    ],
    faults,
  };
}

const SAG: readonly Fault[] = [{ kind: 'sag', at: 'out', amount: 0.5 }];
/** The usual ones, each at about the middle of what is seen. */
const USUAL: readonly Fault[] = [
  ...SAG,
  { kind: 'crimp', at: 'fan', amount: 0.6 },
  { kind: 'tight-ties', at: 'out', amount: 0.3 },
  { kind: 'flexible-swap', at: 'inlet', amount: 0.5 },
  { kind: 'extra-length', at: 'out', amount: 0.2, manner: 'bunched' },
];

const flowOf = (rig: Rig) => solved(rig).flow_L_s.outdoors;
/** Percent lost against the run put up well. */
const lost = (rig: Rig) => 100 * (1 - flowOf(rig) / flowOf(benchRig()));

const practice = (check: Omit<Check, 'source' | 'mark'>): Check => ({
  source: 'practice',
  mark: 'common practice, no source',
  ...check,
});

export const practiceChecks: readonly Check[] = [
  practice({
    id: 'practice-supports',
    where: 'flexible duct is held about every 1.2 m',
    quantity: 'span taken where a rig states no supports, 12 m run',
    unit: 'm',
    published: 1.2,
    ours: () =>
      solved(
        only({ id: 'out', kind: 'duct', material: 'flexible', diameter_mm: BORE, path_m: 12 }),
      ).pieces.find((piece) => piece.id === 'out')!.shape.span_m!,
    allowed: { kind: 'absolute', by: 0.2, why: '"about"' },
  }),
  practice({
    id: 'practice-stretch',
    where: 'semi-rigid duct stretches to about 3.5 to 4 times its packed length',
    quantity: 'full over used length that the model reports for a piece left packed; taken, not predicted',
    unit: '',
    published: 3.75,
    ours: () => {
      const piece = {
        id: 'in',
        kind: 'duct',
        material: 'semi-rigid',
        diameter_mm: BORE,
        path_m: 0.8,
      } as const;
      const { shape } = solved(only({ ...piece, fullLength_m: 3 })).pieces.find(({ id }) => id === 'in')!;
      return 1 / (1 - shape.compression!);
    },
    allowed: { kind: 'absolute', by: 0.25, why: 'the range stated' },
  }),
  practice({
    id: 'practice-bench-well',
    where: 'bench run of 150 mm with light ends and a good EC mixed-flow fan, put up well',
    quantity: 'flow; the invented fan was sized for it',
    unit: 'L/s',
    published: 120,
    ours: () => flowOf(benchRig()),
    allowed: { kind: 'relative', by: 0.1, why: '"about"' },
  }),
  practice({
    id: 'practice-bench-bends',
    where: 'the same run: bends and sag alone take roughly an eighth',
    quantity: 'flow lost to tight bends and sag',
    unit: '%',
    published: 12.5,
    ours: () => lost(benchRig(SAG, true)),
    allowed: {
      kind: 'absolute',
      by: 6,
      why: 'nothing says how tight or how deep; the turning loss of sag is good to a factor of two',
    },
  }),
  practice({
    id: 'practice-bench-usual',
    where: 'the same run: the usual faults together take about a third',
    quantity: 'flow lost to bends, sag, crimp, ties, swap and slack',
    unit: '%',
    published: 33,
    ours: () => lost(benchRig(USUAL, true)),
    allowed: { kind: 'absolute', by: 12, why: 'nothing says which faults or how bad' },
  }),
];
