/** Where the duct trembles: at the piece that costs most per metre, the more the more it costs. */
import type { Rig, Solution } from '#physics';

/** Pa/m below which nothing trembles, and over which it trembles as far as it will (drawing only). */
const CALM = 15;
const WILD = 300;
/** Least and most it moves, px. */
const LEAST = 0.35;
const MOST = 1.5;

export interface Tremble {
  readonly piece: string;
  readonly px: number;
}

export function tremble({ run }: Rig, solution: Solution): Tremble | null {
  const losses = new Map(solution.pieces.map((piece) => [piece.id, Math.abs(piece.loss_Pa)]));
  let worst: Tremble | null = null;
  let most = CALM;
  run.forEach((piece, index) => {
    const bore = (piece.diameter_mm ?? run[index - 1]?.diameter_mm ?? 100) / 1000;
    let piece_m: number;
    if (piece.kind === 'duct') piece_m = piece.path_m;
    else if (piece.kind === 'elbow')
      piece_m = Math.max(bore, ((piece.angle_deg * Math.PI) / 180) * (piece.radiusRatio ?? 1) * bore);
    // What is wrong at the fan's mouth shakes the duct that is led to it; ends and flaps are not duct.
    else if (piece.kind === 'fan' || piece.kind === 'reducer') piece_m = bore;
    else return;
    const perMetre = (losses.get(piece.id) ?? 0) / Math.max(0.1, piece_m);
    if (perMetre <= most) return;
    most = perMetre;
    const shaken = piece.kind === 'fan' && index > 0 ? run[index - 1]!.id : piece.id;
    worst = { piece: shaken, px: LEAST + (MOST - LEAST) * Math.min(1, (perMetre - CALM) / (WILD - CALM)) };
  });
  return worst;
}
