/**
 * From a rig to the run a network solver takes, by formulas written here again: areas, necks, lengths by
 * stepping along the sag, compression, the fan's points. Bends come from the engine's own `bendLoss`, which
 * has checks of its own. Friction is the solver's; it takes Swamee and Jain, so a pipe's length is set by
 * the ratio of Colebrook (found here by plain iteration) to that at the flow of the answer.
 */
import {
  applyFaults,
  bendLoss,
  elbowLoss,
  monotoneCubic,
  type Duct,
  type FanTable,
  type Rig,
} from '#physics';
import type { Run, LeakPlace, Pipe, Pump } from './support-epanet.ts';
import { stock } from './support.ts';

type Air = Required<Pick<NonNullable<Rig['air']>, 'density_kg_m3' | 'kinematicViscosity_m2_s'>>;

const areaOf = (bore_mm: number) => (Math.PI / 4) * (bore_mm / 1000) ** 2;
export const reynoldsOf = (flow_L_s: number, bore_mm: number, viscosity: number) =>
  (flow_L_s / 1000 / areaOf(bore_mm)) * (bore_mm / 1000 / viscosity);

/** Colebrook over Swamee and Jain. */
function frictionRatio(reynolds: number, roughness: number): number {
  if (reynolds < 4000) return 1;
  let x = 7;
  for (let i = 0; i < 60; i++) x = -2 * Math.log10(roughness / 3.7 + (2.51 * x) / reynolds);
  return (1 / x ** 2) * 4 * Math.log10(roughness / 3.7 + 5.74 / reynolds ** 0.9) ** 2;
}

const sharp = (open: number) => ((0.707 * (1 - open) ** 0.375 + 1 - open) / open) ** 2;
function thick(open: number): number {
  const lip = 0.5 ** 8 / (0.05 + 0.5 ** 8);
  const tau = 1.9 / 10 ** (0.25 + 0.535 * lip);
  return (0.5 * (1 - open) ** 0.75 + tau * (1 - open) ** 1.375 + (1 - open) ** 2 + 0.01) / open ** 2;
}
/** Edge radius 0.08 of the neck. */
const rounded = (open: number) =>
  ((Math.sqrt(0.03 + 0.47 / 10 ** (7.7 * 0.08)) * (1 - open) ** 0.375 + 1 - open) / open) ** 2;

/** Length of a parabola of unit span, by 2000 chords. */
function arc(ratio: number): number {
  let length = 0;
  for (let i = 0; i < 2000; i++) {
    const y = (x: number) => 4 * ratio * x * (1 - x);
    length += Math.hypot(1 / 2000, y((i + 1) / 2000) - y(i / 2000));
  }
  return length;
}

interface Stretch {
  readonly roughness_mm: number;
  readonly length_m: number;
}

