/** What is written where: the present fault, dimensions, places, pieces and the note on scale. */
import type { RoomUse } from './furnishings.ts';
import { numeral, say } from '#i18n';
import type { Piece, Solution } from '#physics';
import { defaults, show, type UnitChoice } from '#units';
import type { Box, Frame, Label, Lettering, Point, Sample } from '../types.ts';
import type { Level } from './centreline.ts';
import type { Measured } from './dimensions.ts';
import { band, faultSpots } from './faultSpots.ts';
import { settle, widthOf, type Wanted } from './labels.ts';
import type { Scale } from './scale.ts';
import { rafterUnder, type Sizes } from './sizes.ts';
import { styleOf } from './walls.ts';

/** Key of the label that only marks the fault's place. */
export const MARK = 'fault/mark';

interface Setting {
  readonly run: readonly Piece[];
  readonly solution: Solution;
  readonly frame: Frame;
  readonly size: Sizes;
  readonly scale: Scale;
  readonly lettering: Lettering;
  readonly measured: readonly Measured[];
  readonly levels: ReadonlyMap<string, Level>;
  readonly points: readonly Sample[];
  /** Points the present fault's label may lead to. */
  readonly fault: Point | null;
  readonly grilleX: number;
  /** x of every strap. */
  readonly straps: readonly number[];
  /** What the room below is for. */
  readonly use: RoomUse;
  /** Whether the note on scale stands left, because the room takes the right. */
  readonly noteLeft: boolean;
  /** Whether the room leaves no corner for it on either side. */
  readonly cramped: boolean;
  /** Where the room ends. */
  readonly roomRight: number;
  /** Middle of the scale bar, and its length in metres; absent where there is none. */
  readonly bar: (Point & { readonly metres: number }) | null;
  readonly outlet: Point;
  readonly taken: readonly Box[];
}

function faultLabel(setting: Setting): Wanted[] {
  const { lettering, fault, size } = setting;
  const label = lettering.faultLabel;
  if (!label || !fault) return [];
  const letter = size.lettering;
  // Before a class the panel counts the faults, and two lines of its letters find no room over the run.
  const title = setting.frame.lettering === undefined ? label.title : '';
  const titleWidth = widthOf(title, 'title', letter * 0.94);
  const width = Math.max(titleWidth, widthOf(label.text, 'ink', letter)) + 4;
  const spots = faultSpots({ ...setting, fault, width, lines: title ? 2 : 1 });
  const avoid = setting.measured.map(({ taken }) => taken);
  const common = { anchor: 'middle', avoid, target: fault } as const;
  // In a small drawing the number, or an arrow, marks the place, and the words stand under the drawing.
  const mark = (text: string, wide: number): Wanted => ({
    ...common,
    key: MARK,
    text,
    tone: 'title',
    size: letter * 0.94,
    spots: faultSpots({ ...setting, fault, width: wide + 4, lines: 1 }),
  });
  const arrow = mark('↓', letter);
  const less = title ? { ...mark(title, titleWidth), less: arrow } : arrow;
  const shared = { ...common, key: 'fault', spots, ...(size.small ? { less } : {}) } as const;
  // A case's fault has no number; its words then need no line above them.
  return title
    ? [{ ...shared, text: title, under: label.text, tone: 'title', size: letter * 0.94 }]
    : [{ ...shared, text: label.text, tone: 'ink', size: letter }];
}

function figures(setting: Setting, choice: UnitChoice): Wanted[] {
  const letter = setting.size.lettering;
  // On a phone the fault's own words carry the figure; the arrow stays.
  const kept = setting.size.named || !setting.lettering.faultLabel ? setting.measured : [];
  return kept.map((measure): Wanted => {
    const value = show('depth', measure.value_m, choice).text;
    const text =
      measure.kind === 'sag'
        ? value
        : say(measure.kind === 'crimp' ? 'scene.dimension.open' : 'scene.dimension.bore', { value });
    const { x, y } = measure.figure;
    const wide = widthOf(text, 'ink', letter);
    const start = measure.side === 'right' ? 0 : -wide / 2;
    // Never over the duct: beside a tie a deep belly may hang where its figure would stand.
    const clear = (spot: Point) =>
      setting.points.every(
        (point) =>
          point.x < spot.x + start - 2 ||
          point.x > spot.x + start + wide + 2 ||
          Math.abs(point.y - (spot.y - letter * 0.35)) > point.half + letter * 0.5,
      );
    return {
      key: measure.key,
      text,
      tone: 'ink',
      size: letter,
      anchor: measure.side === 'right' ? 'start' : 'middle',
      spots: [
        { x, y },
        { x, y: y + letter * 0.7 },
        { x: x + letter * 2, y },
        { x: x - letter * 2, y },
      ].filter(clear),
    };
  });
}

