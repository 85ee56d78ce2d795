/**
 * `layout`: a solved rig in, a drawing out. Pure: no page, no clock, the same answer every time. `bellies`: what
 * hangs in the other states a reader sees of this rig; a duct that sags must not look as if it got thinner.
 */
import type { Rig, Solution } from '#physics';
import { defaults } from '#units';
import type { Belly, Box, Drawing, Fixture, Frame, Lettering, Point, Sample, Trouble } from '../types.ts';
import { air } from './air.ts';
import { extents, samples, type Narrowing } from './bore.ts';
import { building } from './building.ts';
import { beside, centreline, fullness, placeAt } from './centreline.ts';
import { crimpDimension, sagDimension, tieDimension, type Measured } from './dimensions.ts';
import { grille, terminal } from './ends.ts';
import { crimp, fan } from './fan.ts';
import { walk } from './legs.ts';
import { fixture } from './fittings.ts';
import { letter, MARK, noteOn } from './lettering.ts';
import { at, line, n, segment } from './numbers.ts';
import { planOf, type Exit } from './plan.ts';
import { room, steaminess } from './room.ts';
import { fit } from './scale.ts';
import { sizes, type Sizes } from './sizes.ts';
import { supports, tiePlaces, ties } from './supports.ts';
import type { TroubleDrawer } from './trouble/drawer.ts';
import { styleOf, WALL, walls } from './walls.ts';

