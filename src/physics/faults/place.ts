/** Reaching one piece of a rig and giving back a changed copy. */
import type { DuctCondition, Piece, Rig } from '../types.ts';

function onPiece(rig: Rig, at: string, change: (piece: Piece) => Piece): Rig {
  return { ...rig, run: rig.run.map((piece) => (piece.id === at ? change(piece) : piece)) };
}

export function onDuct(rig: Rig, at: string, change: (condition: DuctCondition) => DuctCondition): Rig {
  return onPiece(rig, at, (piece) =>
    piece.kind === 'duct' ? { ...piece, condition: change(piece.condition ?? {}) } : piece,
  );
}

export function onFan(rig: Rig, at: string, change: (flattened: number) => number): Rig {
  return onPiece(rig, at, (piece) =>
    piece.kind === 'fan'
      ? { ...piece, condition: { inletFlattening: change(piece.condition?.inletFlattening ?? 0) } }
      : piece,
  );
}
