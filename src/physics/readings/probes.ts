/** Where a run can be read, and what a solution has there. */
import type { Solution } from '../types.ts';

export type FlowAt = keyof Solution['flow_L_s'];

/** A flow in L/s, or a pressure in Pa at a station (`Station.after`) against the still air around the house. */
export type Probe =
  | { readonly kind: 'flow'; readonly at: FlowAt }
  | { readonly kind: 'static' | 'total'; readonly after: string };

export interface Observation {
  readonly probe: Probe;
  /** L/s or Pa. */
  readonly value: number;
  /** Standard error (one sigma), above 0, in the same unit. What the model itself may be off belongs in it. */
  readonly standard: number;
}

/** What a solution has at a probe, L/s or Pa; null at a station it does not have. */
export function probed(solution: Solution, probe: Probe): number | null {
  if (probe.kind === 'flow') return solution.flow_L_s[probe.at];
  const station = solution.stations.find(({ after }) => after === probe.after);
  if (!station) return null;
  return probe.kind === 'total' ? station.totalPressure_Pa : station.staticPressure_Pa;
}
