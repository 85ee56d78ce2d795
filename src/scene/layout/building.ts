/**
 * The house in section: walls, roof, ceiling, joists, insulation. Cut things heavy, everything else quiet.
 * Nothing of it changes with the air, so what was drawn for the same places is handed back as it was.
 */
import type { Building } from '../types.ts';
import { at, cross, n, rectangle, remember, segment } from './numbers.ts';
import { rafterUnder, type Sizes } from './sizes.ts';

interface Interval {
  readonly from: number;
  readonly to: number;
}

function hatch(x: number, y: number, width: number, height: number, gap: number): string {
  let path = '';
  for (let start = y - width; start < y + height; start += gap) {
    // 45 degrees, clipped to the wall's sides and ends.
    const t0 = Math.max(0, y - start);
    const t1 = Math.min(width, y + height - start);
    if (t1 > t0) path += segment(x + t0, start + t0, x + t1, start + t1);
  }
  return path;
}

/** Quilt as drafters draw it: one calm line looping from board to top. */
function quilt(bay: Interval, top: number, bottom: number, period: number): string {
  const count = Math.floor((bay.to - bay.from - 2) / period);
  if (count < 1) return '';
  const start = bay.from + (bay.to - bay.from - count * period) / 2;
  let path = `M${at(start, bottom)}`;
  for (let k = 0; k < count; k += 1) {
    const x = start + k * period;
    path += `C${at(x + period * 0.85, bottom)} ${at(x - period * 0.35, top)} ${at(x + period / 2, top)}`;
    path += `S${at(x + period * 0.15, bottom)} ${at(x + period, bottom)}`;
  }
  return path;
}

/** Tile courses: each a short step under the next, square to the slope. */
function tiles(from: { x: number; y: number }, to: { x: number; y: number }, length: number): string {
  const long = Math.hypot(to.x - from.x, to.y - from.y);
  const ux = (to.x - from.x) / long;
  const uy = (to.y - from.y) / long;
  const lift = ux < 0 ? 1 : -1;
  let path = '';
  for (let d = length; d < long - 2; d += length) {
    const x = from.x + ux * d;
    const y = from.y + uy * d;
    path += `M${at(x, y)}l${n(-uy * lift * -4)} ${n(-Math.abs(ux) * 4)}l${n(-ux * length * 0.55)} ${n(-uy * length * 0.55 + 2.6)}`;
  }
  return path;
}

type Roof = Pick<Building, 'roof' | 'tiles' | 'underside' | 'eaves' | 'timbers' | 'timberCrosses'>;

/** Rafters, tiles, eaves, ridge board, purlins. */
function roofOf(size: Sizes): Roof {
  const { wallLeft, wallRight, wallThick: thick, ridge, eavesLeft, eavesRight, rafter } = size;
  const plate = thick * 0.62;
  const purlins = [0.5].flatMap((t) => {
    const xl = ridge.x + (wallLeft - ridge.x) * t;
    const xr = ridge.x + (wallRight - ridge.x) * t * 0.92;
    return [xl, xr].map((x) => ({ x: x - plate / 2, y: rafterUnder(size, x) }));
  });
  const boards = [{ x: ridge.x - plate * 0.3, y: ridge.y + rafter * 0.35, w: plate * 0.6, h: rafter * 1.7 }];
  const under = (x: number) => at(x, rafterUnder(size, x));
  const fascia = rafter * 1.05;
  const gutter = rafter * 0.5;
  const outer = wallRight + thick;
  // Boxed eaves are closed under the duct that turns down in them; plain ones under the rafters' ends.
  const boxed = size.exit === 'soffit';
  const foot = boxed ? size.shell : eavesRight.y + fascia;
  const length = size.lettering * (size.wide ? 1.5 : 1.1);
  return {
    roof: `M${at(eavesLeft.x, eavesLeft.y)}L${at(ridge.x, ridge.y)}L${at(eavesRight.x, eavesRight.y)}`,
    tiles: tiles(ridge, eavesLeft, length) + tiles(ridge, eavesRight, length),
    underside: `M${under(eavesLeft.x)}L${at(ridge.x, ridge.y + rafter)}L${under(eavesRight.x)}`,
    eaves:
      segment(eavesLeft.x, eavesLeft.y, eavesLeft.x, eavesLeft.y + fascia) +
      segment(eavesRight.x, eavesRight.y, eavesRight.x, foot) +
      `M${at(eavesRight.x + 1, eavesRight.y + 3)}a${n(gutter)} ${n(gutter)} 0 0 0 ${n(gutter * 2)} 0` +
      (boxed
        ? segment(outer, foot, eavesRight.x, foot) +
          segment(outer, foot - size.board * 0.8, eavesRight.x, foot - size.board * 0.8) +
          segment(eavesRight.x - 3, eavesRight.y + 2, eavesRight.x - 3, foot)
        : segment(outer, rafterUnder(size, eavesRight.x), eavesRight.x, rafterUnder(size, eavesRight.x))),
    timbers:
      purlins.map((p) => rectangle(p.x, p.y, plate, plate)).join('') +
      boards.map((b) => rectangle(b.x, b.y, b.w, b.h)).join(''),
    timberCrosses: purlins.map((p) => cross(p.x, p.y, plate, plate)).join(''),
  };
}

