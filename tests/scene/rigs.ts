/** Rigs to draw: the starter ones with each fault, and a seeded stream of legal ones. */
import { seedRig, stock } from '#catalogue';
import { solve, type Duct, type Fault, type Piece, type Rig, type Solution } from '#physics';

export const faultsOf: Readonly<Record<string, Fault>> = {
  sag: { kind: 'sag', at: 'out', amount: 0.5, span_m: 1.7 },
  crimp: { kind: 'crimp', at: 'fan', amount: 0.75 },
  swap: { kind: 'flexible-swap', at: 'inlet', amount: 1 },
  ties: { kind: 'tight-ties', at: 'out', amount: 0.6 },
  bunched: { kind: 'extra-length', at: 'out', amount: 0.4 },
  draped: { kind: 'extra-length', at: 'out', amount: 0.8, manner: 'draped' },
};

export function solved(rig: Rig): Solution {
  const solution = solve(rig, stock);
  if (solution.outcome !== 'solved') throw new Error(`${rig.name}: ${JSON.stringify(solution)}`);
  return solution;
}

export interface Case {
  readonly name: string;
  readonly rig: Rig;
  readonly solution: Solution;
  readonly healthy: Solution;
}

export function caseOf(name: string, rig: Rig): Case {
  return { name, rig, solution: solved(rig), healthy: solved({ ...rig, faults: [] }) };
}

export const bathroom = (...kinds: string[]): Case =>
  caseOf(kinds.join(' + ') || 'healthy', {
    ...seedRig('upstairs-bathroom'),
    faults: kinds.map((kind) => faultsOf[kind]!),
  });

/** Multiplicative congruential stream; MINSTD constants of Park and Miller. */
function stream(seed: number) {
  let state = seed;
  return () => {
    state = (state * 48271) % 2147483647;
    return state / 2147483647;
  };
}

/** A legal run of 1 to 12 m of any pieces, the fan anywhere in it, out by wall, eaves or roof, and faults on it. */
export function randomRig(seed: number): Rig {
  const next = stream(seed * 7919 + 13);
  for (let k = 0; k < 5; k += 1) next();
  const pick = <T>(list: readonly T[]): T => list[Math.floor(next() * list.length)]!;
  let bore = pick([100, 125, 150, 200, 250]);
  const metres = 1 + next() * 11;
  const run: Piece[] = [];
  const elbow = (): Piece => ({
    id: `elbow-${run.length}`,
    kind: 'elbow',
    form: pick(['gored', 'pressed', 'mitred', 'adjustable', 'flexible']),
    angle_deg: pick([15, 30, 45, 60, 90, 90, 120]),
    radiusRatio: pick([0.6, 0.75, 1, 1.5, 2, 3]),
    gores: pick([3, 5, 7]),
    diameter_mm: bore,
  });
  const duct = (path_m: number): Duct => {
    const material = pick(['rigid', 'spiral', 'semi-rigid', 'flexible', 'flexible']);
    const rigid = material === 'rigid' || material === 'spiral';
    return {
      id: `duct-${run.length}`,
      kind: 'duct',
      material,
      diameter_mm: bore,
      path_m,
      ...(rigid ? {} : { fullLength_m: path_m * (1 + next() * 0.12) }),
      ...(next() < 0.7
        ? { supports: { spacing_m: 0.6 + next() * 1.4, width_mm: pick([38, 50, 75, 100]) } }
        : {}),
      ...(next() < 0.35
        ? {
            bends: Array.from({ length: 1 + Math.floor(next() * 2) }, () => ({
              angle_deg: pick([30, 45, 60, 90]),
              radiusRatio: pick([0.75, 1, 1.5]),
            })),
          }
        : {}),
    };
  };
  /** Something between two ducts, more often nothing. */
  const joint = () => {
    const chance = next();
    if (chance < 0.35) run.push(elbow());
    else if (chance < 0.45)
      run.push({ id: `collar-${run.length}`, kind: 'fitting', diameter_mm: bore, lossCoefficient: 0.3 });
    else if (chance < 0.55) run.push({ id: `flap-${run.length}`, kind: 'damper', diameter_mm: bore });
    else if (chance < 0.7) {
      const toDiameter_mm = bore === 250 ? 200 : bore === 100 ? 125 : pick([bore - 25, bore + 25]);
      run.push({
        id: `reducer-${run.length}`,
        kind: 'reducer',
        diameter_mm: bore,
        toDiameter_mm,
        form: pick(['sudden', 'conical']),
        angle_deg: pick([15, 30, 60, 90]),
      });
      bore = toDiameter_mm;
    }
  };
  const stretch = (length_m: number) => {
    const count = 1 + Math.floor(next() * 3);
    for (let k = 0; k < count; k += 1) {
      run.push(duct(Math.max(0.15, length_m / count)));
      joint();
    }
  };
  const place = pick(['room', 'between', 'outdoors']);
  const share = place === 'room' ? 0 : place === 'between' ? 0.1 + next() * 0.5 : 1;
  const noGrille = share > 0 && next() < 0.2;
  if (!noGrille) run.push({ id: 'grille', kind: 'grille', diameter_mm: bore, freeArea: 0.7 });
  if (share > 0) stretch(metres * share);
  run.push({ id: 'fan', kind: 'fan', fan: bore > 110 ? 'mixed-150' : 'mixed-100', speed: 1 });
  if (share < 1) stretch(metres * (1 - share));
  if (next() < 0.25) run.push(elbow());
  run.push({
    id: 'end',
    kind: 'terminal',
    form: pick(['open-end', 'wall-cowl', 'rain-cap', 'high-rain-cap', 'louvre']),
    diameter_mm: bore,
  });
  const faults: Fault[] = [];
  for (const piece of run) {
    if (piece.kind === 'fan' && next() < 0.4) faults.push({ kind: 'crimp', at: piece.id, amount: next() });
    if (piece.kind !== 'duct') continue;
    if (piece.material === 'flexible' && next() < 0.4)
      faults.push({ kind: 'sag', at: piece.id, amount: next(), span_m: 1 + next() * 2 });
    if (piece.material === 'semi-rigid' && next() < 0.4)
      faults.push({ kind: 'flexible-swap', at: piece.id, amount: next() });
    if (!/rigid$|spiral/.test(piece.material) && next() < 0.3)
      faults.push({ kind: 'tight-ties', at: piece.id, amount: next() });
    if (!/rigid$|spiral/.test(piece.material) && next() < 0.4)
      faults.push({
        kind: 'extra-length',
        at: piece.id,
        amount: next(),
        manner: pick(['bunched', 'draped']),
      });
  }
  return { name: `random ${seed}`, run, faults };
}