function pieces(setting: Setting, choice: UnitChoice): Wanted[] {
  const { run, levels, points, size } = setting;
  const letter = size.lettering * 0.94;
  return run.flatMap((piece): Wanted[] => {
    const own = points.filter((point) => point.piece === piece.id);
    const level = levels.get(piece.id);
    if (piece.kind === 'fan') {
      const x = own[Math.floor(own.length / 2)]!.x;
      const top = Math.min(...own.map((point) => point.y - point.half)) - letter * 1.3;
      const lift = show('pressure', setting.solution.fan.pressure_Pa, choice).text;
      return [
        {
          key: piece.id,
          text: say('scene.fan', { lift }),
          tone: 'ink',
          size: letter,
          anchor: 'middle',
          spots: [0, 0.6, 1.2].map((k) => ({ x, y: top - k * letter })),
        },
      ];
    }
    if (piece.kind !== 'duct') return [];
    const swapped = setting.solution.pieces.find((result) => result.id === piece.id)?.shape.swappedShare ?? 0;
    const wall = swapped > 0.5 ? 'flexible' : styleOf(piece);
    const text = say('scene.duct', {
      wall: say(`scene.wall.${wall}`),
      length: show('length', piece.path_m, choice).text,
    });
    // The riser alone: a hanging loop stands up too, but further on.
    const standing = own.filter((point) => point.ty < -0.95 && Math.abs(point.x - own[0]!.x) < 1);
    const riser = standing[Math.floor(standing.length / 2)];
    if (riser) {
      const x = riser.x - riser.full * 1.75;
      return [
        {
          key: piece.id,
          text,
          tone: 'quiet',
          size: letter,
          anchor: 'end',
          spots: [0, -1, 1, -2].map((k) => ({ x, y: riser.y + k * letter })),
        },
      ];
    }
    if (!level || level.to - level.from < letter * 7) return [];
    const half = widthOf(text, 'quiet', letter) / 2;
    const spots = [0.5, 0.68, 0.32, 0.8, 0.2].flatMap((t) => {
      const x = level.from + (level.to - level.from) * t;
      const { bottom } = band(points, x - half, x + half);
      return bottom + letter * 1.5 < size.joistTop ? [{ x, y: bottom + letter * 1.3 }] : [];
    });
    return [{ key: piece.id, text, tone: 'quiet', size: letter, anchor: 'middle', spots }];
  });
}

function places(setting: Setting): Wanted[] {
  const { size, frame, roomRight } = setting;
  const letter = size.lettering * 0.86;
  const low = frame.height - letter * 0.9;
  const inner = size.wallLeft + size.wallThick + letter;
  const outside = (size.wallRight + size.wallThick + frame.width) / 2;
  const roofX = inner + widthOf(say('scene.roof-space'), 'place', letter) / 2;
  const roofY = Math.max(rafterUnder(size, inner), rafterUnder(size, inner + letter * 3)) + letter * 2.6;
  const label = (
    key: string,
    text: string,
    x: number,
    ys: number[],
    anchor: Wanted['anchor'] = 'middle',
  ): Wanted => ({ key, text, tone: 'place', size: letter, anchor, spots: ys.map((y) => ({ x, y })) });
  return [
    label('outdoors', say('scene.outdoors'), outside, [low]),
    ...(size.wide
      ? [label('roof-space', say('scene.roof-space'), roofX, [roofY, roofY + letter * 1.5])]
      : []),
    ...(size.wide
      ? [label('room', say(`scene.room.${setting.use}`), roomRight - letter * 0.6, [low], 'end')]
      : []),
  ];
}

/** How many times bores and sag are drawn larger than lengths. */
export function noteOn({ enlargement }: Scale, { wide }: Pick<Sizes, 'wide'>): string {
  const times = numeral(String(Math.round(enlargement * 10) / 10));
  return say(wide ? 'scene.note' : 'scene.note.short', { times });
}

export function letter(setting: Setting): Label[] {
  const choice = setting.lettering.choice ?? defaults;
  const { size, frame, scale } = setting;
  const note = size.wide ? Math.max(12, size.lettering * 0.9) : size.lettering;
  const noteText = noteOn(scale, size);
  const noteLong = widthOf(noteText, 'quiet', note);
  const noteX = setting.noteLeft
    ? size.wallLeft + size.wallThick + size.lettering * 0.8
    : size.wallRight - size.lettering * 0.8;
  const low = frame.height - note * 0.8;
  const aside = setting.noteLeft ? noteLong : 0;
  const corner = { x: noteX, y: low };
  const sky = [{ x: frame.width - 6 - aside, y: note * 1.4 }];
  const noteWanted: Wanted = {
    key: 'note',
    text: noteText,
    tone: 'quiet',
    size: note,
    anchor: setting.noteLeft ? 'start' : 'end',
    // On a phone a room that reaches this far has no corner free; one end of the sky may have.
    spots: size.wide ? [corner] : setting.cramped ? sky : [corner, ...sky],
  };
  const wanted: Wanted[] = [
    // On wide paper what has one place only comes before what can stand elsewhere; a phone is for the fault.
    ...(size.wide ? [] : faultLabel(setting)),
    ...figures(setting, choice),
    noteWanted,
    ...(setting.bar
      ? [
          {
            key: 'scale',
            text: show('length', setting.bar.metres, choice).text,
            tone: 'quiet' as const,
            size: note,
            anchor: 'middle' as const,
            spots: [setting.bar],
          },
        ]
      : []),
    ...(size.wide ? faultLabel(setting) : []),
    ...(size.named ? places(setting) : []),
    ...(size.named ? pieces(setting, choice) : []),
  ];
  return settle(wanted, frame, setting.taken);
}
