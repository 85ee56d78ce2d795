/** Replacement air squeezing into the room through a door gap or vent: an opening in series with the run. */
import type { Room } from '../types.ts';
import { type Context, type Part } from '../network.ts';

export function roomPart(room: Room, context: Context, diameter: number): Part | null {
  if (room.makeUpFreeArea_mm2 === undefined) return null;
  const area = context.coefficients.makeUpDischarge * room.makeUpFreeArea_mm2 * 1e-6;
  const scale = context.air.density / 2 / area ** 2;
  context.assume('make-up-opening', 'room');
  return {
    id: 'room',
    kind: 'room',
    diameter,
    terms: [{ cause: 'make-up', loss: (flow) => scale * flow * flow }],
    shape: {},
  };
}
