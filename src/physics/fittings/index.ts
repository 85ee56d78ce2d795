/** One line a kind of piece; the fan stands apart because it adds pressure. */
import type { Piece } from '../types.ts';
import type { Context, Part } from '../network.ts';
import { damperPart } from './damper.ts';
import { ductPart } from './duct.ts';
import { elbowPart } from './elbow.ts';
import { fanPart } from './fan.ts';
import { fittingPart } from './fitting.ts';
import { grillePart } from './grille.ts';
import { reducerPart } from './reducer.ts';
import { terminalPart } from './terminal.ts';

type Builders = {
  readonly [K in Piece['kind']]: (
    piece: Extract<Piece, { kind: K }>,
    context: Context,
    inletBore: number,
  ) => Part;
};

export const FITTINGS: Builders = {
  grille: grillePart,
  duct: ductPart,
  elbow: elbowPart,
  fan: fanPart,
  terminal: terminalPart,
  fitting: fittingPart,
  reducer: reducerPart,
  damper: damperPart,
};

/** `inletBore` (m) is the bore of the piece before, for pieces that state none. */
export function partOf<K extends Piece['kind']>(
  piece: Extract<Piece, { kind: K }>,
  context: Context,
  inletBore: number,
): Part {
  return FITTINGS[piece.kind as K](piece, context, inletBore);
}
