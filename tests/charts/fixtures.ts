/** An invented fan and invented parabolas, enough to draw by. */
import type { CurvePoint } from '#physics';
import type { CrossingInput } from '../../src/charts/crossing.ts';
import type { Curve, LedgerEntry, Tone, WalkStation } from '../../src/charts/types.ts';

const flows = Array.from({ length: 63 }, (_, index) => index);
export const fan: CurvePoint[] = flows.map((flow_L_s) => ({
  flow_L_s,
  pressure_Pa: 185 * (1 - (flow_L_s / 62) ** 1.8) + 0.009 * flow_L_s ** 2,
}));

/** Parabola p = k q^2 and where it meets the fan, found by halving. */
export function system(id: string, label: string, k: number, tone: Tone): Curve {
  return { id, label, tone, points: flows.map((flow_L_s) => ({ flow_L_s, pressure_Pa: k * flow_L_s ** 2 })) };
}
export function meeting(k: number): CurvePoint {
  let low = 0;
  let high = 62;
  for (let step = 0; step < 60; step += 1) {
    const flow = (low + high) / 2;
    const rise = 185 * (1 - (flow / 62) ** 1.8) + 0.009 * flow ** 2;
    if (rise > k * flow ** 2) low = flow;
    else high = flow;
  }
  return { flow_L_s: low, pressure_Pa: k * low ** 2 };
}

const ks = [0.065, 0.1, 0.12, 0.16, 0.22, 0.31];
const labels = [
  'healthy run',
  'with sag',
  'with crimp',
  'with flexible',
  'with tight ties',
  'with extra length',
];

export function crossing(steps = 1, more: Partial<CrossingInput> = {}): CrossingInput {
  return {
    fan,
    curves: ks.slice(0, steps + 1).map((k, index) => {
      const tone: Tone =
        index === steps ? 'present' : index === 0 ? 'healthy' : index === steps - 1 ? 'before' : 'ghost';
      return system(`s${index}`, labels[index]!, k, tone);
    }),
    point: meeting(ks[steps]!),
    before: steps > 0 ? meeting(ks[steps - 1]!) : null,
    predicted: 38,
    required: 25,
    choice: { flow: 'L/s', pressure: 'Pa' },
    extent: { flow_L_s: 65, pressure_Pa: 220 },
    ...more,
  };
}

export const entries: LedgerEntry[] = [
  { id: 'healthy', label: 'Healthy run', kind: 'opening', flow_L_s: 41.66, before_L_s: 41.66 },
  { id: 'sag', label: 'Sag', kind: 'debit', flow_L_s: 33.84, before_L_s: 41.66 },
  { id: 'mended', label: 'Sag put right', kind: 'credit', flow_L_s: 38.02, before_L_s: 33.84 },
  { id: 'crimp', label: 'Crimp at the fan', kind: 'pending', flow_L_s: 38.02, before_L_s: 38.02 },
];

export const stations: WalkStation[] = [
  { x: 120, total_Pa: 0, static_Pa: 0, after: 'room' },
  { x: 130, total_Pa: -6.2, static_Pa: -17, after: 'grille' },
  { x: 220, total_Pa: -24.3, static_Pa: -35, after: 'inlet' },
  { x: 270, total_Pa: 78.4, static_Pa: 67, after: 'fan' },
  { x: 560, total_Pa: 12.1, static_Pa: 1.3, after: 'out' },
  { x: 580, total_Pa: 0, static_Pa: 0, after: 'cowl' },
];
