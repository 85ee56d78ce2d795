/** A meter held where a reading is taken: over the grille, or at a hole in the duct. Plain shapes of our own. */
import type { InstrumentKind } from '#physics';
import type { Box, Drawing, Point, Sample } from '../../types.ts';
import { beside, placeAt } from '../centreline.ts';
import { at, line, n, rectangle, segment } from '../numbers.ts';
import { from, stretchOf, upward } from './marks.ts';

/** A reading to show: `place` is a piece of the run, `text` what the meter's window says. */
export interface MeterReading {
  readonly kind: InstrumentKind;
  readonly place: string;
  readonly text: string;
}

export interface MeterDrawing {
  readonly body: string;
  readonly fine: string;
  /** The window with its figure. */
  readonly window: Box;
  readonly label: Point;
  readonly size: number;
}

const circle = ({ x, y }: Point, radius: number) =>
  `M${at(x - radius, y)}a${n(radius)} ${n(radius)} 0 1 0 ${n(2 * radius)} 0a${n(radius)} ${n(radius)} 0 1 0 ${n(-2 * radius)} 0Z`;

/** Width of a window for its figure; figures are about half as wide as tall. */
const windowFor = (text: string, size: number) => Math.max(3, text.length) * size * 0.5 + size * 0.8;

function framed(body: string, fine: string, box: Box, size: number): MeterDrawing {
  return {
    body,
    fine,
    window: box,
    size,
    label: { x: box.x + box.width / 2, y: box.y + box.height / 2 + size * 0.35 },
  };
}

/** Over the grille: a hood with or without a fan of its own, a vane on a stick, a bag on a ring. */
function underGrille(
  drawing: Drawing,
  mouth: Point,
  half: number,
  { kind, text }: MeterReading,
): MeterDrawing {
  const size = drawing.lettering * 1.05;
  const wide = half * 1.9;
  const floor = drawing.frame.height - 3;
  const tall = Math.min(half * 2.6, (floor - mouth.y) * 0.62);
  const throat = half * 0.85;
  const low = mouth.y + tall;
  const display = windowFor(text, size);
  const box = (y: number): Box => ({
    x: mouth.x - display / 2,
    y: Math.min(y, drawing.frame.height - size * 1.35 - 2),
    width: display,
    height: size * 1.35,
  });
  const funnel = `M${at(mouth.x - wide, mouth.y + 1)}L${at(mouth.x + wide, mouth.y + 1)}L${at(mouth.x + throat, low)}L${at(mouth.x - throat, low)}Z`;
  if (kind === 'bag') {
    const bag = `M${at(mouth.x - wide * 0.9, mouth.y + half * 0.3)}C${at(mouth.x - wide * 1.5, low)} ${at(mouth.x - wide, floor)} ${at(mouth.x, floor - 2)}S${at(mouth.x + wide * 1.5, low)} ${at(mouth.x + wide * 0.9, mouth.y + half * 0.3)}Z`;
    const creases = [-0.5, 0, 0.5]
      .map(
        (k) =>
          `M${at(mouth.x + k * wide, mouth.y + half * 0.5)}q${n(k * half * 0.5)} ${n(tall * 0.2)} ${n(k * half * 0.1)} ${n(tall * 0.42)}`,
      )
      .join('');
    const ring = rectangle(mouth.x - wide, mouth.y + 1, wide * 2, Math.max(4, half * 0.3));
    return framed(bag + ring, creases, box(mouth.y + tall * 0.62), size);
  }
  if (kind === 'vane-anemometer') {
    const radius = Math.min(half * 0.8, tall * 0.32);
    const eye = { x: mouth.x + half * 0.2, y: mouth.y + radius + 4 };
    const blades = Array.from({ length: 8 }, (_, k) => {
      const turn = (k * Math.PI) / 4;
      const tip = (grow: number, more: number) =>
        at(eye.x + radius * grow * Math.cos(turn + more), eye.y + radius * grow * Math.sin(turn + more));
      return `M${tip(0.22, 0)}Q${tip(0.6, 0.35)} ${tip(0.9, 0.3)}`;
    }).join('');
    const grip = { x: mouth.x + wide * 1.15, y: Math.min(low, floor - size * 1.8) };
    const stick = line(
      [
        { x: eye.x + radius * 0.8, y: eye.y + radius * 0.5 },
        { x: grip.x, y: grip.y + size * 0.2 },
        { x: grip.x, y: grip.y + size * 0.55 },
        { x: eye.x + radius * 0.6, y: eye.y + radius * 0.75 },
      ],
      true,
    );
    const frame = rectangle(grip.x, grip.y - size * 0.3, display + size * 0.7, size * 1.95);
    return framed(
      stick + frame + circle(eye, radius),
      blades + circle(eye, radius * 0.18),
      { x: grip.x + size * 0.35, y: grip.y, width: display, height: size * 1.35 },
      size,
    );
  }
  if (kind === 'powered-hood') {
    const house = Math.max(throat * 1.25, display / 2 + size * 0.4);
    const deep = Math.min(size * 2.5, floor - low);
    const rotor = segment(mouth.x - throat * 0.8, low - 4, mouth.x + throat * 0.8, low - 4);
    const blades = [-0.55, 0.55]
      .map(
        (k) =>
          `M${at(mouth.x + k * throat - throat * 0.3, low - 8)}l${n(throat * 0.6)} 8M${at(mouth.x + k * throat - throat * 0.3, low)}l${n(throat * 0.6)} -8`,
      )
      .join('');
    return framed(
      funnel + rectangle(mouth.x - house, low, house * 2, deep),
      rotor + blades,
      box(low + (deep - size * 1.35) / 2),
      size,
    );
  }
  const seams = [-0.34, 0.34]
    .map((k) => segment(mouth.x + k * wide, mouth.y + 2, mouth.x + k * throat, low))
    .join('');
  const skirt = rectangle(mouth.x - throat, low, throat * 2, Math.max(4, half * 0.25));
  return framed(funnel + skirt, seams, box(mouth.y + tall * 0.42), size);
}

