/** What stands in the room below, by what the room is for; only what the cut shows, which is its upper half. */
import type { Room } from '#physics';
import { at, n, rectangle, scatter, segment } from './numbers.ts';

export type RoomUse = NonNullable<Room['use']>;

export interface Furnished {
  readonly fittings: string;
  readonly fine: string;
  /** Drops and drips. */
  readonly water: string;
  /** What steam settles on, where there is a glass. */
  readonly mirror?: {
    readonly x: number;
    readonly y: number;
    readonly width: number;
    readonly height: number;
  };
}

/** The space there is, px: left wall, place of the grille's right rim, underside of the ceiling, cut below. */
export interface Space {
  readonly inner: number;
  readonly beside: number;
  readonly top: number;
  readonly bottom: number;
  readonly wide: boolean;
}

function circle(x: number, y: number, radius: number): string {
  const r = n(radius);
  return `M${at(x - radius, y)}a${r} ${r} 0 1 0 ${n(radius * 2)} 0a${r} ${r} 0 1 0 ${n(-radius * 2)} 0`;
}

/** A glass over a basin; clear glass shows two glints. */
function washplace({ beside, top, bottom }: Space, clear: boolean) {
  const h = bottom - top;
  const mirror = { x: beside + h * 0.3, y: top + h * 0.16, width: h * 0.62, height: h * 0.54 };
  const basinY = top + h * 0.86;
  const glint = (t: number, long: number) =>
    segment(
      mirror.x + mirror.width * t,
      mirror.y + mirror.height * (0.15 + long),
      mirror.x + mirror.width * (t + long),
      mirror.y + mirror.height * 0.15,
    );
  const fine =
    (clear ? glint(0.2, 0.22) + glint(0.3, 0.32) : '') +
    `M${at(mirror.x - h * 0.1, basinY)}H${n(mirror.x + mirror.width + h * 0.1)}Q${at(mirror.x + mirror.width + h * 0.06, bottom)} ${at(mirror.x + mirror.width * 0.8, bottom)}M${at(mirror.x - h * 0.1, basinY)}Q${at(mirror.x - h * 0.06, bottom)} ${at(mirror.x + mirror.width * 0.2, bottom)}`;
  return { mirror, fine, glass: rectangle(mirror.x, mirror.y, mirror.width, mirror.height) };
}

function bathroom(space: Space, clear: boolean): Furnished {
  const { inner, top, bottom, wide } = space;
  const h = bottom - top;
  const { mirror, fine, glass } = washplace(space, clear);
  const roseX = inner + h * (wide ? 0.62 : 0.38);
  const roseY = top + h * 0.26;
  const rose = h * 0.17;
  const fittings =
    `M${at(inner, top + h * 0.5)}V${n(top + h * 0.24)}` +
    `M${at(inner, top + h * 0.2)}H${n(roseX - h * 0.1)}Q${at(roseX, top + h * 0.2)} ${at(roseX, roseY)}` +
    `M${at(roseX - rose, roseY + h * 0.07)}L${at(roseX - rose * 0.35, roseY)}H${n(roseX + rose * 0.35)}L${at(roseX + rose, roseY + h * 0.07)}Z`;
  let water = '';
  for (let k = 0; k < 9; k += 1) {
    const u = k / 4 - 1;
    const from = roseY + h * 0.11;
    for (let piece = 0; piece < 4; piece += 1) {
      const a = from + (piece + scatter(k * 7 + piece) * 0.55) * h * 0.15;
      const b = Math.min(bottom, a + h * 0.085);
      const x = (y: number) => roseX + u * (rose * 0.9 + (y - from) * 0.22);
      if (a < bottom - 1) water += segment(x(a), a, x(b), b);
    }
  }
  return { fittings: fittings + glass, fine, water, mirror };
}

/** A cistern with its roll beside it, and the basin. */
function toilet(space: Space, clear: boolean): Furnished {
  const { inner, top, bottom } = space;
  const h = bottom - top;
  const { mirror, fine, glass } = washplace(space, clear);
  const tank = { x: inner + h * 0.12, y: top + h * 0.46, width: h * 0.5, height: h * 0.36 };
  return {
    fittings:
      rectangle(tank.x, tank.y, tank.width, tank.height) +
      `M${at(tank.x + tank.width * 0.2, tank.y + tank.height)}V${n(bottom)}M${at(tank.x + tank.width * 0.8, tank.y + tank.height)}V${n(bottom)}` +
      circle(tank.x + tank.width + h * 0.24, top + h * 0.72, h * 0.075) +
      glass,
    fine: `${fine}${rectangle(tank.x - h * 0.03, tank.y - h * 0.05, tank.width + h * 0.06, h * 0.05)}${circle(tank.x + tank.width + h * 0.24, top + h * 0.72, h * 0.025)}`,
    water: '',
    mirror,
  };
}

