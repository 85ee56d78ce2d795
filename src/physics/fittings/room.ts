/** Replacement air squeezing into the room through a door gap or vent: an opening in series with the run. */
import type { Room } from '../types.ts';
import { type Context, type Part } from '../network.ts';

/** What is left open when a room is sealed as far as it goes, mm2: a door shut on its seals. */
export const SEALED_LEAVES_MM2 = 2000;

/** `sealed` 0 to 1 is that opening over what is left; it stands in series with the opening stated, if any. */
export function roomPart(
  room: Room | undefined,
  sealed: number,
  context: Context,
  diameter: number,
): Part | null {
  const stated = room?.makeUpFreeArea_mm2;
  if (stated === undefined && sealed === 0) return null;
  const discharge = context.coefficients.makeUpDischarge;
  let scale = 0;
  if (stated !== undefined) {
    const area = discharge * stated * 1e-6;
    scale = context.air.density / 2 / area ** 2;
  }
  if (sealed > 0) {
    scale += context.air.density / 2 / (discharge * (SEALED_LEAVES_MM2 / sealed) * 1e-6) ** 2;
    context.assume('sealed-room', 'room');
  }
  context.assume('make-up-opening', 'room');
  return {
    id: 'room',
    kind: 'room',
    diameter,
    terms: [{ cause: 'make-up', loss: (flow) => scale * flow * flow }],
    shape: {},
  };
}
