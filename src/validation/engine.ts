/** How a check asks the engine: small runs, and the losses of straight duct. */
import {
  frictionFactor,
  solve,
  systemCurve,
  type Air,
  type Fault,
  type Piece,
  type Rig,
  type Solution,
} from '#physics';
import { stock } from '#catalogue';

export interface StatedAir {
  readonly density_kg_m3: number;
  readonly kinematicViscosity_m2_s: number;
}

/** ASHRAE Fundamentals 2021 ch. 21, as transcribed: 1.204 kg/m3 and Re = 66.4 D(mm) V. */
export const STANDARD_AIR: StatedAir = { density_kg_m3: 1.204, kinematicViscosity_m2_s: 1.506e-5 };
/** Air of the base case. */
export const ROUND_AIR: StatedAir = { density_kg_m3: 1.2, kinematicViscosity_m2_s: 1.51e-5 };

export function solved(rig: Rig): Solution {
  const solution = solve(rig, stock);
  if (solution.outcome !== 'solved')
    throw new Error(`${solution.code} at ${solution.path}: ${solution.found}`);
  return solution;
}

/** Pa that a run asks for at a flow in L/s. */
export function runLoss(rig: Rig, flow_L_s: number): number {
  const curve = systemCurve(rig, stock, [flow_L_s]);
  if (!curve) throw new Error(`${rig.name} cannot be built`);
  return curve[0]!.pressure_Pa;
}

/** Enough of a fan for a rig to be legal; it takes no part in what the run asks for. */
const ANY_FAN: Piece = {
  id: 'fan',
  kind: 'fan',
  fan: {
    pressure: 'total',
    points: [
      { flow_L_s: 0, pressure_Pa: 200 },
      { flow_L_s: 200, pressure_Pa: 0 },
    ],
  },
};

/** A run in which only the given piece loses pressure: no loss at the mouth, none at the end. */
export function only(piece: Piece, air: Air = ROUND_AIR, faults: readonly Fault[] = []): Rig {
  const bore = piece.diameter_mm ?? 150;
  const mouth: Piece = { id: 'mouth', kind: 'grille', diameter_mm: bore, lossCoefficient: 0 };
  return { name: `only ${piece.id}`, air, run: [mouth, piece, ANY_FAN], faults };
}

/** Pa lost by a straight duct as the engine charges it. */
export function ductLoss(
  flow_L_s: number,
  duct: { material: string; diameter_mm: number; path_m: number; fullLength_m?: number },
  air: Air = STANDARD_AIR,
): number {
  return runLoss(only({ id: 'duct', kind: 'duct', ...duct }, air), flow_L_s);
}

/** Speed, velocity pressure and friction per metre of straight duct of any roughness. */
export function straight(
  bore_mm: number,
  flow_L_s: number,
  roughness_mm: number,
  air: StatedAir = STANDARD_AIR,
) {
  const bore = bore_mm / 1000;
  const velocity = flow_L_s / 1000 / ((Math.PI / 4) * bore ** 2);
  const velocityPressure = (air.density_kg_m3 / 2) * velocity ** 2;
  const reynolds = (velocity * bore) / air.kinematicViscosity_m2_s;
  const factor = frictionFactor(reynolds, roughness_mm / bore_mm);
  return { velocity, velocityPressure, reynolds, factor, perMetre: (factor / bore) * velocityPressure };
}

/** Reasons that many rows share. */
export const PRINTED = 'half a unit of the last printed digit';
export const SAME_FORMULA = 'the same formula worked twice: rounding of the printed value';
