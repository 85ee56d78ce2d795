/** The pressure walk as geometry, its words and its table. */
import { show, type UnitChoice } from '#units';
import { say } from '#i18n';
import { segmentsOf, straightPath, type Spot } from './curve.ts';
import { textWidth } from './measure.ts';
import { linearScale } from './scale.ts';
import { placeLabels, type Box, type LabelRequest, type Place, type PlacedLabel } from './placeLabels.ts';
import type { ChartTable, WalkStation } from './types.ts';
import { brief, spoken, spokenUnit, symbol } from './words.ts';

export interface WalkInput {
  readonly stations: readonly WalkStation[];
  readonly before?: readonly WalkStation[];
  readonly choice: UnitChoice;
  readonly extent_Pa: readonly [number, number];
  /** A stretch to name on the line itself. */
  readonly cause?: { readonly x0: number; readonly x1: number; readonly text: string };
  /** Id of the piece whose loss is lit. */
  readonly highlight?: string | null;
}

export interface WalkLayout {
  readonly total: string;
  readonly still: string;
  readonly before: string;
  readonly zero: { readonly y: number; readonly from: number; readonly to: number };
  readonly labels: readonly PlacedLabel[];
  /** The stretch the cause names. */
  readonly cause: string;
  readonly lit?: { readonly x: number; readonly width: number; readonly path: string };
  /** The chart's name stands at the left when the run leaves room for it there. */
  readonly nameFits: boolean;
  /** Where each piece lies, for pointing at it. */
  readonly pieces: readonly { readonly id: string; readonly x: number; readonly width: number }[];
}

function sound(stations: readonly WalkStation[]): WalkStation[] {
  return stations.filter(
    (station) =>
      Number.isFinite(station.x) && Number.isFinite(station.total_Pa) && Number.isFinite(station.static_Pa),
  );
}

/** Highest and lowest total pressure of the run. */
export function extremes(stations: readonly WalkStation[]): { peak?: WalkStation; trough?: WalkStation } {
  let peak: WalkStation | undefined;
  let trough: WalkStation | undefined;
  for (const station of sound(stations)) {
    if (!peak || station.total_Pa > peak.total_Pa) peak = station;
    if (!trough || station.total_Pa < trough.total_Pa) trough = station;
  }
  return { peak, trough };
}

export function walkLayout(
  input: WalkInput,
  width: number,
  height: number,
  type: number,
  taken: readonly Box[] = [],
): WalkLayout {
  const { choice } = input;
  const stations = sound(input.stations);
  const [low, high] = input.extent_Pa;
  const flat = !(Number.isFinite(low) && Number.isFinite(high) && high > low);
  const up = linearScale(flat ? [-1, 1] : [low, high], [height - type * 1.2, type * 1.2]);
  const spots = (list: readonly WalkStation[], key: 'total_Pa' | 'static_Pa'): Spot[] =>
    list.map((station) => ({ x: station.x, y: up(station[key]) }));
  const total = spots(stations, 'total_Pa');
  const still = spots(stations, 'static_Pa');
  const before = spots(sound(input.before ?? []), 'total_Pa');
  const zeroY = up(0);
  const from = stations[0]?.x ?? 0;
  const to = stations.at(-1)?.x ?? width;
  const pieces = stations.slice(1).map((station, index) => ({
    id: station.after,
    x: stations[index]!.x,
    width: Math.max(0, station.x - stations[index]!.x),
  }));
  const lit = pieces.find((piece) => piece.id === input.highlight);

  const size = type * 1.15;
  const request = (id: string, text: string, places: readonly Place[], optional = false): LabelRequest => ({
    id,
    texts: [{ text, width: textWidth(text, type) + 2 }],
    height: size,
    places,
    optional,
  });
  const around = (spot: Spot, away: -1 | 1): Place[] =>
    (
      [
        [0, 'middle'],
        [6, 'start'],
        [-6, 'end'],
        [26, 'start'],
        [-26, 'end'],
      ] as const
    ).flatMap(([dx, anchor]) => [
      { x: spot.x + dx, y: spot.y + away * (size / 2 + 4), anchor },
      { x: spot.x + dx, y: spot.y + away * (size + 5), anchor },
    ]);
  const requests: LabelRequest[] = [];
  const { peak, trough } = extremes(stations);
  const above = (spot: Spot): -1 | 1 => (spot.y <= zeroY ? -1 : 1);
  if (peak && peak.total_Pa > 0) {
    const spot = { x: peak.x, y: up(peak.total_Pa) };
    requests.push(
      request('peak', show('pressure', peak.total_Pa, choice, { signed: true }).text, around(spot, -1)),
    );
  }
  if (trough && trough.total_Pa < 0) {
    const spot = { x: trough.x, y: up(trough.total_Pa) };
    requests.push(
      request('trough', show('pressure', trough.total_Pa, choice, { signed: true }).text, around(spot, 1)),
    );
  }
  const zero = `${brief('pressure', 0, choice)} ${symbol('pressure', choice)}`;
  requests.push(
    request('zero', zero, [
      { x: from - 6, y: zeroY, anchor: 'end' },
      { x: from, y: zeroY - size / 2 - 3, anchor: 'start' },
      { x: to + 6, y: zeroY, anchor: 'start' },
      { x: from, y: zeroY + size / 2 + 3, anchor: 'start' },
      { x: to, y: zeroY + size / 2 + 3, anchor: 'end' },
    ]),
  );
  const cause = input.cause;
  const stretch = cause ? between(total, cause.x0, cause.x1) : [];
  if (cause && stretch.length > 0) {
    const middle = stretch[Math.floor(stretch.length / 2)]!;
    const x = (cause.x0 + cause.x1) / 2;
    const top = Math.min(...stretch.map((spot) => spot.y));
    const side = above(middle);
    const near = [0, 0.7, 1.4, 2.1, 2.8, 3.5].flatMap((lift): Place[] => [
      { x, y: middle.y + side * (size * (0.5 + lift) + 8), anchor: 'middle' },
      { x: cause.x1, y: middle.y + side * (size * (0.5 + lift) + 5), anchor: 'end' },
      { x: cause.x0, y: top - size * (0.5 + lift) - 5, anchor: 'start' },
      { x, y: middle.y - side * (size * (0.5 + lift) + 5), anchor: 'middle' },
    ]);
    requests.push(request('cause', cause.text, near));
  }
  const alongLine = (line: readonly Spot[]): Place[] =>
    [0.94, 0.85, 0.75, 0.65, 0.55, 0.2, 0.1].flatMap((share) => {
      const x = from + share * (to - from);
      const spot = between(line, x, x)[0];
      return spot
        ? [-1, 1].map((side): Place => ({ x, y: spot.y + side * (size / 2 + 4), anchor: 'middle' }))
        : [];
    });
  if (before.length > 1) requests.push(request('before', say('chart.walk.before'), alongLine(before), true));
  if (still.length > 1) requests.push(request('static', say('chart.walk.static'), alongLine(still), true));
  if (total.length > 1) requests.push(request('total', say('chart.walk.total'), alongLine(total), true));

  const segments = [total, still, before].flatMap((line) => segmentsOf(line, undefined, 60));
  segments.push({ x1: from, y1: zeroY, x2: to, y2: zeroY });
  return {
    total: straightPath(total),
    still: straightPath(still),
    before: straightPath(before),
    zero: { y: zeroY, from, to },
    labels: placeLabels(requests, { boxes: taken, segments }, { x: 0, y: 0, width, height }),
    cause: straightPath(stretch),
    lit: lit && { x: lit.x, width: lit.width, path: straightPath(between(total, lit.x, lit.x + lit.width)) },
    nameFits:
      from >
      Math.max(textWidth(say('chart.walk.name'), type * 1.14), textWidth(say('chart.walk.along'), type)) +
        textWidth(zero, type) +
        16,
    pieces,
  };
}