/** What a duct loses: equal lengths of one or two walls, and a loss coefficient at a flow. */
function duct(piece: Duct, air: Air): { stretches: Stretch[]; minor: (flow: number) => number } {
  const { diameter_mm: bore, path_m: path, condition = {}, supports, bends = [] } = piece;
  const material = stock.materials[piece.material]!;
  const wall = piece.roughness_mm ?? material.roughness_mm;
  const spans = Math.max(1, Math.ceil(path / (condition.span_m ?? supports?.spacing_m ?? 1.2) - 1e-9));
  const ratio = condition.sagRatio ?? 0;
  const hung = path * (ratio > 0 ? arc(ratio) : 1);
  const draped = condition.draped_m ?? 0;
  const full = Math.max(piece.fullLength_m ?? path, hung) + (condition.bunched_m ?? 0) + draped;
  const used = hung + draped;
  const times = (behaviour: string, missing: number) =>
    behaviour === 'flexible'
      ? 1 + 58 * missing * Math.exp(-0.00496 * bore)
      : behaviour === 'semi-rigid'
        ? 1 + Math.min(0.3, missing)
        : 1;
  const share = condition.swap?.share ?? 0;
  const crushed = 1 - (condition.crushed ?? 0) ** 2;
  const stretches: Stretch[] = [
    {
      roughness_mm: wall,
      length_m:
        used * times(material.behaviour, 1 - used / full) -
        share * path +
        Math.min(path, 1) * (1 / crushed ** 3 - 1),
    },
  ];
  const swapped = condition.swap && stock.materials[condition.swap.material]!;
  if (swapped)
    stretches.push({
      roughness_mm: swapped.roughness_mm,
      length_m: share * path * times(swapped.behaviour, 0.15),
    });

  const turn = 2 * Math.atan(4 * ratio);
  const spread = Math.min(2, 0.5 + (supports?.width_mm ?? 75) / bore);
  const degrees = (180 / Math.PI) * turn;
  const dented = 1 - (condition.dented ?? 0) ** 2;
  const ties =
    condition.tieRatio === undefined ? 0 : Math.max(1, spans - 1) * rounded(condition.tieRatio ** 2);
  const still =
    (condition.tieRatio === 1 ? 0 : ties) +
    (condition.crushed ? thick(crushed) - thick(1) : 0) +
    (condition.dented ? Math.max(1, Math.round(path / 0.5)) * rounded(dented) : 0);
  const minor = (flow: number) => {
    const reynolds = reynoldsOf(flow, bore, air.kinematicViscosity_m2_s);
    const bend = (angle: number, radius: number, rough = wall) =>
      bendLoss(angle, radius, reynolds, rough / bore);
    let sum = still + 2 * draped * bend(90, 1);
    for (const { angle_deg, radiusRatio } of bends) {
      sum += (1 - share) * bend(angle_deg, radiusRatio);
      if (swapped) sum += share * bend(angle_deg, radiusRatio, swapped.roughness_mm);
    }
    if (ratio > 0)
      sum +=
        spans * bend(degrees, (1000 * path) / spans / (8 * ratio) / bore) +
        (spans - 1) * bend(degrees, spread / turn);
    return sum;
  };
  return { stretches, minor };
}

const EXITS = { 'open-end': 1, 'wall-cowl': 2.5, 'rain-cap': 2, 'high-rain-cap': 1.2, louvre: 6.25 } as const;
const CLASSES = { A: 0.027, B: 0.009, C: 0.003, D: 0.001 } as const;

function pump(table: FanTable, speed: number, bore_mm: number, density: number): Pump {
  const flows = table.points.map((point) => point.flow_L_s);
  const last = flows.at(-1)!;
  const rated = monotoneCubic(
    flows,
    table.points.map((point) => point.pressure_Pa),
  );
  const outlet = table.outletDiameter_mm ?? bore_mm;
  const total = (flow: number) =>
    rated.value(flow) + (table.pressure === 'static' ? 0.6 * (flow / 1000 / areaOf(outlet)) ** 2 : 0);
  const curve = Array.from({ length: 401 }, (_, i) => {
    const flow = (last * i) / 400;
    return [flow * speed, (density / 1.2) * speed ** 2 * total(flow)] as const;
  });
  return { kind: 'pump', curve };
}

/** Leaks of a joint and of a wall in `nodes` places, as written in the rig or put in by its faults. */
function leaksOf(
  piece: Duct,
  density: number,
): { joint: LeakPlace | null; wall: LeakPlace | null; nodes: number } {
  const { diameter_mm: bore, path_m: path } = piece;
  const { gap_mm = 0, weep_mm = 0 } = piece.condition?.joint ?? {};
  const ring = (gap: number) => (Math.PI * bore * gap) / 1e6;
  // A weep passes at 50 Pa what a hole of its gap would, and follows the exponent of a seam.
  const weep = 1000 * 0.6 * ring(weep_mm) * Math.sqrt(2 / density) * 50 ** (0.5 - 0.65);
  const crack = weep + (piece.jointLeak?.coefficient_L_s ?? 0);
  const nodes = Math.min(16, Math.max(4, Math.ceil(path)));
  const wall = (piece.leakClass ? CLASSES[piece.leakClass] : 0) * ((Math.PI * bore) / 1000) * path;
  const place = (crack_L_s: number, gap: number): LeakPlace => ({
    kind: 'leak',
    bore_mm: bore,
    crack_L_s,
    ...(gap > 0 ? { hole: { area_m2: ring(gap), discharge: 0.6 } } : {}),
  });
  return {
    joint: crack > 0 || gap_mm > 0 ? place(crack, gap_mm) : null,
    wall: wall > 0 ? place(wall / nodes, 0) : null,
    nodes,
  };
}

