/** Both ends of the run: the grille in the ceiling, and what stands on the wall, the roof or under the eaves. */
import type { Terminal } from '#physics';
import type { Fixture, Point } from '../types.ts';
import { at, segment } from './numbers.ts';
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

/** How far a rain cap is held off the mouth it covers, over half the bore. */
const gapOf = (form: Terminal['form']) => (form === 'high-rain-cap' ? 0.95 : form === 'rain-cap' ? 0.5 : 0);

/** Out of a face along its normal, and across it to the right of that. */
type Put = (out: number, across: number) => string;

export function terminal(
  piece: Terminal,
  end: Point,
  half: number,
  size: Sizes,
): Fixture & { outlet: Point } {
  if (size.exit === 'roof') return onRoof(piece, end, half, size);
  const under = size.exit === 'soffit';
  const face = under ? size.shell : size.wallRight + size.wallThick;
  const put: Put = under ? (u, v) => at(end.x - v, face + u) : (u, v) => at(face + u, end.y + v);
  const reach = under ? size.mouth - size.shell : reachOf(piece.form, half);
  const outlet = under ? { x: end.x, y: face + reach } : { x: face + reach, y: end.y };
  return { piece: piece.id, ...onFace(piece.form, put, half, reach), outlet };
}

/** A terminal on a plain face, wall or soffit. */
function onFace(form: Terminal['form'], put: Put, half: number, reach: number) {
  const rim = Math.max(2.5, half * 0.14);
  const box = (from: number, to: number, tall: number) =>
    `M${put(from, -tall)}L${put(to, -tall)}L${put(to, tall)}L${put(from, tall)}Z`;
  const flange = (tall: number) => box(0, rim, tall);
  if (form === 'wall-cowl') {
    const tall = half * 1.4;
    // Open in front, over the height of the bore.
    const hood =
      `M${put(rim, -tall)}C${put(reach * 0.6, -tall)} ${put(reach * 1.02, -tall * 0.98)} ${put(reach * 1.02, -half * 1.02)}` +
      `M${put(reach * 1.02, half * 1.04)}L${put(reach * 0.72, tall)}L${put(rim, tall)}`;
    // Three flaps held open by the stream.
    const flaps = [-0.62, 0, 0.62].map((k) => {
      const hinge = k * half * 1.15 - half * 0.22;
      return (
        `M${put(reach * 0.26, hinge)}Q${put(reach * 0.56, hinge + half * 0.04)} ${put(reach * 0.76, hinge + half * 0.4)}` +
        `M${put(reach * 0.26, hinge)}L${put(reach * 0.26, hinge - half * 0.14)}`
      );
    });
    return { body: flange(tall * 1.12) + hood, detail: flaps.join('') };
  }
  if (form === 'louvre') {
    const tall = half * 1.3;
    const slats = Array.from(
      { length: 5 },
      (_, k) =>
        `M${put(rim, -tall + ((k + 0.3) * 2 * tall) / 5)}L${put(reach, -tall + ((k + 1) * 2 * tall) / 5 - 1)}`,
    );
    return { body: box(rim, reach, tall) + flange(tall * 1.15), detail: slats.join('') };
  }
  const side = (v: number) => `M${put(rim, v)}L${put(reach, v)}`;
  return { body: flange(half * 1.3) + side(-half * 1.08) + side(half * 1.08), detail: '' };
}

/** A pipe through the tiles with its flashing, and the cap held off its mouth. */
function onRoof(piece: Terminal, end: Point, half: number, size: Sizes): Fixture & { outlet: Point } {
  const { ridge, eavesRight } = size;
  const slope = (eavesRight.y - ridge.y) / (eavesRight.x - ridge.x);
  const tiles = size.shell - size.rafter;
  const put: Put = (u, v) => at(end.x + v, size.mouth - u);
  const onTiles = (v: number) => at(end.x + v, tiles + slope * v - 1);
  const pipe = half * 1.1;
  const skirt = half * 1.2;
  const up = (size.mouth - tiles) * 0.3;
  // Sheet dressed over the tiles and up round the pipe, higher on the side the rain comes down.
  const flashing =
    `M${onTiles(-half * 2.3)}L${at(end.x - skirt, tiles + slope * -skirt + up)}L${at(end.x - pipe, tiles + up * 1.9)}` +
    `M${onTiles(half * 2.3)}L${at(end.x + skirt, tiles + slope * skirt + up)}L${at(end.x + pipe, tiles + up * 1.9)}`;
  const gap = half * gapOf(piece.form);
  const brim = half * 1.62;
  const cap = `M${put(gap, -brim)}Q${put(gap + half * 0.42, -half * 0.6)} ${put(gap + half * 0.5, 0)}Q${put(gap + half * 0.42, half * 0.6)} ${put(gap, brim)}Z`;
  const stays = [-1, 1]
    .map((side) => `M${put(-half * 0.3, side * pipe)}L${put(gap, side * half * 1.2)}`)
    .join('');
  const lip = `M${put(0, -pipe - half * 0.12)}L${put(0, -pipe)}M${put(0, pipe)}L${put(0, pipe + half * 0.12)}`;
  return {
    piece: piece.id,
    body: flashing + cap + lip,
    detail: stays,
    outlet: { x: end.x, y: size.mouth - gap * 0.55 },
  };
}
