/** A meter over the grille as one more piece of the run. On its own, so that a page may hold one without the rest. */
import type { Coefficient } from '../coefficients.ts';
import type { Rig } from '../types.ts';
import type { InstrumentKind } from './instrument.ts';

export const HELD_COEFFICIENTS = {
  /** What a meter over the grille costs, on the velocity pressure of the spigot. */
  poweredHoodLoss: {
    value: 0,
    low: 0,
    high: 0.05,
    mark: 'published',
    source:
      'its own fan brings the pressure in the hood to nothing; the upper limit, of a poor balance, is ours',
  },
  passiveHoodLoss: {
    value: 0.5,
    low: 0.2,
    high: 1,
    mark: 'model assumption',
    source: 'the larger hood of the worked example; published tests name added resistance without a figure',
  },
  vaneLoss: {
    value: 0.05,
    low: 0,
    high: 0.2,
    mark: 'model assumption',
    source:
      'a 100 mm head over about a quarter of the face of a 150 mm grille, half of the face velocity pressure lost there',
  },
  bagLoss: {
    value: 0.2,
    low: 0.1,
    high: 0.5,
    mark: 'model assumption',
    source:
      'the smaller hood of the worked example: a frame, and a thin bag that opens freely until it is full',
  },
} as const satisfies Record<string, Coefficient>;

/** What a meter held over the grille costs, K on the spigot's velocity pressure; 0 for one held elsewhere. */
export function heldLoss(kind: InstrumentKind): number {
  if (kind === 'powered-hood') return HELD_COEFFICIENTS.poweredHoodLoss.value;
  if (kind === 'passive-hood') return HELD_COEFFICIENTS.passiveHoodLoss.value;
  if (kind === 'vane-anemometer') return HELD_COEFFICIENTS.vaneLoss.value;
  return kind === 'bag' ? HELD_COEFFICIENTS.bagLoss.value : 0;
}

/** The rig with a meter held over its grilles, the pieces as they were; with none, as it is without. */
export function holdMeter(rig: Rig, kind: InstrumentKind | undefined): Rig {
  const held = kind === undefined ? 0 : heldLoss(kind);
  return {
    ...rig,
    run: rig.run.map((piece) =>
      piece.kind === 'grille' ? { ...piece, condition: { ...piece.condition, held } } : piece,
    ),
  };
}