/** `corrected: false` leaves the solver's own friction as it stands. Air must be stated outright. */
export function runOf(rig: Rig, { corrected = true } = {}): Run {
  const air = rig.air as Air;
  const density = air.density_kg_m3;
  const worked = applyFaults(rig);
  const elements: (Pipe | LeakPlace | Pump)[] = [];
  const pipe = (bore_mm: number, stretch: Stretch | null, minor: (flow: number) => number, share = 1) => {
    const rough = stretch?.roughness_mm ?? 0.0001;
    const length = (flow: number) => {
      if (!stretch) return 0.001;
      const reynolds = reynoldsOf(flow, bore_mm, air.kinematicViscosity_m2_s);
      const times = corrected ? frictionRatio(reynolds, rough / bore_mm) : 1;
      return Math.max(1e-5, share * stretch.length_m * times);
    };
    elements.push({
      kind: 'pipe',
      bore_mm,
      roughness_mm: rough,
      length,
      minor: (flow) => share * minor(flow),
    });
  };
  const plain = (bore_mm: number, coefficient: number) => pipe(bore_mm, null, () => coefficient);
  const first = worked.run[0]!.diameter_mm!;
  const opening = worked.room?.makeUpFreeArea_mm2;
  if (opening) plain(first, (areaOf(first) / (0.6 * opening * 1e-6)) ** 2);
  let behindFan = false;
  for (const piece of worked.run) {
    const bore = piece.diameter_mm ?? first;
    if (piece.kind === 'fan') {
      const flattened = piece.condition?.inletFlattening ?? 0;
      const open = 1 - flattened ** 2;
      if (flattened > 0) plain(bore, thick(open) - thick(1) + Math.min(2.5, (1 / open - 1) ** 2 / 2));
      const table = typeof piece.fan === 'string' ? stock.fans[piece.fan]! : piece.fan;
      elements.push(pump(table, piece.speed ?? 1, bore, density));
      behindFan = true;
    } else if (piece.kind === 'grille') {
      const free = (piece.freeArea ?? 0.7) * (1 - (piece.condition?.blocked ?? 0));
      plain(bore, piece.lossCoefficient ?? sharp(free) + 0.5);
    } else if (piece.kind === 'terminal') plain(bore, piece.lossCoefficient ?? EXITS[piece.form]);
    else if (piece.kind === 'fitting') plain(bore, piece.lossCoefficient);
    else if (piece.kind === 'elbow') {
      const { form, angle_deg, radiusRatio } = piece;
      if (form !== 'flexible') plain(bore, elbowLoss(form, bore, angle_deg, radiusRatio));
      else
        pipe(bore, null, (flow) =>
          bendLoss(
            angle_deg,
            radiusRatio ?? 1,
            reynoldsOf(flow, bore, air.kinematicViscosity_m2_s),
            0.9 / bore,
          ),
        );
    } else if (piece.kind === 'duct') {
      const { stretches, minor } = duct(piece, air);
      const { joint, wall, nodes } = leaksOf(piece, density);
      const lay = (share: number) =>
        stretches.forEach((stretch, i) => pipe(bore, stretch, i === 0 ? minor : () => 0, share));
      if (joint && behindFan) elements.push(joint);
      if (!wall) lay(1);
      else
        for (let node = 0; node <= nodes; node++) {
          lay((node === 0 || node === nodes ? 0.5 : 1) / nodes);
          if (node < nodes) elements.push(wall);
        }
      if (joint && !behindFan) elements.push(joint);
    } else throw new Error(`no mapping for a ${piece.kind}`);
  }
  return {
    density_kg_m3: density,
    viscosity_m2_s: air.kinematicViscosity_m2_s,
    outdoors_Pa: rig.outdoors?.wind_Pa ?? 0,
    roofSpace_Pa: rig.roofSpace?.pressure_Pa ?? 0,
    elements,
  };
}
