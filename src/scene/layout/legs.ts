/**
 * The run as a walk of straights and arcs: up from the ceiling, over at the first bend, then level to
 * the wall. Ducts keep their length to scale; fittings are drawn at the size of their enlarged bore.
 */
import type { Bend, Piece, PieceShape } from '#physics';
import { reachOf } from './ends.ts';
import { across, jog, loops, radians, type Leg } from './features.ts';
import { clamp } from './numbers.ts';
import type { Scale } from './scale.ts';
import type { Sizes } from './sizes.ts';

export interface Walk {
  readonly legs: readonly Leg[];
  /** Drawn height of the ceiling face to the level axis. */
  readonly climb: number;
  /** Id of a piece too long to stand up in the roof space, drawn short with a break mark. */
  readonly broken: string | null;
}

/** Bore of any piece; a fan that does not say takes its neighbour's. */
export function bore_mm(run: readonly Piece[], index: number): number {
  const own = run[index]?.diameter_mm;
  if (own) return own;
  for (let step = 1; step < run.length; step += 1) {
    const near = run[index - step]?.diameter_mm ?? run[index + step]?.diameter_mm;
    if (near) return near;
  }
  return 100;
}

/** Which piece makes the turn from rising to level: the first bend before the fan, else the first duct, else the grille. */
export function turner(run: readonly Piece[]): number {
  const fan = run.findIndex((piece) => piece.kind === 'fan');
  const before = run.slice(0, fan < 0 ? run.length : fan);
  const bend = before.findIndex(
    (piece) => piece.kind === 'elbow' || (piece.kind === 'duct' && !!piece.bends?.length),
  );
  if (bend >= 0) return bend;
  const duct = before.findIndex((piece) => piece.kind === 'duct');
  return duct >= 0 ? duct : 0;
}

/** Level stretch of duct with its jogs and loops set evenly in it. */
function level(
  piece: Piece & { kind: 'duct' },
  room: number,
  bends: readonly Bend[],
  bore: number,
  shape: PieceShape,
  scale: Scale,
  drop: number,
  side: { down: boolean },
): Leg[] {
  const features: Leg[][] = [];
  for (const bend of bends) {
    features.push(jog(piece.id, bend, bore, side.down));
    side.down = !side.down;
  }
  const taken = features.reduce((sum, feature) => sum + across(feature), 0);
  if (shape.drapedLoops) {
    const sag = (shape.sag_m ?? 0) / (shape.span_m ?? 1);
    // Arc of a shallow parabola, 1 + 8/3 r^2: what the belly uses is not in the loops.
    const extra =
      Math.max(0, (shape.usedLength_m ?? 0) - piece.path_m * (1 + (8 / 3) * sag ** 2)) * scale.pixelsPerMetre;
    const clear = drop - bore / 2 - (shape.sag_m ?? 0) * scale.pixelsPerMetre * scale.enlargement;
    features.push(...loops(piece.id, room - taken, shape.drapedLoops, bore, extra, Math.max(1, clear)));
  }
  const used = features.reduce((sum, feature) => sum + across(feature), 0);
  const gap = Math.max(bore * 0.05, (room - used) / (features.length + 1));
  const plain: Leg = { piece: piece.id, length: gap, turn: 0, metres: 0 };
  return [plain, ...features.flatMap((feature) => [...feature, plain])];
}

/** Spreads a piece's metres over its legs by their drawn length. */
function share(legs: Leg[], metres: number): Leg[] {
  const total = legs.reduce((sum, leg) => sum + leg.length, 0) || 1;
  return legs.map((leg) => ({ ...leg, metres: (metres * leg.length) / total }));
}