/** At a hole in the duct: a gauge on a tube, or a bent tube with the marks it is moved by. */
function atDuct(drawing: Drawing, place: Sample, { kind, text }: MeterReading): MeterDrawing {
  const size = drawing.lettering * 1.05;
  const display = windowFor(text, size);
  const side = -upward(place);
  const wall = place.half * 1.28;
  const foot = beside(place, side * wall);
  // Beside a duct that stands, under one that lies.
  const stands = Math.abs(place.ty) > 0.5;
  const box: Box = {
    x: stands
      ? place.x + place.full * 2.6
      : Math.max(
          2,
          Math.min(drawing.frame.width - display - 4, foot.x - display * (kind === 'manometer' ? 1.2 : 0.5)),
        ),
    y: Math.min(foot.y + place.full * (stands ? 0.4 : 1.5), drawing.frame.height - size * 2.4),
    width: display,
    height: size * 1.35,
  };
  const casing = rectangle(box.x - size * 0.4, box.y - size * 0.35, display + size * 0.8, size * 2.05);
  const top = { x: box.x + display / 2, y: box.y - size * 0.35 };
  const tube = (root: Point) =>
    `M${at(root.x, root.y)}C${at(root.x, root.y + place.full * 0.8)} ${at(top.x, top.y - place.full * 0.8)} ${at(top.x, top.y)}`;
  if (kind === 'pitot-traverse') {
    const head = from(place, -place.full * 0.75, 0);
    const elbow = from(place, 0, 0);
    const out = beside(place, side * (wall + place.full * 0.5));
    // Six places on the diameter, by the log-linear rule.
    const marks = [0.032, 0.135, 0.321, 0.679, 0.865, 0.968]
      .map((depth) => circle(from(place, -place.full * 0.75, (depth * 2 - 1) * place.half), 1.1))
      .join('');
    return framed(casing + marks, line([head, elbow, out]) + tube(out), box, size);
  }
  const nipple = line([beside(place, side * place.half * 0.94), beside(place, side * (wall + 3))]);
  return framed(casing, nipple + tube(beside(place, side * (wall + 3))), box, size);
}

export function meter(drawing: Drawing, reading: MeterReading): MeterDrawing | null {
  const points = drawing.centreline;
  const stretch = stretchOf(points, reading.place);
  if (!stretch) return null;
  if (reading.kind === 'manometer') return atDuct(drawing, placeAt(points, stretch.to - 1), reading);
  if (reading.kind === 'pitot-traverse')
    return atDuct(drawing, placeAt(points, stretch.from + (stretch.to - stretch.from) * 0.34), reading);
  const first = placeAt(points, stretch.from);
  return underGrille(
    drawing,
    { x: first.x, y: first.y + first.full * 0.3 + drawing.lettering * 0.5 },
    first.full,
    reading,
  );
}
