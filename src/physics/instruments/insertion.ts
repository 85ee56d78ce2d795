/** What a hood over the grille takes from the flow it is there to measure. */
import { solve } from '../solve.ts';
import type { Failure, Rig, Solution } from '../types.ts';
import type { Bench } from './instrument.ts';

/**
 * The rig with a resistance at a grille, K on the velocity pressure of its spigot, a ratio; the rig itself where that
 * is not above 0 or `grille` names none. It is set behind the face:
 * a run that does not begin with its grille would be charged the entry of a bare duct end as well.
 */
export function withHood(rig: Rig, grille: string, lossCoefficient: number): Rig {
  if (!(lossCoefficient > 0)) return rig;
  return {
    ...rig,
    run: rig.run.flatMap((piece) =>
      piece.id === grille && piece.kind === 'grille'
        ? [
            piece,
            {
              id: `${grille}/hood`,
              kind: 'fitting' as const,
              diameter_mm: piece.diameter_mm,
              lossCoefficient,
            },
          ]
        : [piece],
    ),
  };
}

/** The bench solved with such a resistance, K on the spigot's velocity pressure, a ratio; the `Failure` of a rig with no answer. */
export function solveWithHood(
  { rig, stock, coefficients }: Bench,
  grille: string,
  lossCoefficient: number,
): Solution | Failure {
  return solve(withHood(rig, grille, lossCoefficient), stock, coefficients);
}

/**
 * Flow lost to a hood by a straight line through both curves, L/s: its pressure over the difference of
 * their slopes (Pa per L/s: the run's above 0, the fan's below). Add it to the reading. A first-order Taylor
 * step; within 0.03 L/s of the exact answer in the worked example of tests/reference/instruments.test.ts.
 */
export function hoodCorrection_L_s(hood_Pa: number, runSlope: number, fanSlope: number): number {
  return hood_Pa / (runSlope - fanSlope);
}