export function walk(
  run: readonly Piece[],
  scale: Scale,
  size: Sizes,
  shapes: ReadonlyMap<string, PieceShape>,
): Walk {
  const corner = turner(run);
  const px = (index: number) => (bore_mm(run, index) / 1000) * scale.pixelsPerMetre * scale.enlargement;
  const climb = size.ceiling + size.board - size.axis;
  const neckLeast = size.ceiling + size.board - size.joistTop;
  const legs: Leg[] = [];
  const side = { down: true };
  let broken: string | null = null;

  const cornerPiece = run[corner];
  const own =
    cornerPiece?.kind === 'duct'
      ? cornerPiece.bends?.[0]?.radiusRatio
      : cornerPiece?.kind === 'elbow'
        ? (cornerPiece.radiusRatio ?? 1)
        : undefined;
  const radius = Math.min(clamp(own ?? 1.6, 0.7, 2) * px(corner), climb - neckLeast);
  const arc = radius * (Math.PI / 2);
  const standing = run
    .slice(1, corner)
    .map((piece, k) => (piece.kind === 'duct' ? piece.path_m * scale.pixelsPerMetre : px(k + 1) * 0.8));
  const wanted = standing.reduce((sum, length) => sum + length, 0);
  const most = climb - neckLeast - radius;
  const squeeze = wanted > most ? most / wanted : 1;
  const free = most - wanted * squeeze;
  let riser = 0;
  if (corner > 0 && cornerPiece?.kind === 'duct')
    riser = clamp(cornerPiece.path_m * scale.pixelsPerMetre - arc, 0, free);
  const neck = climb - radius - wanted * squeeze - riser;

  run.forEach((piece, index) => {
    const bore = px(index);
    const metres =
      piece.kind === 'duct'
        ? piece.path_m
        : piece.kind === 'elbow'
          ? radians(piece.angle_deg) * (piece.radiusRatio ?? 1) * (piece.diameter_mm / 1000)
          : 0;
    const turn: Leg = { piece: piece.id, length: arc, turn: Math.PI / 2, metres: 0 };
    let own: Leg[] = [];
    if (index === 0) own.push({ piece: piece.id, length: neck, turn: 0, metres: 0 });
    else if (index < corner) {
      own.push({ piece: piece.id, length: standing[index - 1]! * squeeze, turn: 0, metres: 0 });
      if (squeeze < 0.97 && piece.kind === 'duct') broken ??= piece.id;
    }
    if (index === corner) {
      if (piece.kind === 'duct' && index > 0)
        own.push({ piece: piece.id, length: riser, turn: 0, metres: 0 });
      own.push(turn);
    }
    if (piece.kind === 'duct' && index >= corner) {
      const spent = index === corner ? riser + arc : 0;
      const room = Math.max(piece.path_m * scale.pixelsPerMetre - spent, index === corner ? 0 : bore * 0.2);
      const bends = index === corner ? (piece.bends ?? []).slice(1) : (piece.bends ?? []);
      const drop = size.ceiling - size.axis - bore * 0.15;
      if (room > 0)
        own.push(...level(piece, room, bends, bore, shapes.get(piece.id) ?? {}, scale, drop, side));
    } else if (index > corner) {
      if (piece.kind === 'elbow') {
        own = jog(
          piece.id,
          { angle_deg: piece.angle_deg, radiusRatio: piece.radiusRatio ?? 1 },
          bore,
          side.down,
        );
        side.down = !side.down;
      } else if (piece.kind === 'fan')
        own.push({ piece: piece.id, length: bore * (size.wide ? 2.5 : 2.1), turn: 0, metres: 0 });
      else if (piece.kind === 'fitting')
        own.push({ piece: piece.id, length: bore * 0.8, turn: 0, metres: 0 });
      else if (piece.kind === 'terminal')
        own.push({
          piece: piece.id,
          length: size.wallThick + reachOf(piece.form, bore / 2),
          turn: 0,
          metres: 0,
        });
    }
    legs.push(...share(own, metres));
  });
  return { legs, climb, broken };
}

/** Drawn distance from grille to the inner face of the wall. */
export function widthOf(run: readonly Piece[], scale: Scale, size: Sizes): number {
  const { legs } = walk(run, scale, size, new Map());
  const terminal = run.findLast((piece) => piece.kind === 'terminal')?.id;
  let heading = -Math.PI / 2;
  let x = 0;
  for (const leg of legs) {
    if (leg.piece === terminal) break;
    if (leg.turn === 0) x += leg.length * Math.cos(heading);
    else {
      const radius = leg.length / leg.turn;
      x += radius * (Math.sin(heading + leg.turn) - Math.sin(heading));
      heading += leg.turn;
    }
  }
  return x;
}
