/** Both ends of the run: the grille in the ceiling and whatever stands outside the wall; and plain fittings. */
import type { Terminal } from '#physics';
import type { Fixture, Point, Sample } from '../types.ts';
import { beside } from './centreline.ts';
import { at, line, n, rectangle, segment } from './numbers.ts';
import type { Sizes } from './sizes.ts';

export function grille(piece: string, x: number, half: number, size: Sizes): Fixture {
  const face = size.ceiling + size.board;
  const rim = half * 1.55;
  const drop = Math.max(4, half * 0.3);
  const slats = Array.from({ length: 7 }, (_, k) => {
    const place = x + (k / 6 - 0.5) * 2 * half * 0.9;
    return segment(place - drop * 0.3, face + 0.5, place + drop * 0.3, face + drop - 0.5);
  });
  return {
    piece,
    body: `M${at(x - rim, face)}L${at(x - half, face + drop)}L${at(x + half, face + drop)}L${at(x + rim, face)}Z`,
    detail: slats.join(''),
  };
}

/** How far the air's way out stands from the wall's outer face. */
export const reachOf = (form: Terminal['form'], half: number) =>
  half * (form === 'wall-cowl' ? 1.55 : form === 'louvre' ? 0.5 : 1.1);

export function terminal(piece: Terminal, y: number, half: number, size: Sizes): Fixture & { outlet: Point } {
  const wall = size.wallRight + size.wallThick;
  const reach = reachOf(piece.form, half);
  const outlet = { x: wall + reach, y };
  const flange = (tall: number) => rectangle(wall, y - tall, Math.max(2.5, half * 0.14), tall * 2);
  const start = wall + Math.max(2.5, half * 0.14);
  if (piece.form === 'wall-cowl') {
    const tall = half * 1.4;
    // Open in front, over the height of the bore.
    const hood =
      `M${at(start, y - tall)}C${at(wall + reach * 0.6, y - tall)} ${at(wall + reach * 1.02, y - tall * 0.98)} ${at(wall + reach * 1.02, y - half * 1.02)}` +
      `M${at(wall + reach * 1.02, y + half * 1.04)}L${at(wall + reach * 0.72, y + tall)}L${at(start, y + tall)}`;
    // Three flaps held open by the stream.
    const flaps = [-0.62, 0, 0.62].map((k) => {
      const hinge = y + k * half * 1.15 - half * 0.22;
      return `M${at(wall + reach * 0.26, hinge)}q${at(reach * 0.3, half * 0.04)} ${at(reach * 0.5, half * 0.4)}m${n(-reach * 0.5)} ${n(-half * 0.4)}v${n(-half * 0.14)}`;
    });
    return { piece: piece.id, body: flange(tall * 1.12) + hood, detail: flaps.join(''), outlet };
  }
  if (piece.form === 'louvre') {
    const tall = half * 1.3;
    const slats = Array.from({ length: 5 }, (_, k) =>
      segment(
        start,
        y - tall + ((k + 0.3) * 2 * tall) / 5,
        wall + reach,
        y - tall + ((k + 1) * 2 * tall) / 5 - 1,
      ),
    );
    return {
      piece: piece.id,
      body: rectangle(start, y - tall, reach - (start - wall), tall * 2) + flange(tall * 1.15),
      detail: slats.join(''),
      outlet,
    };
  }
  const pipe = `M${at(start, y - half * 1.08)}h${n(reach - (start - wall))}M${at(start, y + half * 1.08)}h${n(reach - (start - wall))}`;
  if (piece.form === 'open-end')
    return { piece: piece.id, body: flange(half * 1.3) + pipe, detail: '', outlet };
  // A rain cap shown end on: a disc held off the mouth, further for the high one.
  const gap = half * (piece.form === 'high-rain-cap' ? 0.7 : 0.35);
  const cap = wall + reach + gap;
  const disc = `M${at(cap, y - half * 1.5)}L${at(cap + half * 0.3, y)}L${at(cap, y + half * 1.5)}Z`;
  const stays =
    segment(wall + reach, y - half, cap, y - half * 1.2) +
    segment(wall + reach, y + half, cap, y + half * 1.2);
  return { piece: piece.id, body: flange(half * 1.3) + pipe + disc, detail: stays, outlet: { x: cap, y } };
}

/** A loss stated outright, or an elbow: its collars. */
export function collars(piece: string, own: readonly Sample[], thick: number): Fixture {
  const bar = (place: Sample) => {
    const a = beside(place, -(place.full + thick * 1.6));
    const b = beside(place, place.full + thick * 1.6);
    return line([a, b]);
  };
  return { piece, body: bar(own[0]!) + bar(own[own.length - 1]!), detail: '' };
}