/** Washing on a line, dripping, and the machine it came from. */
function laundry({ inner, beside, top, bottom, wide }: Space): Furnished {
  const h = bottom - top;
  const y = top + h * 0.26;
  const long = h * (wide ? 1.3 : 0.8);
  const start = inner + h * 0.02;
  let fittings = `M${at(start, y - h * 0.06)}Q${at(start + long / 2, y + h * 0.1)} ${at(start + long, y - h * 0.06)}`;
  let fine = '';
  let water = '';
  const pieces = wide ? 3 : 2;
  for (let k = 0; k < pieces; k += 1) {
    const width = h * 0.26;
    const x = start + long * ((k + 0.5) / pieces) - width / 2;
    const hang = y + h * 0.01;
    const tall = h * (k % 2 ? 0.4 : 0.34);
    // Every other one is a shirt with its sleeves out.
    fittings +=
      k % 2
        ? `M${at(x + width * 0.2, hang)}l${at(-width * 0.32, h * 0.14)}l${at(width * 0.2, h * 0.05)}l${at(width * 0.16, -h * 0.06)}V${n(hang + tall)}H${n(x + width * 0.76)}V${n(hang + h * 0.13)}l${at(width * 0.16, h * 0.06)}l${at(width * 0.2, -h * 0.05)}L${at(x + width * 0.8, hang)}Z`
        : `M${at(x, hang)}H${n(x + width)}V${n(hang + tall)}H${n(x)}Z`;
    if (k % 2 === 0)
      fine +=
        segment(x, hang + tall * 0.82, x + width, hang + tall * 0.82) +
        segment(x, hang + tall * 0.88, x + width, hang + tall * 0.88);
    for (let drop = 0; drop < 3; drop += 1) {
      const from = hang + tall + h * (0.05 + 0.14 * scatter(k * 5 + drop));
      const beneath = x + width * (0.25 + 0.25 * drop);
      water += segment(beneath, from, beneath, Math.min(bottom, from + h * 0.05));
    }
  }
  const machine = { x: beside + h * 0.3, y: top + h * 0.42, width: h * 0.66 };
  fittings += `M${at(machine.x, bottom)}V${n(machine.y)}h${n(machine.width)}V${n(bottom)}`;
  const door = { x: machine.x + machine.width / 2, y: machine.y + h * 0.4 };
  fittings += circle(door.x, door.y, h * 0.17);
  fine += segment(machine.x, machine.y + h * 0.13, machine.x + machine.width, machine.y + h * 0.13);
  fine +=
    circle(door.x, door.y, h * 0.115) +
    circle(machine.x + machine.width * 0.82, machine.y + h * 0.065, h * 0.03);
  return { fittings, fine, water };
}

/** A pot on the boil, and a cupboard on the wall. */
function kitchen({ inner, beside, top, bottom, wide }: Space): Furnished {
  const h = bottom - top;
  const counter = top + h * 0.84;
  const pot = { x: inner + h * (wide ? 0.42 : 0.2), width: h * 0.46, height: h * 0.26 };
  const rim = counter - pot.height;
  const cupboard = { x: beside + h * 0.3, y: top + h * 0.14, width: h * 0.8, height: h * 0.42 };
  const middle = cupboard.x + cupboard.width / 2;
  return {
    fittings:
      `M${at(inner, counter)}H${n(inner + h * (wide ? 1.3 : 0.85))}` +
      `M${at(pot.x, rim)}V${n(counter - h * 0.02)}h${n(pot.width)}V${n(rim)}Z` +
      rectangle(cupboard.x, cupboard.y, cupboard.width, cupboard.height),
    fine:
      segment(pot.x - h * 0.03, rim, pot.x + pot.width + h * 0.03, rim) +
      `M${at(pot.x, rim + h * 0.08)}h${n(-h * 0.09)}M${at(pot.x + pot.width, rim + h * 0.08)}h${n(h * 0.09)}` +
      segment(middle, cupboard.y, middle, cupboard.y + cupboard.height) +
      segment(middle - h * 0.05, cupboard.y + h * 0.2, middle - h * 0.05, cupboard.y + h * 0.28) +
      segment(middle + h * 0.05, cupboard.y + h * 0.2, middle + h * 0.05, cupboard.y + h * 0.28) +
      `M${at(inner, counter + h * 0.05)}H${n(inner + h * (wide ? 1.3 : 0.85))}`,
    water: '',
  };
}

const BY_USE = { bathroom, toilet, laundry, kitchen } as const satisfies Record<
  RoomUse,
  (space: Space, clear: boolean) => Furnished
>;

/** Lines of the things in the room; `clear` where a glass is not misted. */
export const furnishings = (use: RoomUse, space: Space, clear: boolean): Furnished =>
  BY_USE[use](space, clear);

/** Whether anything in the room gives off steam. */
export const steams = (use: RoomUse): boolean => use !== 'toilet';
