/** The pressure walk as geometry: its lines, what spends pressure where, and what leaks where. */
import { rounded, show, type UnitChoice } from '#units';
import { say } from '#i18n';
import { segmentsOf, spotAt, straightPath, type Spot } from './curve.ts';
import { textWidth } from './measure.ts';
import { linearScale } from './scale.ts';
import { placeLabels, type Box, type LabelRequest, type Place, type PlacedLabel } from './placeLabels.ts';
import type { WalkLeak, WalkMark, WalkStation } from './types.ts';
import { brief, leakWords, symbol } from './words.ts';

export interface WalkInput {
  readonly stations: readonly WalkStation[];
  readonly before?: readonly WalkStation[];
  readonly choice: UnitChoice;
  readonly extent_Pa: readonly [number, number];
  /** A stretch to name on the line itself. */
  readonly cause?: { readonly x0: number; readonly x1: number; readonly text: string } | undefined;
  /** What else spends pressure, each marked on the line and named where there is room. */
  readonly marks?: readonly WalkMark[];
  /** Where air leaves for the roof space or is drawn in from it. */
  readonly leaks?: readonly WalkLeak[];
  /** Id of the piece whose loss is lit. */
  readonly highlight?: string | null;
  /** What is said of it, on the drawing. */
  readonly reading?: string;
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
  readonly marks: readonly (Spot & { readonly id: string })[];
  /** Arrows of the leaks, pointing up and out of the run or down into it. */
  readonly leaks: readonly { readonly id: string; readonly shaft: string; readonly head: string }[];
  /** The chart's name stands at the left when the run leaves room for it there. */
  readonly nameFits: boolean;
  /** Where each piece lies, for pointing at it. */
  readonly pieces: readonly WalkPiece[];
}

export interface WalkPiece {
  readonly id: string;
  readonly x: number;
  readonly width: number;
  /** Total pressure where it begins and where it ends. */
  readonly from_Pa: number;
  readonly to_Pa: number;
}

/** Stations that end no piece. */
const NO_PIECE = ['room', 'outside air'];

/** The pieces of the run in order. What is spent at the fan's inlet belongs to the fan. */
export function piecesOf(stations: readonly WalkStation[]): WalkPiece[] {
  const list = sound(stations);
  const pieces: WalkPiece[] = [];
  list.forEach((station, index) => {
    const before = list[index - 1];
    if (!before || NO_PIECE.includes(station.after)) return;
    const id = station.after === FAN_INLET ? (list[index + 1]?.after ?? station.after) : station.after;
    const last = pieces.at(-1);
    const width = Math.max(0, station.x - before.x);
    if (last?.id === id)
      pieces[pieces.length - 1] = { ...last, width: last.width + width, to_Pa: station.total_Pa };
    else pieces.push({ id, x: before.x, width, from_Pa: before.total_Pa, to_Pa: station.total_Pa });
  });
  return pieces;
}

export const FAN_INLET = 'fan inlet';

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
  const pieces = piecesOf(stations);
  const lit = pieces.find((piece) => piece.id === input.highlight);

  const size = type * 1.15;
  const request = (id: string, text: string, places: readonly Place[], optional = false): LabelRequest => ({
    id,
    texts: [{ text, width: textWidth(text, type) + 2 }],
    height: size,
    places,
    optional,
  });
  const tied = (id: string, texts: readonly string[], places: readonly Place[]): LabelRequest => ({
    id,
    texts: texts.map((text) => ({ text, width: textWidth(text, type) + 2 })),
    height: size,
    places,
    tied: true,
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
  if (lit && input.reading) {
    const middle = lit.x + lit.width / 2;
    const line = spotAt(total, middle)?.y ?? zeroY;
    const rows = [0.5, 1.4, 2.3, 3.2, 4.1].flatMap((lift): Place[] =>
      [-1, 1].flatMap((side) =>
        (
          [
            [middle, 'middle'],
            [lit.x, 'start'],
            [lit.x + lit.width, 'end'],
          ] as const
        ).map(([x, anchor]) => ({ x, anchor, y: line + side * (size * lift + 6) })),
      ),
    );
    requests.push(request('reading', input.reading, rows));
  }
  const arrows = (input.leaks ?? [])
    .filter((leak) => Number.isFinite(leak.x) && rounded('flow', Math.abs(leak.flow_L_s), choice) > 0)
    .map((leak) => {
      const y = Math.min(spotAt(total, leak.x)?.y ?? zeroY, zeroY) - 4;
      const far = Math.max(type * 0.2, y - type * 1.3);
      const [tail, tip] = leak.flow_L_s > 0 ? [y, far] : [far, y];
      const barb = Math.sign(tail - tip) * type * 0.36;
      const side = type * 0.26;
      requests.push(
        tied(
          `leak-${leak.id}`,
          leakWords(leak, choice),
          [far + size * 0.35, far + size * 0.8, far - size * 0.2].flatMap((at): Place[] => [
            { x: leak.x + side + 3, y: at, anchor: 'start' },
            { x: leak.x - side - 3, y: at, anchor: 'end' },
          ]),
        ),
      );
      return {
        id: leak.id,
        x: leak.x,
        tail,
        tip,
        shaft: straightPath([
          { x: leak.x, y: tail },
          { x: leak.x, y: tip },
        ]),
        head: straightPath([
          { x: leak.x - side, y: tip + barb },
          { x: leak.x, y: tip },
          { x: leak.x + side, y: tip + barb },
        ]),
      };
    });
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
  const marks = (input.marks ?? []).flatMap((mark) => {
    const spot = spotAt(total, mark.x);
    return spot && Number.isFinite(mark.x) ? [{ ...spot, x: mark.x, id: mark.id, texts: mark.texts }] : [];
  });
  for (const mark of marks) {
    const places = [0.5, 1.4].flatMap((lift): Place[] =>
      [above(mark), -above(mark)].flatMap((side) =>
        (
          [
            [mark.x, 'middle'],
            [mark.x + 8, 'start'],
            [mark.x - 8, 'end'],
          ] as const
        ).map(([x, anchor]) => ({ x, anchor, y: mark.y + side * (size * lift + 7) })),
      ),
    );
    requests.push({ ...tied(`mark-${mark.id}`, mark.texts, places), optional: true });
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
  segments.push(...arrows.map(({ x, tail, tip }) => ({ x1: x, y1: tail, x2: x, y2: tip })));
  const dots = marks.map(({ x, y }) => ({ x: x - 5, y: y - 5, width: 10, height: 10 }));
  return {
    total: straightPath(total),
    still: straightPath(still),
    before: straightPath(before),
    zero: { y: zeroY, from, to },
    labels: placeLabels(requests, { boxes: [...taken, ...dots], segments }, { x: 0, y: 0, width, height }),
    cause: straightPath(stretch),
    marks: marks.map(({ id, x, y }) => ({ id, x, y })),
    leaks: arrows.map(({ id, shaft, head }) => ({ id, shaft, head })),
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