export function layout(
  rig: Rig,
  solution: Solution,
  healthy: Solution,
  frame: Frame,
  lettering: Lettering = {},
  drawer?: TroubleDrawer,
  bellies: readonly Belly[] = [],
): Drawing {
  const { run } = rig;
  const plan = planOf(run);
  const size = sizes(frame, plan.exit);
  const shapes = new Map(solution.pieces.map((piece) => [piece.id, piece.shape]));
  const before = new Map(healthy.pieces.map((piece) => [piece.id, piece.shape]));
  const scale = fit(run, plan, shapes, size, bellies);
  const enlarged = scale.pixelsPerMetre * scale.enlargement;
  const bores = new Map(run.map((piece, index) => [piece.id, plan.bore_m[index]! * enlarged]));
  const boresTo = new Map(
    run.flatMap((piece, index) =>
      piece.kind === 'reducer' ? [[piece.id, plan.boreTo_m[index]! * enlarged] as const] : [],
    ),
  );

  const walked = walk(run, plan, scale, size, shapes);
  const grilleX = size.endX - walked.width;
  const { points: sound, levels } = centreline(run, walked, scale, size, grilleX, shapes, bores);
  const site = { rig, solution, healthy, shapes, bores, levels, scale, size };
  const raw = drawer?.bend(site, sound) ?? sound;
  const reach = extents(raw);

  const fanPiece = run.find((piece) => piece.kind === 'fan');
  const fanShape = fanPiece ? (shapes.get(fanPiece.id) ?? {}) : {};
  const fanBore = fanPiece ? bores.get(fanPiece.id)! : size.bore;
  const pinch: Narrowing | null =
    fanPiece && fanShape.crimpHeightRatio !== undefined && fanShape.crimpHeightRatio < 1
      ? {
          piece: fanPiece.id,
          along: reach.get(fanPiece.id)!.from - fanBore * 0.62,
          reach: fanBore * 0.9,
          ratio: fanShape.crimpHeightRatio,
          area: fanShape.crimpOpenArea ?? fanShape.crimpHeightRatio,
        }
      : null;
  const bites = run.flatMap((piece) =>
    tiePlaces(piece, shapes.get(piece.id) ?? {}, levels.get(piece.id), raw, bores.get(piece.id)!),
  );
  const narrowings = [...bites, ...(pinch ? [pinch] : []), ...(drawer?.narrow(site, raw) ?? [])];
  const points = samples(run, raw, bores, boresTo, reach, narrowings, solution, healthy);

  const byPiece = new Map<string, Sample[]>();
  for (const point of points) {
    const own = byPiece.get(point.piece);
    if (own) own.push(point);
    else byPiece.set(point.piece, [point]);
  }
  const of = (id: string) => byPiece.get(id) ?? [];

  const drawnCrimp = pinch ? crimp(pinch, points) : null;
  const measured: Measured[] = [];
  for (const piece of run) {
    const shape = shapes.get(piece.id) ?? {};
    const level = levels.get(piece.id);
    const present = lettering.present === piece.id;
    const isShown = size.named || present;
    const bore_m = bores.get(piece.id)! / enlarged;
    if (piece.kind === 'duct' && level && isShown) {
      // A depth is dimensioned where it is drawn in full.
      const sag =
        fullness(shape, level, scale) < 1
          ? null
          : sagDimension(piece, shape, level, points, size.lettering, lettering.choice ?? defaults);
      if (sag) measured.push(sag);
      const bite = present && !sag ? bites.filter((place) => place.piece === piece.id) : [];
      const tie = bite[Math.floor(bite.length / 2)];
      if (tie) measured.push(tieDimension(tie, points, bore_m, size.lettering));
    }
    if (pinch && drawnCrimp && piece.id === pinch.piece && present)
      measured.push(
        crimpDimension(
          piece.id,
          drawnCrimp,
          placeAt(points, pinch.along),
          bore_m,
          pinch.ratio,
          size.lettering,
        ),
      );
  }

  const last = points[points.length - 1]!;
  const cowlPiece = run.findLast((piece) => piece.kind === 'terminal');
  const cowl = cowlPiece ? terminal(cowlPiece, last, last.full, size) : null;
  const outlet = cowl?.outlet ?? { x: last.x, y: last.y };
  const first = points[0]!;
  const hasGrille = run[0]?.kind === 'grille';
  const drop = hasGrille ? Math.max(4, first.full * 0.3) : 0;
  const mouth = { x: first.x, y: size.ceiling + size.board + drop };
  const required = rig.required?.flow_L_s ?? healthy.flow_L_s.room * 0.6;
  const riserHalf = first.full * (1 + 2 * WALL[run[1] ? styleOf(run[1]) : 'rigid']) + 1;
  const sleeve = last.full * 1.14;
  const out = size.axis + plan.end_m * enlarged;
  const hole =
    plan.exit === 'roof'
      ? null
      : plan.exit === 'soffit'
        ? { from: out - sleeve, to: out + sleeve }
        : { from: last.y - sleeve, to: last.y + sleeve };
  // Where the drawing has no room for it the number stands beside or under it, and the sky is free.
  const numberBox: Box = size.named
    ? { x: frame.width * 0.78, y: 0, width: frame.width * 0.22, height: frame.height * 0.3 }
    : { x: frame.width, y: 0, width: 0, height: 0 };
  const straps = supports(run, points, levels, shapes, before, scale, size);
  const below = room(
    size,
    rig.room?.use ?? 'bathroom',
    first.x,
    first.full,
    steaminess(solution.flow_L_s.room, required),
  );
  const trouble =
    drawer?.draw(site, points, { outlet, mouth, roomLeft: size.wallLeft, roomRight: below.right }) ?? null;
  const wallParts = walls(run, walked.legs, plan.exit, points, reach, shapes);
  const fittings: Fixture[] = run.flatMap((piece) => {
    const made = fixture(piece, points, reach.get(piece.id)!, shapes.get(piece.id) ?? {}, solution.direction);
    return made ? [made] : [];
  });
  const metres = scale.pixelsPerMetre > size.wallRight * 0.25 ? 0.5 : 1;
  const bar = metres * scale.pixelsPerMetre;
  // The note and the scale bar stand in the corner the room leaves free.
  const free = size.wallRight - below.right;
  const freeLeft = below.left - size.wallLeft - size.wallThick;
  const asked = size.lettering * (size.wide ? 16 : 11);
  const noteLeft = free < asked && freeLeft > free;
  const barX = noteLeft
    ? size.wallLeft + size.wallThick + size.lettering * 0.8
    : size.wallRight - size.lettering * 0.8 - bar;
  const barY = frame.height - size.lettering * 2.4;
  const scaleBox: Box[] = size.named ? [{ x: barX - 2, y: barY - 3, width: bar + 4, height: 7 }] : [];

  const labels = letter({
    run,
    solution,
    frame,
    size,
    scale,
    lettering,
    measured,
    levels,
    points,
    grilleX,
    outlet,
    straps: straps.map((strap) => strap.x),
    use: rig.room?.use ?? 'bathroom',
    roomRight: below.right,
    noteLeft,
    cramped: Math.max(free, freeLeft) < asked,
    bar: size.named ? { x: barX + bar / 2, y: barY - size.lettering * 0.5, metres } : null,
    fault:
      spotOf(lettering, trouble) ??
      faultPoint(lettering.present, points, pinch, measured, bites, fanPiece?.id, size.named),
    taken: [
      ...(trouble?.taken ?? []),
      ...scaleBox,
      numberBox,
      around(plan.exit, outlet, last.full, frame, size),
    ],
  });
  return {
    frame,
    lettering: size.lettering,
    stroke: { heavy: size.heavy, fine: size.fine },
    pixelsPerMetre: scale.pixelsPerMetre,
    enlargement: scale.enlargement,
    centreline: points,
    walls: wallParts,
    targets: run.map((piece) => {
      const own = of(piece.id);
      return { piece: piece.id, path: line(own), width: (own[0]?.full ?? 8) * 2.7 };
    }),
    supports: straps,
    ties: ties(bites, points, run),
    crimp: drawnCrimp,
    breakMark: walked.broken.map((id) => breakMark(of(id))).join(''),
    dimensions: measured,
    fan: fanPiece ? fan(fanPiece.id, points, reach.get(fanPiece.id)!, size) : null,
    grille: hasGrille ? grille(run[0]!.id, first.x, first.full, size) : null,
    cowl,
    fittings,
    air: air(
      points,
      { outlet, exit: plan.exit, most: raysMost(plan.exit, outlet, last.full, frame, size) },
      mouth,
      size.wide,
    ),
    trouble,
    building: building(
      size,
      scale.pixelsPerMetre,
      { from: first.x - riserHalf, to: first.x + riserHalf },
      hole,
    ),
    room: below,
    scaleBar: size.named
      ? segment(barX, barY, barX + bar, barY) +
        segment(barX, barY - 4, barX, barY + 4) +
        segment(barX + bar, barY - 4, barX + bar, barY + 4)
      : '',
    labels,
    caption: labels.some(({ key }) => key === MARK) ? (lettering.faultLabel ?? null) : null,
    aside: labels.some(({ key }) => key === 'note') ? null : noteOn(scale, size),
    pieceX: Object.fromEntries(
      run.map((piece) => {
        const own = of(piece.id);
        return [piece.id, { start: own[0]!.x, end: own[own.length - 1]!.x }];
      }),
    ),
    stationX: solution.stations.map((station) => {
      // Losses at the fan's inlet are spent before the fan lifts anything.
      if (station.after === 'fan inlet' && fanPiece) return of(fanPiece.id)[0]!.x;
      const own = of(station.after);
      return own.length ? own[own.length - 1]!.x : first.x;
    }),
    outlet,
    numberBox,
  };
}

