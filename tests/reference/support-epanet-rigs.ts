/** Seeded random rigs for the network solver: one bore, no saddles, air stated outright, turbulent at the answer. */
import {
  FAULTS,
  randomFrom,
  solve,
  type Duct,
  type Fault,
  type FaultKind,
  type FanTable,
  type Piece,
  type Random,
  type Rig,
  type Solution,
} from '#physics';
import { reynoldsOf } from './support-epanet-runs.ts';
import { stock } from './support.ts';

export type Sort = 'healthy' | 'faulted' | 'leaking';

const FALLING = ['mixed-100', 'mixed-125', 'mixed-150', 'mixed-ec-200'];
const WALLS = ['rigid', 'spiral', 'pvc', 'semi-rigid', 'flexible', 'flexible'];
const FORMS = ['open-end', 'wall-cowl', 'rain-cap', 'high-rain-cap', 'louvre'] as const;
const ELBOWS = ['gored', 'pressed', 'mitred', 'adjustable', 'flexible'] as const;
const SOUND: FaultKind[] = [
  ...(['sag', 'crimp', 'flexible-swap', 'tight-ties', 'extra-length'] as const),
  ...(['crushed', 'dented', 'blocked-grille'] as const),
];
const LEAKY: FaultKind[] = ['joint-weep', 'joint-open'];

/** The solver takes another law where air is not fully turbulent; such rigs are passed over. */
const TURBULENT = 4500;

const within = (random: Random, low: number, high: number) => low + (high - low) * random.even();
const oneOf = <T>(random: Random, list: readonly T[]): T => list[Math.floor(random.even() * list.length)]!;

/** Total pressure falls throughout: velocity pressure at free flow stays below that at shut-off. */
function fan(random: Random, bore_mm: number): string | FanTable {
  if (random.even() < 0.5) return oneOf(random, FALLING);
  const most = within(random, 5, 11) * 1000 * (Math.PI / 4) * (bore_mm / 1000) ** 2;
  const shutOff = within(random, 120, 500);
  const steps = 3 + Math.floor(random.even() * 7);
  const points = Array.from({ length: steps + 1 }, (_, i) => {
    const x = i / steps;
    return { flow_L_s: most * x, pressure_Pa: shutOff * (1 - (0.5 * x + 0.5 * x ** 3)) };
  });
  return { pressure: random.even() < 0.5 ? 'total' : 'static', points };
}

function ductPiece(random: Random, id: string, bore: number, leaking: boolean): Duct {
  const bends = Array.from({ length: Math.floor(random.even() * 3) }, () => ({
    angle_deg: within(random, 10, 120),
    radiusRatio: within(random, 0.5, 3),
  }));
  const arcs = bends.reduce(
    (sum, bend) => sum + (bend.angle_deg / 57.3) * bend.radiusRatio * (bore / 1000),
    0,
  );
  const path_m = arcs + within(random, 0.3, 8);
  return {
    id,
    kind: 'duct',
    material: oneOf(random, WALLS),
    diameter_mm: bore,
    path_m,
    bends,
    supports: { spacing_m: within(random, 0.6, 2.5), width_mm: within(random, 20, 150) },
    ...(random.even() < 0.3 ? { fullLength_m: path_m * within(random, 1, 1.3) } : {}),
    ...(leaking && random.even() < 0.6 ? { leakClass: oneOf(random, ['A', 'B', 'C', 'D'] as const) } : {}),
    ...(leaking && random.even() < 0.5
      ? { jointLeak: { coefficient_L_s: within(random, 0.02, 0.6), exponent: 0.65 } }
      : {}),
  };
}

function side(random: Random, name: string, bore: number, leaking: boolean): Piece[] {
  return Array.from({ length: 1 + Math.floor(random.even() * 3) }, (_, i): Piece => {
    const id = `${name} ${i}`;
    const kind = random.even();
    if (i === 0 || kind < 0.5) return ductPiece(random, id, bore, leaking);
    if (kind < 0.8)
      return {
        id,
        kind: 'elbow',
        form: oneOf(random, ELBOWS),
        angle_deg: within(random, 20, 90),
        radiusRatio: within(random, 0.75, 2),
        diameter_mm: bore,
      };
    return { id, kind: 'fitting', diameter_mm: bore, lossCoefficient: within(random, 0, 4) };
  });
}

