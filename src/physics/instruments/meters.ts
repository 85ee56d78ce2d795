/** The meters, each turning the true state of a run into what it would show. */
import { METER_COEFFICIENTS } from './coefficients.ts';
import { heldLoss } from './held.ts';
import { solveWithHood } from './insertion.ts';
import {
  noPlace,
  show,
  type Bench,
  type InstrumentDefinition,
  type InstrumentFigures,
  type InstrumentKind,
} from './instrument.ts';
import { manometer } from './manometer.ts';
import { pitot } from './pitot.ts';
import { flowAt } from './place.ts';

/** Flow-reading meters held over the grille, with what they add on the spigot's velocity pressure. */
function overGrille(kind: InstrumentKind): InstrumentDefinition {
  return {
    kind,
    unit: 'L/s',
    read: (bench, place, figures, errors) => {
      const flows = flowsAtGrille(bench, place, heldLoss(kind));
      if ('outcome' in flows) return flows;
      const seen = show(figures, flows.present, errors);
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

/** Mean speed at the gross face of the grille, made a flow by area and grille factor. */
const vane: InstrumentDefinition = {
  kind: 'vane-anemometer',
  unit: 'm/s',
  read: (bench, place, figures, errors) => {
    const flows = flowsAtGrille(bench, place, heldLoss('vane-anemometer'));
    if ('outcome' in flows) return flows;
    const grille = bench.rig.run.find(({ id }) => id === place);
    const bore = grille && 'diameter_mm' in grille ? (grille.diameter_mm ?? 0) / 1000 : 0;
    const { faceArea, faceFactor } = METER_COEFFICIENTS;
    const litresPerSpeed = faceFactor.value * faceArea.value * (Math.PI / 4) * bore ** 2 * 1000;
    const seen = show(figures, flows.present / litresPerSpeed, errors);
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

/**
 * Flow by a bag of known volume (L) filled in a measured time (s), L/s; null where the time is not above 0
 * (published cheap check, see the bag's entry in the catalogue).
 */
export function bagFlow_L_s(volume_L: number, seconds: number): number | null {
  return seconds > 0 ? volume_L / seconds : null;
}

/** One definition a kind; `meter` makes an instrument with an error of its own from it. */
export const INSTRUMENTS: Readonly<Record<InstrumentKind, InstrumentDefinition>> = {
  'powered-hood': overGrille('powered-hood'),
  'passive-hood': overGrille('passive-hood'),
  'vane-anemometer': vane,
  manometer,
  'pitot-traverse': pitot,
  bag: overGrille('bag'),
};

/** A catalogue entry, whose keys carry their unit, as plain figures in that unit (L/s, m/s or Pa). */
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
