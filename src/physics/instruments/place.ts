/** What passes a piece, as the solution has it. */
import type { Solution } from '../types.ts';

/** L/s that enters the piece; 0 for one that is not in the run. */
export function flowAt(solution: Solution, place: string): number {
  return solution.pieces.find(({ id }) => id === place)?.flow_L_s ?? 0;
}