type Walls = Pick<Building, 'walls' | 'wallHatch' | 'timbers' | 'timberCrosses'>;

/** Both walls with their plates; `hole` is where the duct goes out, through the right one or over it. */
function wallsOf(size: Sizes, hole: Interval | null): Walls {
  const { wallLeft, wallRight, wallThick: thick, bottom } = size;
  const leftTop = rafterUnder(size, wallLeft + thick * 0.5);
  const rightTop = rafterUnder(size, wallRight + thick * 0.5);
  const gap = Math.max(6, thick * 0.34);
  const plate = thick * 0.62;
  const over = size.exit === 'soffit' && hole !== null;
  // No wall plate on the right where the duct goes out close under the rafters.
  const seated = !hole || hole.from - rightTop > plate * 1.4;
  const parts: { x: number; from: number; to: number }[] = [
    { x: wallLeft, from: leftTop + plate * 0.8, to: bottom },
  ];
  const plates = [{ x: wallLeft + thick - plate, y: leftTop }];
  if (over) {
    plates.push({ x: wallRight + (thick - plate) / 2, y: hole.to + 2 });
    parts.push({ x: wallRight, from: hole.to + 2 + plate * 0.8, to: bottom });
  } else {
    if (seated) plates.push({ x: wallRight, y: rightTop });
    const top = rightTop + (seated ? plate * 0.8 : 0);
    parts.push({ x: wallRight, from: top, to: hole ? hole.from : bottom });
    if (hole) parts.push({ x: wallRight, from: hole.to, to: bottom });
  }
  return {
    walls: parts.map(({ x, from, to }) => rectangle(x, from, thick, Math.max(0, to - from))).join(''),
    wallHatch: parts.map(({ x, from, to }) => hatch(x, from, thick, to - from, gap)).join(''),
    timbers: plates.map((p) => rectangle(p.x, p.y, plate, plate * 0.8)).join(''),
    timberCrosses: plates.map((p) => cross(p.x, p.y, plate, plate * 0.8)).join(''),
  };
}

type Floor = Pick<Building, 'ceiling' | 'insulation' | 'timbers' | 'timberCrosses'>;

/** Ceiling board, joists and the quilt between them, left open where the riser comes through. */
function floorOf(size: Sizes, metre: number, riser: Interval): Floor {
  const { wallLeft, wallRight, wallThick: thick, ceiling, board, joistTop } = size;
  const inLeft = wallLeft + thick;
  const joist = Math.max(5, Math.min(size.wide ? 13 : 7, metre * 0.05));
  const spacing = Math.max(size.wide ? 58 : 34, Math.min(metre * 0.6, (wallRight - wallLeft) / 7));
  const joists: Interval[] = [];
  for (let x = inLeft + spacing * 0.62; x < wallRight - joist * 2; x += spacing) {
    if (x + joist < riser.from - 2 || x > riser.to + 2) joists.push({ from: x, to: x + joist });
  }
  const stops = [...joists, riser].sort((a, b) => a.from - b.from);
  let insulation = '';
  let edge = inLeft;
  for (const stop of [...stops, { from: wallRight, to: wallRight }]) {
    insulation += quilt(
      { from: edge, to: stop.from },
      joistTop + 3,
      ceiling - 3,
      size.wide ? Math.max(13, thick * 0.55) : 9,
    );
    edge = Math.max(edge, stop.to);
  }
  const tall = ceiling - joistTop;
  const across = (y: number) => segment(inLeft, y, riser.from, y) + segment(riser.to, y, wallRight, y);
  return {
    ceiling: across(ceiling) + across(ceiling + board),
    insulation,
    timbers: joists.map((j) => rectangle(j.from, joistTop, joist, tall)).join(''),
    timberCrosses: joists.map((j) => cross(j.from, joistTop, joist, tall)).join(''),
  };
}

export function building(size: Sizes, metre: number, riser: Interval, hole: Interval | null): Building {
  // To a tenth of a pixel, which is what is drawn.
  const places = [metre, riser.from, riser.to].map(n).join();
  const gap = hole ? `${n(hole.from)},${n(hole.to)}` : '';
  return remember(`building ${size.key} ${places} ${gap}`, () => {
    const roof = remember(`roof ${size.key}`, () => roofOf(size));
    const floor = remember(`floor ${size.key} ${places}`, () => floorOf(size, metre, riser));
    const sides = wallsOf(size, hole);
    return {
      ...roof,
      walls: sides.walls,
      wallHatch: sides.wallHatch,
      ceiling: floor.ceiling,
      insulation: floor.insulation,
      timbers: floor.timbers + sides.timbers + roof.timbers,
      timberCrosses: floor.timberCrosses + sides.timberCrosses + roof.timberCrosses,
    };
  });
}