/** The part of a line between two places, its ends read off the line. */
function between(line: readonly Spot[], x0: number, x1: number): Spot[] {
  const first = line[0];
  const last = line.at(-1);
  if (!first || !last || x1 < first.x || x0 > last.x) return [];
  const read = (x: number): Spot => {
    const next = line.findIndex((spot) => spot.x >= x);
    const right = line[next] ?? last;
    const left = line[next - 1] ?? right;
    const share = right.x === left.x ? 0 : (x - left.x) / (right.x - left.x);
    return { x, y: left.y + share * (right.y - left.y) };
  };
  // Where the line drops straight down at an end, the whole drop belongs to the part.
  const near = 0.01;
  const own = line.filter((spot) => spot.x >= x0 - near && spot.x <= x1 + near);
  const meets = (x: number): boolean => own.some((spot) => Math.abs(spot.x - x) <= near);
  const start = Math.max(x0, first.x);
  const end = Math.min(x1, last.x);
  return [...(meets(start) ? [] : [read(start)]), ...own, ...(meets(end) ? [] : [read(end)])];
}

/** The finding: how far below the room the fan pulls and how far above it pushes. */
export function walkTitle(stations: readonly WalkStation[], choice: UnitChoice): string {
  const { peak, trough } = extremes(stations);
  return say('chart.walk.title', {
    low: show('pressure', Math.min(0, trough?.total_Pa ?? 0), choice).number,
    high: show('pressure', Math.max(0, peak?.total_Pa ?? 0), choice, { signed: true }).text,
  });
}

export function walkSummary(input: WalkInput): string {
  const { peak, trough } = extremes(input.stations);
  const was = extremes(input.before ?? []);
  const value = (station: WalkStation | undefined): string =>
    spoken('pressure', station?.total_Pa ?? 0, input.choice);
  const parts = [
    say('chart.walk.about', {
      unit: spokenUnit('pressure', input.choice),
      low: value(trough),
      high: value(peak),
    }),
  ];
  if (input.before?.length)
    parts.push(say('chart.walk.about.before', { low: value(was.trough), high: value(was.peak) }));
  if (input.cause) parts.push(say('chart.sentence', { text: input.cause.text }));
  return parts.join(' ');
}

export function walkTable(input: WalkInput, names: Readonly<Record<string, string>>): ChartTable {
  const { choice } = input;
  const unit = symbol('pressure', choice);
  const before = input.before;
  const number = (value: number | undefined): string =>
    value == null ? say('chart.none') : show('pressure', value, choice).number;
  return {
    caption: say('chart.walk.table'),
    columns: [
      say('chart.walk.place'),
      say('chart.walk.totalHead', { unit }),
      say('chart.walk.staticHead', { unit }),
      ...(before ? [say('chart.walk.beforeHead', { unit })] : []),
    ],
    rows: input.stations.map((station) => [
      station.after === 'outside air'
        ? say('chart.walk.outside')
        : station.after === 'room'
          ? say('chart.walk.room')
          : station.after === 'fan inlet'
            ? say('chart.walk.fanInlet')
            : say('chart.walk.after', { piece: names[station.after] ?? station.after }),
      number(station.total_Pa),
      number(station.static_Pa),
      ...(before ? [number(before.find((other) => other.after === station.after)?.total_Pa)] : []),
    ]),
  };
}
