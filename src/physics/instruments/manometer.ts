/** A manometer: one tube at a station of the run, the other in still air or at a second station. */
import { solve } from '../solve.ts';
import { noPlace, show, type InstrumentDefinition } from './instrument.ts';

/** It takes no air, so it disturbs nothing. Reads 0 to 0 where both tubes are in one place. */
export const manometer: InstrumentDefinition = {
  kind: 'manometer',
  unit: 'Pa',
  read: ({ rig, stock, coefficients }, place, figures, errors, { pressure = 'static', from }) => {
    const solution = solve(rig, stock, coefficients);
    if (solution.outcome === 'failed') return solution;
    const allowed = solution.stations.map(({ after }) => after).join(', ');
    const at = (name: string) => {
      const station = solution.stations.find(({ after }) => after === name);
      return station && (pressure === 'total' ? station.totalPressure_Pa : station.staticPressure_Pa);
    };
    const here = at(place);
    if (here === undefined) return noPlace(place, allowed);
    const there = from === undefined ? 0 : at(from);
    if (there === undefined) return noPlace(from!, allowed);
    const present = here - there;
    return {
      instrument: 'manometer',
      unit: 'Pa',
      ...show(figures, present, errors),
      present,
      undisturbed: present,
      flow_L_s: null,
    };
  },
};
