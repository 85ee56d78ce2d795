/** Watts and litres as geometry: a line of speed steps for each fan, and rays of equal litres for a watt. */
import { show, toDisplay, type UnitChoice } from '#units';
import { numeral, say } from '#i18n';
import { ticksOf, type Tick } from './crossing.ts';
import { segmentsOf, straightPath, type Spot } from './curve.ts';
import { textWidth } from './measure.ts';
import { placeLabels, type Box, type LabelRequest, type Place, type PlacedLabel } from './placeLabels.ts';
import { linearScale } from './scale.ts';
import type { WattsFan, WattsPoint } from './types.ts';
import { difference, symbol } from './words.ts';

export interface WattsInput {
  /** The first is what the second is held against: the other fan, or the run before. */
  readonly fans: readonly WattsFan[];
  readonly choice: UnitChoice;
  /** Draw all are compared at, with the flow each gives there in the order of `fans`; null where it cannot. */
  readonly same?: { readonly power_W: number; readonly flow_L_s: readonly (number | null)[] } | undefined;
  /** Right end and top of the axes; taken from the points when absent. */
  readonly extent?: { readonly power_W: number; readonly flow_L_s: number } | undefined;
}

export interface WattsLine {
  readonly id: string;
  /** Place in `fans`: the first is dashed and ringed, the second solid and filled. */
  readonly index: number;
  readonly path: string;
  readonly steps: readonly Spot[];
  readonly present?: Spot | undefined;
}

export interface WattsLayout {
  readonly frame: Box;
  readonly xTicks: readonly Tick[];
  readonly yTicks: readonly Tick[];
  readonly rays: readonly { readonly value: number; readonly path: string }[];
  readonly lines: readonly WattsLine[];
  /** From where one fan ran before to where it runs now, when neither has speeds to draw a line of. */
  readonly moved: string;
  readonly same?: { readonly x: number; readonly from: number; readonly to: number } | undefined;
  readonly labels: readonly PlacedLabel[];
}

export function drawable(points: readonly WattsPoint[]): WattsPoint[] {
  return points.filter(({ power_W, flow_L_s }) => Number.isFinite(power_W) && Number.isFinite(flow_L_s));
}

/** Litres for a watt in the reader's unit; null where nothing is drawn. */
export function perWatt(point: WattsPoint | undefined, choice: UnitChoice): number | null {
  return point && point.power_W > 0 ? toDisplay('flow', point.flow_L_s, choice) / point.power_W : null;
}

/** Flows at the same watts, lowest first, with what lies between them as a reader would work it out. */
export function gapAt({ same, fans, choice }: WattsInput) {
  const [first, second] = same?.flow_L_s ?? [];
  if (!same || fans.length !== 2 || first == null || second == null) return undefined;
  return { power_W: same.power_W, first, second, gap: difference('flow', first, second, choice) };
}

