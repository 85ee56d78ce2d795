/** Whole runs: against a general network solver, and how the base case answers to a change of each input. */
import { fanCurveOf, type FanTable, type Piece, type Rig } from '#physics';
import { seedRig, stock } from '#catalogue';
import type { Check } from '../types.ts';
import { only, ROUND_AIR, runLoss, SAME_FORMULA, solved, straight } from '../engine.ts';

const base = (): Rig => seedRig('base-case');

function change(id: string, make: (piece: Piece) => Piece): Rig {
  const rig = base();
  return { ...rig, run: rig.run.map((piece) => (piece.id === id ? make(piece) : piece)) };
}

/** A loss of its own just before the fan. */
function withLoss(lossCoefficient: number): Rig {
  const rig = base();
  const at = rig.run.findIndex((piece) => piece.kind === 'fan');
  return {
    ...rig,
    run: rig.run.toSpliced(at, 0, { id: 'extra', kind: 'fitting', diameter_mm: 150, lossCoefficient }),
  };
}

const flowOf = (rig: Rig) => solved(rig).flow_L_s.fan;

const scaledFan = (scale: number) =>
  change('fan', (piece) => {
    if (piece.kind !== 'fan') return piece;
    const table = piece.fan as FanTable;
    const points = table.points.map((point) => ({ ...point, pressure_Pa: scale * point.pressure_Pa }));
    return { ...piece, fan: { ...table, points } };
  });

const scaledLoss = (id: string, scale: number) =>
  change(id, (piece) =>
    'lossCoefficient' in piece
      ? ({ ...piece, lossCoefficient: scale * piece.lossCoefficient! } as Piece)
      : piece,
  );

/** L/s for a change of 100 % in an input, from 0.1 % either way. */
const slope = (rig: (scale: number) => Rig) => (flowOf(rig(1.001)) - flowOf(rig(0.999))) / 0.002;

const solver = (id: string, what: string, published: number, ours: () => number, by: number): Check => ({
  id: `epanet-${id}`,
  source: 'epanet',
  where: 'base case, every coefficient stated',
  mark: 'computed independently',
  quantity: what,
  unit: 'L/s',
  published,
  ours,
  allowed: { kind: 'relative', by, why: 'it takes another friction formula' },
});

const sensitivity = (id: string, what: string, published: number, rig: (scale: number) => Rig): Check => ({
  id: `slope-${id}`,
  source: 'gum',
  where: 'base case, sensitivity coefficients',
  mark: 'computed independently',
  quantity: `flow gained for 100 % more ${what}`,
  unit: 'L/s',
  published,
  ours: () => slope(rig),
  allowed: { kind: 'relative', by: 0.01, why: 'worked with Swamee and Jain friction' },
});

const pressureAt = (flow: number) => fanCurveOf(base(), stock, [flow])![0]!.pressure_Pa;

export const wholeRunChecks: readonly Check[] = [
  solver('base', 'flow', 89.3821, () => flowOf(base()), 1e-3),
  solver('ring', 'flow with a ring of K 4.087 before the fan', 81.0425, () => flowOf(withLoss(4.087)), 2e-3),
  solver('flap', 'flow with K 12 before the fan', 69.8835, () => flowOf(withLoss(12)), 2e-3),
  solver(
    'speed',
    'flow at 80 % speed',
    71.4762,
    () => flowOf(change('fan', (piece) => ({ ...piece, speed: 0.8 }) as Piece)),
    1e-3,
  ),
  sensitivity('fan', 'fan pressure', 23.465, scaledFan),
  sensitivity('grille', 'loss at the grille', -5.8979, (scale) => scaledLoss('grille', scale)),
  sensitivity('terminal', 'loss at the terminal', -9.4367, (scale) => scaledLoss('termination', scale)),
  ...(
    [
      [50, 246.54579],
      [90, 150.7422],
      [121.5, 32.70596],
    ] as const
  ).map(([flow, published]): Check => ({
    id: `curve-${flow}`,
    source: 'scipy',
    where: `base case fan between its points, ${flow} L/s`,
    mark: 'computed independently',
    quantity: 'fan pressure',
    unit: 'Pa',
    published,
    ours: () => pressureAt(flow),
    allowed: { kind: 'absolute', by: 6e-6, why: SAME_FORMULA },
  })),
  {
    id: 'orifice-hole',
    source: 'orifice',
    where: '10 mm hole at 50 Pa passes 0.4302 L/s',
    mark: 'computed independently',
    quantity: 'pressure for that flow through a make-up opening of the same area',
    unit: 'Pa',
    published: 50,
    ours: () => {
      const bare = only({ id: 'pipe', kind: 'fitting', diameter_mm: 150, lossCoefficient: 0 });
      const rig: Rig = { ...bare, room: { volume_m3: 12, makeUpFreeArea_mm2: (Math.PI / 4) * 100 } };
      return runLoss(rig, 0.4302);
    },
    allowed: { kind: 'relative', by: 5e-4, why: 'flow is stated to four figures' },
  },
  {
    id: 'pressure-of-speed',
    source: 'ashrae-2021',
    where: 'Example 9: 860 L/s in 200 mm',
    mark: 'transcribed',
    quantity: 'velocity pressure lost at a bare end',
    unit: 'Pa',
    published: 451,
    ours: () =>
      runLoss(
        only(
          { id: 'end', kind: 'terminal', form: 'open-end', diameter_mm: 200 },
          { ...ROUND_AIR, density_kg_m3: 1.204 },
        ),
        860,
      ),
    allowed: { kind: 'absolute', by: 0.6, why: 'half a unit of the last printed digit' },
  },
  {
    id: 'speed-of-air',
    source: 'ashrae-2021',
    where: 'Example 9: 290 L/s in 125 mm',
    mark: 'transcribed',
    quantity: 'mean speed',
    unit: 'm/s',
    published: 23.6,
    ours: () => straight(125, 290, 0.09).velocity,
    allowed: { kind: 'absolute', by: 0.06, why: 'half a unit of the last printed digit' },
  },
];
