/** A pitot tube taken across a duct point by point; the profile it meets is a power law (model assumption). */
import { solve } from '../solve.ts';
import { METER_COEFFICIENTS } from './coefficients.ts';
import { noPlace, showSeen, standardAt, type InstrumentDefinition } from './instrument.ts';
import { flowAt } from './place.ts';
import { powerProfile, powerProfileMean, TRAVERSE_DEPTHS, traverseOf } from './traverse.ts';

/**
 * One diameter, the profile being the same on all. The fresh part of the error falls on each point by
 * itself, so large that the mean has the stated one; the tube blocks nothing (a rod of 6 mm in 100 mm
 * covers 8 % of the section, which is left out: model assumption).
 */
export const pitot: InstrumentDefinition = {
  kind: 'pitot-traverse',
  unit: 'm/s',
  read: ({ rig, stock, coefficients }, place, figures, errors, { method = 'log-linear', points = 6 }) => {
    const piece = rig.run.find(({ id }) => id === place);
    if (piece?.kind !== 'duct') return noPlace(place, 'a duct');
    const solution = solve(rig, stock, coefficients);
    if (solution.outcome === 'failed') return solution;
    const area = (Math.PI / 4) * (piece.diameter_mm / 1000) ** 2;
    const mean = flowAt(solution, place) / 1000 / area;
    const density = solution.air.density_kg_m3;
    const n = METER_COEFFICIENTS.profilePower.value;
    const step = METER_COEFFICIENTS.pitotStep_Pa.value;
    const share = mean === 0 ? 0 : standardAt(figures, mean) / mean;
    const pressures = TRAVERSE_DEPTHS[method][points].map((depth) => {
      const there = (mean * powerProfile(depth, n)) / powerProfileMean(n);
      const seen = there * (1 + share * (errors.own + Math.sqrt(points) * errors.fresh()));
      const pressure = (density / 2) * seen * Math.abs(seen);
      return Math.round(pressure / step) * step;
    });
    const traverse = traverseOf(method, points, pressures, density);
    const seen = showSeen(figures, traverse.mean_m_s, mean);
    return {
      instrument: 'pitot-traverse',
      unit: 'm/s',
      ...seen,
      present: mean,
      undisturbed: mean,
      flow_L_s: seen.shown === null ? null : seen.shown * area * 1000,
      traverse,
    };
  },
};