export function wattsLayout(input: WattsInput, width: number, height: number, type: number): WattsLayout {
  const { choice } = input;
  const fans = input.fans.slice(0, 2).map((fan) => ({ ...fan, points: drawable(fan.points) }));
  const every = fans.flatMap(({ points }) => points);
  const most = (values: readonly number[], floor: number) => Math.max(floor, ...values) * 1.12;
  const across =
    input.extent?.power_W ??
    most(
      every.map(({ power_W }) => power_W),
      5,
    );
  const tall =
    input.extent?.flow_L_s ??
    most(
      every.map(({ flow_L_s }) => flow_L_s),
      5,
    );
  const frame: Box = { x: type * 2.7, y: type * 1.6, width: 0, height: 0 };
  const box: Box = {
    ...frame,
    width: Math.max(60, width - frame.x - type * 0.8),
    height: Math.max(60, height - frame.y - type * 2.8),
  };
  const top = toDisplay('flow', tall, choice);
  const x = linearScale([0, across], [0, box.width]);
  const up = linearScale([0, top], [box.height, 0]);
  const spot = ({ power_W, flow_L_s }: WattsPoint): Spot => ({
    x: x(power_W),
    y: up(toDisplay('flow', flow_L_s, choice)),
  });
  const lines = fans.map(({ id, points, present }, index): WattsLine => {
    const steps = points.map(spot);
    const now = present && drawable([present])[0];
    return { id, index, steps, path: straightPath(steps), present: now && spot(now) };
  });

  const ends = lines.flatMap(({ present, steps }) => (present && steps.length < 2 ? [present] : []));
  const moved = ends.length === 2 ? straightPath(ends) : '';

  // Round litres for a watt, few enough to be told apart, each to where it leaves the frame.
  const corner = top / across;
  const rays = [0.4, 1, 2]
    .map((share) => nice(corner * share))
    .filter((value, index, all) => value > 0 && all.indexOf(value) === index)
    .map((value) => {
      const end = value > corner ? { x: x(top / value), y: 0 } : { x: box.width, y: up(value * across) };
      return { value, end, path: straightPath([{ x: 0, y: box.height }, end]) };
    });

  const size = type * 1.15;
  const worded = (id: string, texts: readonly string[], places: readonly Place[]): LabelRequest => ({
    id,
    texts: texts.map((text) => ({ text, width: textWidth(text, type) + 2 })),
    height: size,
    places,
  });
  const requests: LabelRequest[] = [];
  const gap = gapAt(input);
  const same =
    input.same && Number.isFinite(input.same.power_W) && input.same.power_W <= across
      ? {
          x: x(input.same.power_W),
          from: gap ? up(toDisplay('flow', gap.first, choice)) : box.height,
          to: gap ? up(toDisplay('flow', gap.second, choice)) : box.height,
        }
      : undefined;
  lines.forEach((line) => {
    const fan = fans[line.index]!;
    const at = line.present ?? line.steps.at(-1);
    if (!at) return;
    const spots = [at, ...line.steps.slice().reverse()];
    const off = type * 0.75;
    requests.push(
      worded(
        `fan-${line.index}`,
        [fan.label],
        spots.flatMap((here): Place[] => [
          { x: here.x - off, y: here.y - off * 0.6, anchor: 'end' },
          { x: here.x, y: here.y - size * 1.15, anchor: 'middle' },
          { x: here.x + off, y: here.y + off, anchor: 'start' },
          { x: here.x, y: here.y + size * 1.15, anchor: 'middle' },
        ]),
      ),
    );
  });
  if (same && gap) {
    const text = gapText(gap.gap, choice);
    const middle = (same.from + same.to) / 2;
    const places = [middle, same.to, same.from].flatMap((y): Place[] => [
      { x: same.x + type * 0.6, y, anchor: 'start' },
      { x: same.x - type * 0.6, y, anchor: 'end' },
    ]);
    requests.unshift(worded('gap', [text], places));
  }
  if (same) {
    const text = say('chart.watts.at', { watts: watts(input.same?.power_W ?? 0) });
    const foot = box.height - size * 0.6;
    requests.push(
      worded(
        'same',
        [text],
        [
          { x: same.x + 5, y: foot, anchor: 'start' },
          { x: same.x - 5, y: foot, anchor: 'end' },
        ],
      ),
    );
  }
  const unit = symbol('flow', choice);
  rays.forEach(({ value, end }) => {
    const along = [0.93, 0.84, 0.74, 0.64, 0.54, 0.44].map((share): Place => {
      const from = { x: 0, y: box.height };
      return { x: from.x + (end.x - from.x) * share, y: from.y + (end.y - from.y) * share, anchor: 'middle' };
    });
    const number = numeral(String(value));
    const text = say('chart.watts.ray', { value: number, unit });
    requests.push({ ...worded(`ray-${number}`, [text, number], along), tied: true });
  });
  const segments = [
    ...lines.flatMap(({ steps }) => segmentsOf(steps)),
    ...segmentsOf(moved ? ends : []),
    ...(same ? [{ x1: same.x, y1: 0, x2: same.x, y2: box.height }] : []),
  ];
  const dot = type * 0.5;
  const boxes = lines.flatMap(({ present, steps }) =>
    [...steps, ...(present ? [present] : [])].map((at) => ({
      x: at.x - dot,
      y: at.y - dot,
      width: dot * 2,
      height: dot * 2,
    })),
  );
  return {
    frame: box,
    xTicks: ticksOf(x, Math.max(2, Math.round(box.width / (type * 4.2)))),
    yTicks: ticksOf(up, Math.max(2, Math.round(box.height / (type * 3.6)))),
    rays: rays.map(({ value, path }) => ({ value, path })),
    lines,
    moved,
    same,
    labels: placeLabels(
      requests,
      { boxes, segments },
      { x: 2, y: 0, width: box.width + type * 0.8 - 2, height: box.height - 2 },
    ),
  };
}

/** "12.3 L/s more" or "less". */
export function gapText(gap: number, choice: UnitChoice): string {
  const flow = show('flow', Math.abs(gap), choice, { already: true }).number;
  return say('chart.watts.gap', { flow, unit: symbol('flow', choice), way: gap < 0 ? 'less' : 'more' });
}

/** Watts as shown, to a tenth. */
export const toTenth = (power_W: number): number => Math.round(power_W * 10) / 10;
export const watts = (power_W: number): string => numeral(String(toTenth(power_W)));

/** The nearest of 1, 1.5, 2, 3, 5 times a power of ten. */
function nice(value: number): number {
  if (!(value > 0 && Number.isFinite(value))) return 0;
  const power = 10 ** Math.floor(Math.log10(value));
  const lead = [1, 1.5, 2, 3, 5, 10].reduce((best, one) =>
    Math.abs(Math.log(one / (value / power))) < Math.abs(Math.log(best / (value / power))) ? one : best,
  );
  return Number((lead * power).toPrecision(2));
}

/** What a table and a title say of one fan. */
export function presentOf(fan: WattsFan | undefined): WattsPoint | undefined {
  return fan && drawable([...fan.points, ...(fan.present ? [fan.present] : [])]).at(-1);
}