/** How far the rays may reach before they meet the number, the edge or the ground. */
function raysMost(exit: Exit, outlet: Point, full: number, frame: Frame, size: Sizes): number {
  if (exit === 'wall') return frame.width - outlet.x - 4;
  if (exit === 'roof') return Math.min(frame.width * 0.775 - outlet.x - full * 1.25, outlet.y);
  return size.bottom - outlet.y - size.lettering * 2.2;
}

/** Where the air comes out nothing is written. */
function around(exit: Exit, outlet: Point, full: number, frame: Frame, size: Sizes): Box {
  if (exit === 'roof') return { x: outlet.x - full * 4, y: 0, width: full * 8, height: size.shell };
  if (exit === 'soffit')
    return { x: outlet.x - full * 2.6, y: outlet.y - full, width: full * 5.2, height: full * 5.4 };
  const x = size.wallRight + size.wallThick;
  return { x, y: outlet.y - full * 2.4, width: frame.width, height: full * 4.8 };
}

/** Where the present fault sits, if that is not along its piece. */
const spotOf = ({ present, faultLabel }: Lettering, trouble: Trouble | null): Point | undefined =>
  trouble?.spots.find(({ piece, kind }) => piece === present && kind === faultLabel?.kind)?.at;

/** The spot the present fault's label leads to: its dimension, its neck, else the top of the middle of its piece. */
function faultPoint(
  present: string | undefined,
  points: readonly Sample[],
  pinch: Narrowing | null,
  measured: readonly Measured[],
  bites: readonly Narrowing[],
  fanId: string | undefined,
  figured: boolean,
): Point | null {
  if (!present) return null;
  const top = (place: Sample) => beside(place, -place.half * 1.3);
  if (present === fanId && pinch) {
    const neck = placeAt(points, pinch.along);
    return { x: neck.x, y: neck.y - neck.half - neck.full * 0.4 };
  }
  const sag = measured.find((one) => one.piece === present && one.kind === 'sag');
  const own = points.filter((point) => point.piece === present);
  if (own.length === 0) return null;
  if (sag) return { x: sag.from.x, y: sag.from.y - (figured && sag.side === 'above' ? 16 : 0) };
  const bite = bites.filter((place) => place.piece === present);
  const tie = bite[Math.floor(bite.length / 2)];
  if (tie) return top(placeAt(points, tie.along));
  return top(own[Math.floor(own.length * 0.6)]!);
}

/** Two short waves across a riser drawn shorter than it is. */
function breakMark(own: readonly Sample[]): string {
  const middle = own[Math.floor(own.length * 0.5)];
  if (!middle) return '';
  const reach = middle.full * 1.6;
  const wave = (y: number) =>
    `M${at(middle.x - reach, y)}q${n(reach / 2)} ${n(-reach * 0.3)} ${n(reach)} 0t${n(reach)} 0`;
  return wave(middle.y - 4) + wave(middle.y + 4);
}
