/** The meters, each turning the true state of a run into what it would show. */
import { flowAt } from './place.ts';
import {
  noPlace,
  show,
  type Bench,
  type InstrumentDefinition,
  type InstrumentFigures,
  type InstrumentKind,
} from './instrument.ts';
import { solveWithHood } from './insertion.ts';
import { powerProfile, powerProfileMean, traverseMean } from './traverse.ts';

/**
 * Resistance a meter adds at the grille, on the spigot's velocity pressure. A powered hood nulls its own; the
 * others are model assumptions: 0.2 to 0.5 are the hoods of the worked example.
 */
export const INSERTION_LOSS = {
  'powered-hood': 0,
  'passive-hood': 0.5,
  'vane-anemometer': 0,
  bag: 0.2,
} as const;

/** Flow-reading meters held over the grille. */
function overGrille(kind: 'powered-hood' | 'passive-hood' | 'bag'): InstrumentDefinition {
  return {
    kind,
    unit: 'L/s',
    read: (bench, place, figures, random) => {
      const flows = flowsAtGrille(bench, place, INSERTION_LOSS[kind]);
      if ('outcome' in flows) return flows;
      const seen = show(figures, flows.present, random);
      return { instrument: kind, unit: 'L/s', ...seen, ...flows, flow_L_s: seen.shown };
    },
  };
}

function flowsAtGrille(bench: Bench, place: string, loss: number) {
  const grille = bench.rig.run.find(({ id }) => id === place);
  if (grille?.kind !== 'grille') return noPlace(place, 'a grille');
  const free = solveWithHood(bench, place, 0);
  if (free.outcome === 'failed') return free;
  const held = loss > 0 ? solveWithHood(bench, place, loss) : free;
  if (held.outcome === 'failed') return held;
  return { present: flowAt(held, place), undisturbed: flowAt(free, place) };
}

/** Gross face over spigot area, and the factor on mean face speed, for a plain grille (model assumption; 0.7 to 1, from memory). */
export const FACE = { areaOverSpigot: 1.6, factor: 0.85 } as const;

const vane: InstrumentDefinition = {
  kind: 'vane-anemometer',
  unit: 'm/s',
  read: (bench, place, figures, random) => {
    const flows = flowsAtGrille(bench, place, INSERTION_LOSS['vane-anemometer']);
    if ('outcome' in flows) return flows;
    const grille = bench.rig.run.find(({ id }) => id === place);
    const bore = grille && 'diameter_mm' in grille ? (grille.diameter_mm ?? 0) / 1000 : 0;
    const litresPerSpeed = FACE.factor * FACE.areaOverSpigot * (Math.PI / 4) * bore ** 2 * 1000;
    const seen = show(figures, flows.present / litresPerSpeed, random);
    return {
      instrument: 'vane-anemometer',
      unit: 'm/s',
      ...seen,
      present: flows.present / litresPerSpeed,
      undisturbed: flows.undisturbed / litresPerSpeed,
      flow_L_s: seen.shown === null ? null : seen.shown * litresPerSpeed,
    };
  },
};

const manometer: InstrumentDefinition = {
  kind: 'manometer',
  unit: 'Pa',
  read: (bench, place, figures, random) => {
    const solution = solveWithHood(bench, '', 0);
    if (solution.outcome === 'failed') return solution;
    const station = solution.stations.find(({ after }) => after === place);
    if (!station) return noPlace(place, 'a piece of the run');
    const present = station.staticPressure_Pa;
    return {
      instrument: 'manometer',
      unit: 'Pa',
      ...show(figures, present, random),
      present,
      undisturbed: present,
      flow_L_s: null,
    };
  },
};

/** Six points on each diameter by the log-linear rule, of a 1/7-power profile (model assumption). */
const pitot: InstrumentDefinition = {
  kind: 'pitot-traverse',
  unit: 'm/s',
  read: (bench, place, figures, random) => {
    const piece = bench.rig.run.find(({ id }) => id === place);
    if (piece?.kind !== 'duct') return noPlace(place, 'a duct');
    const solution = solveWithHood(bench, '', 0);
    if (solution.outcome === 'failed') return solution;
    const area = (Math.PI / 4) * (piece.diameter_mm / 1000) ** 2;
    const mean = flowAt(solution, place) / 1000 / area;
    const bias = traverseMean('log-linear', 6, powerProfile) / powerProfileMean();
    const seen = show(figures, mean * bias, random);
    return {
      instrument: 'pitot-traverse',
      unit: 'm/s',
      ...seen,
      present: mean,
      undisturbed: mean,
      flow_L_s: seen.shown === null ? null : seen.shown * area * 1000,
    };
  },
};

/** Flow by a bag of known volume filled in a measured time, L/s. */
export function bagFlow_L_s(volume_L: number, seconds: number): number | null {
  return seconds > 0 ? volume_L / seconds : null;
}

export const INSTRUMENTS: Readonly<Record<InstrumentKind, InstrumentDefinition>> = {
  'powered-hood': overGrille('powered-hood'),
  'passive-hood': overGrille('passive-hood'),
  'vane-anemometer': vane,
  manometer,
  'pitot-traverse': pitot,
  bag: overGrille('bag'),
};

/** A seed entry, whose keys carry their unit, as plain figures. */
export function figuresOf(entry: {
  readonly measures: string;
  readonly errorShare?: number;
  readonly [key: string]: unknown;
}): InstrumentFigures {
  const measures = entry.measures as InstrumentFigures['measures'];
  const unit = { flow: 'L_s', velocity: 'm_s', pressure: 'Pa' }[measures];
  return {
    measures,
    errorShare: entry.errorShare,
    error: entry[`error_${unit}`] as number | undefined,
    range: entry[`range_${unit}`] as [number, number],
    resolution: entry[`resolution_${unit}`] as number,
  };
}