function rig(random: Random, sort: Sort): Rig {
  const bore = oneOf(random, [100, 125, 150, 200, 250]);
  const leaking = sort === 'leaking';
  const run: Piece[] = [
    { id: 'grille', kind: 'grille', diameter_mm: bore, freeArea: within(random, 0.35, 0.95) },
    ...side(random, 'before', bore, leaking),
    { id: 'fan', kind: 'fan', fan: fan(random, bore), speed: within(random, 0.5, 1.2), diameter_mm: bore },
    ...side(random, 'after', bore, leaking),
    { id: 'end', kind: 'terminal', form: oneOf(random, FORMS), diameter_mm: bore },
  ];
  const kinds = sort === 'faulted' ? SOUND : [...SOUND, ...LEAKY, ...LEAKY, ...LEAKY];
  const wanted = sort === 'healthy' ? 0 : 1 + Math.floor(random.even() * 5);
  const faults = Array.from({ length: wanted }, (): Fault | null => {
    const kind = oneOf(random, kinds);
    const places = run.filter(
      (piece) => FAULTS[kind].fits(piece, stock) && (LEAKY.includes(kind) ? piece.kind === 'duct' : true),
    );
    if (places.length === 0) return null;
    const manner = random.even() < 0.5 ? 'draped' : 'bunched';
    const amount = within(random, 0.05, 0.9);
    return { kind, at: oneOf(random, places).id, amount, ...(kind === 'extra-length' ? { manner } : {}) };
  });
  return {
    name: sort,
    air: {
      density_kg_m3: within(random, 0.95, 1.28),
      kinematicViscosity_m2_s: within(random, 1.35e-5, 1.8e-5),
    },
    ...(random.even() < 0.5
      ? { room: { volume_m3: 12, makeUpFreeArea_mm2: within(random, 3000, 40_000) } }
      : {}),
    ...(random.even() < 0.4 ? { outdoors: { wind_Pa: within(random, -15, 15) } } : {}),
    ...(leaking && random.even() < 0.4 ? { roofSpace: { pressure_Pa: within(random, -8, 8) } } : {}),
    run,
    faults: faults.filter((fault) => fault !== null),
  };
}

export interface Case {
  readonly rig: Rig;
  readonly solution: Solution;
}

/** `count` rigs of a sort with the engine's answer; the same seed gives the same rigs. */
export function cases(seed: number, sort: Sort, count: number): { cases: Case[]; passedOver: number } {
  const random = randomFrom(seed);
  const list: Case[] = [];
  let passedOver = 0;
  while (list.length < count) {
    const candidate = rig(random, sort);
    const solution = solve(candidate, stock);
    const turbulent = (found: Solution) =>
      Math.min(found.flow_L_s.room, found.flow_L_s.outdoors) > 0 &&
      Math.min(
        ...found.pieces.map((piece) =>
          reynoldsOf(piece.flow_L_s, candidate.run[0]!.diameter_mm!, candidate.air!.kinematicViscosity_m2_s!),
        ),
      ) > TURBULENT;
    // Beyond its table a fan runs on the engine's own straight line, which the solver cannot know.
    const tabled = (found: Solution) => !found.warnings.some(({ code }) => code === 'outside-fan-table');
    const leaks = (found: Solution) => sort !== 'leaking' || found.leaks.length > 0;
    if (solution.outcome === 'solved' && turbulent(solution) && tabled(solution) && leaks(solution))
      list.push({ rig: candidate, solution });
    else passedOver++;
    if (passedOver > 20 * count) throw new Error('too few rigs of this sort are turbulent');
  }
  return { cases: list, passedOver };
}
