/**
 * The crossing as geometry: what may be seen, then where every line, mark and label stands. Pure, so
 * a reveal may feed it a new solution on every frame.
 */
import { linearScale, type LinearScale } from './scale.ts';
import type { CurvePoint } from '#physics';
import { toDisplay, type UnitChoice } from '#units';
import { clip, pressureAt, segmentsOf, smoothPath, spotAt, straightPath, tidy, type Spot } from './curve.ts';
import { crossingLabels } from './crossingLabels.ts';
import type { Box, PlacedLabel, Segment } from './placeLabels.ts';
import type { Curve, Guess, Tone } from './types.ts';
import { difference } from './words.ts';

export interface CrossingInput {
  readonly fan: readonly CurvePoint[];
  readonly curves: readonly Curve[];
  readonly point: CurvePoint | null;
  /**
   * What leaves the run, L/s, where leaks make it another flow than the fan's: what the likely band, the
   * prediction and the requirement are of. Absent: the point's own flow.
   */
  readonly leaving_L_s?: number;
  readonly before?: CurvePoint | null;
  /** Where the flow really lies, L/s, 95 times in a hundred. */
  readonly likely?: { readonly low_L_s: number; readonly high_L_s: number };
  readonly predicted?: number | null;
  readonly required?: number;
  readonly choice: UnitChoice;
  readonly extent: CurvePoint;
  readonly hideResult?: boolean;
  readonly guess?: Guess;
}

/** The input with everything taken out that would give the answer away. */
export interface CrossingView extends Omit<CrossingInput, 'hideResult'> {
  readonly hidden: boolean;
}

export function visible({ hideResult, ...input }: CrossingInput): CrossingView {
  const finite = (point: CurvePoint | null | undefined): CurvePoint | null =>
    point && Number.isFinite(point.flow_L_s) && Number.isFinite(point.pressure_Pa) ? point : null;
  return {
    ...input,
    curves: hideResult ? input.curves.filter((curve) => curve.tone !== 'present') : input.curves,
    point: hideResult ? null : finite(input.point),
    before: finite(input.before),
    leaving_L_s: hideResult ? undefined : input.leaving_L_s,
    likely: hideResult ? undefined : input.likely,
    predicted: input.guess?.value_L_s ?? input.predicted,
    hidden: hideResult === true,
  };
}

/** The flow that counts outdoors; null where no result may be seen. */
export const leaving = ({ point, leaving_L_s }: CrossingView): number | null =>
  point && (leaving_L_s ?? point.flow_L_s);

/** Whether what leaves the run is, as shown, another flow than what passes the fan. */
function leaks(view: CrossingView): boolean {
  const result = leaving(view);
  if (result === null || !view.point) return false;
  return difference('flow', view.point.flow_L_s, result, view.choice) !== 0;
}

/** The system curve a reader means: the present one, or the latest that may be seen. */
export function readable(view: CrossingView): Curve | undefined {
  const order: Tone[] = ['present', 'before', 'healthy', 'ghost'];
  return order.map((tone) => view.curves.findLast((curve) => curve.tone === tone)).find(Boolean);
}

export interface Tick {
  readonly at: number;
  readonly text: string;
}

export interface Size {
  readonly width: number;
  readonly height: number;
  /** Size of the lettering in px. */
  readonly type: number;
}

export interface CrossingLayout {
  readonly frame: Box;
  readonly x: (flow_L_s: number) => number;
  readonly y: (pressure_Pa: number) => number;
  readonly flowAt: (x: number) => number;
  readonly xTicks: readonly Tick[];
  readonly yTicks: readonly Tick[];
  readonly lines: readonly { readonly id: string; readonly tone: Tone | 'fan'; readonly path: string }[];
  readonly labels: readonly PlacedLabel[];
  readonly dot?: Spot;
  /** Where the point lies outside the axes: the way to it from `dot`, which is held at the edge, in degrees from right. */
  readonly beyond?: number;
  readonly ring?: Spot;
  readonly arrow?: { readonly path: string; readonly head: string };
  readonly required?: number;
  readonly prediction?: { readonly x: number; readonly size: number; readonly onFan?: Spot };
  /** The likely band of the flow, lying on the axis. */
  readonly likely?: { readonly from: number; readonly to: number };
  /** Where the system curve lies if all the doubt is the run's: through the fan curve at both ends of the band. */
  readonly band?: { readonly area: string; readonly edges: readonly string[] };
  readonly gap?: { readonly from: number; readonly to: number; readonly y: number };
}

/** Clear space around ring and dot, as a share of the lettering's size. */
const markShare = 0.57;

export function layout(view: CrossingView, { width, height, type }: Size): CrossingLayout {
  const frame: Box = {
    x: type * 2.4,
    y: type * 1.9,
    width: Math.max(40, width - type * 3.4),
    height: Math.max(40, height - type * 4.7),
  };
  const flowEnd = toDisplay('flow', positive(view.extent.flow_L_s), view.choice);
  const pressureEnd = toDisplay('pressure', positive(view.extent.pressure_Pa), view.choice);
  const across = linearScale([0, flowEnd], [0, frame.width]);
  const up = linearScale([0, pressureEnd], [frame.height, 0]);
  const x = (flow_L_s: number): number => across(toDisplay('flow', flow_L_s, view.choice));
  const y = (pressure_Pa: number): number => up(toDisplay('pressure', pressure_Pa, view.choice));
  const spot = (point: CurvePoint): Spot => ({ x: x(point.flow_L_s), y: y(point.pressure_Pa) });
  const scales = [frame.width, frame.height, flowEnd, pressureEnd].join(' ');
  const drawn = (points: readonly CurvePoint[]): Drawn =>
    drawnOnce(points, scales, () => clip(tidy(points).map(spot), frame.width, frame.height));

  const { spots: fan, path: fanPath } = drawn(view.fan);
  const curves = view.curves.map((curve) => ({ ...curve, ...drawn(curve.points) }));
  const edges = bandEdges(view).map((points) => clip(points.map(spot), frame.width, frame.height));
  const held = (value: number, most: number): number => Math.min(most, Math.max(0, value));
  const xHeld = (flow_L_s: number): number => held(x(flow_L_s), frame.width);
  const spotHeld = ({ flow_L_s, pressure_Pa }: CurvePoint): Spot => ({
    x: xHeld(flow_L_s),
    y: held(y(pressure_Pa), frame.height),
  });
  const dot = view.point ? spotHeld(view.point) : undefined;
  const beyond = view.point && dot ? wayOff(spot(view.point), dot) : undefined;
  const ring = view.before ? spotHeld(view.before) : undefined;
  const arrow = dot && ring ? slide(fan, ring, dot, type) : undefined;
  const required = view.required == null ? undefined : x(view.required);
  const size = type * 0.7;
  const markRadius = type * markShare;
  const predicted = view.predicted;
  const guessed_Pa = view.guess ? pressureAt(tidy(view.fan), view.guess.value_L_s) : null;
  const prediction =
    predicted == null || !Number.isFinite(predicted)
      ? undefined
      : {
          x: xHeld(predicted),
          size,
          onFan: guessed_Pa == null ? undefined : { x: x(predicted), y: y(guessed_Pa) },
        };
  // A prediction is measured against a result, never against the point it starts from.
  const result = leaving(view);
  const missed =
    result !== null && view.before && predicted != null
      ? difference('flow', result, predicted, view.choice)
      : 0;
  const gap =
    result !== null && prediction && missed !== 0
      ? { from: xHeld(result), to: prediction.x, y: frame.height - type * 1.6 }
      : undefined;

  const linesOf = (ghost: boolean): Segment[] =>
    curves
      .filter((curve) => (curve.tone === 'ghost') === ghost)
      .flatMap((curve) => segmentsOf(curve.spots, `curve-${curve.id}`));
  const segments = [...segmentsOf(fan, 'fan'), ...linesOf(false)];
  const faint = [...linesOf(true), ...edges.flatMap((edge) => segmentsOf(edge))];
  if (arrow) segments.push(...segmentsOf(arrow.spots, undefined, 6));
  if (dot) segments.push({ x1: dot.x, y1: dot.y, x2: dot.x, y2: frame.height });
  if (ring) faint.push({ x1: ring.x, y1: ring.y, x2: ring.x, y2: frame.height });
  if (required != null) segments.push({ x1: required, y1: 0, x2: required, y2: frame.height });
  if (prediction?.onFan)
    segments.push({ x1: prediction.x, y1: prediction.onFan.y, x2: prediction.x, y2: frame.height });
  if (gap) {
    segments.push({ x1: gap.from, y1: gap.y, x2: gap.to, y2: gap.y });
    segments.push({ x1: gap.to, y1: gap.y - 5, x2: gap.to, y2: frame.height });
  }
  const boxes: Box[] = [dot, ring, prediction?.onFan].flatMap((mark) =>
    mark
      ? [{ x: mark.x - markRadius, y: mark.y - markRadius, width: markRadius * 2, height: markRadius * 2 }]
      : [],
  );
  if (prediction)
    boxes.push({ x: prediction.x - size * 0.65, y: frame.height - size, width: size * 1.3, height: size });

  return {
    frame,
    x,
    y,
    flowAt: (at) => view.extent.flow_L_s * Math.min(1, Math.max(0, at / frame.width)),
    xTicks: ticksOf(across, Math.max(2, Math.round(frame.width / (type * 4.2)))),
    yTicks: ticksOf(up, Math.max(2, Math.round(frame.height / (type * 3.6)))),
    lines: [
      ...curves.map(({ id, tone, path }) => ({ id, tone, path })),
      { id: 'fan', tone: 'fan' as const, path: fanPath },
    ],
    labels: crossingLabels(
      view,
      {
        frame,
        type,
        fan,
        curves,
        dot,
        required,
        prediction,
        gap,
        missed,
        ...(result !== null && leaks(view) ? { leaves: xHeld(result) } : {}),
      },
      { boxes, segments, faint },
    ),
    likely: view.likely && { from: xHeld(view.likely.low_L_s), to: xHeld(view.likely.high_L_s) },
    band: bandOf(edges, frame.width),
    dot,
    beyond,
    ring,
    arrow,
    required,
    prediction,
    gap,
  };
}

/** Degrees from pointing right in which a point lies outside the axes, seen from where its mark is held; undefined inside. */
function wayOff(point: Spot, held: Spot): number | undefined {
  const [across, down] = [Math.sign(point.x - held.x), Math.sign(point.y - held.y)];
  return across || down ? (Math.atan2(down, across) * 180) / Math.PI : undefined;
}

/**
 * The present system curve scaled so that it meets the fan curve at each end of the likely band. The band
 * holds the fan's doubt too; drawn on the run it says how far off the curve must be for those flows.
 */
function bandEdges(view: CrossingView): CurvePoint[][] {
  const present = view.curves.findLast((curve) => curve.tone === 'present');
  if (!present || !view.likely || !view.point) return [];
  // With leaks the band is of what leaves the run, and the curve of what passes the fan.
  if (leaks(view)) return [];
  const run = tidy(present.points);
  const fan = tidy(view.fan);
  const edges = [view.likely.low_L_s, view.likely.high_L_s].map((flow_L_s) => {
    const given = pressureAt(fan, flow_L_s);
    const asked = pressureAt(run, flow_L_s);
    if (given == null || asked == null || !(asked > 0) || !(given > 0)) return [];
    return run.map((point) => ({ ...point, pressure_Pa: (point.pressure_Pa * given) / asked }));
  });
  return edges.every((edge) => edge.length > 1) ? edges : [];
}

function bandOf([left, right]: readonly Spot[][], width: number): CrossingLayout['band'] {
  const [leftEnd, rightEnd] = [left?.at(-1), right?.at(-1)];
  if (!left || !right || !leftEnd || !rightEnd || left.length < 2 || right.length < 2) return undefined;
  // Where the frame cuts the two at different sides its corner belongs to the band.
  const corner = leftEnd.x < width && rightEnd.y > 0 ? `L${width.toFixed(1)},0` : '';
  const back = straightPath([...right].reverse()).slice(1);
  return { area: `${straightPath(left)}${corner}L${back}Z`, edges: [smoothPath(left), smoothPath(right)] };
}

interface Drawn {
  readonly spots: readonly Spot[];
  readonly path: string;
}

/** Curves drawn before: during a reveal one curve moves and the rest need not be made again. */
const drawings = new WeakMap<readonly CurvePoint[], Drawn & { readonly scales: string }>();

function drawnOnce(points: readonly CurvePoint[], scales: string, draw: () => Spot[]): Drawn {
  const known = drawings.get(points);
  if (known?.scales === scales) return known;
  const spots = draw();
  const made = { scales, spots, path: smoothPath(spots) };
  drawings.set(points, made);
  return made;
}

function positive(value: number): number {
  return Number.isFinite(value) && value > 0 ? value : 1;
}

export function ticksOf(scale: LinearScale, count: number): Tick[] {
  // d3 takes the count as a hint and may nearly double it; ask for fewer until they fit.
  let ask = count;
  while (ask > 2 && scale.ticks(ask).length > count + 1) ask -= 1;
  const format = scale.tickText(ask);
  return scale.ticks(ask).map((value) => ({ at: scale(value), text: format(value) }));
}

/**
 * An arrow that follows the fan curve from ring to dot, lifted off it so that both can be seen. Where the fan itself
 * has changed, the ring lies on a curve that is gone, and the arrow bends over from one to the other.
 */
function slide(
  fan: readonly Spot[],
  ring: Spot,
  dot: Spot,
  type: number,
): (CrossingLayout['arrow'] & { spots: Spot[] }) | undefined {
  const markRadius = type * markShare;
  const reach = Math.hypot(dot.x - ring.x, dot.y - ring.y);
  if (reach < markRadius * 2 + 8) return undefined;
  const lift = Math.min(type * 1.3, Math.max(10, reach * 0.3));
  const barbs = Math.min(type * 0.57, reach * 0.22);
  const onFan = (mark: Spot) => Math.abs((spotAt(fan, mark.x)?.y ?? Infinity) - mark.y) < type;
  const along = onFan(ring) && onFan(dot);
  const steps = 16;
  const spots: Spot[] = [];
  for (let step = 0; step <= steps; step += 1) {
    const share = step / steps;
    const at = ring.x + share * (dot.x - ring.x);
    const straightY = ring.y + share * (dot.y - ring.y);
    const y = (along ? spotAt(fan, at)?.y : undefined) ?? straightY;
    // Near the ends the fan curve is left for the mark itself, which need not lie on it to the pixel.
    const blend = Math.sin(Math.PI * share);
    const spot = { x: at + lift * blend * 0.6, y: straightY + (y - straightY) * blend - lift * blend };
    const clear = markRadius - 1;
    if (Math.hypot(spot.x - ring.x, spot.y - ring.y) < clear) continue;
    if (Math.hypot(spot.x - dot.x, spot.y - dot.y) < clear + 1) continue;
    spots.push(spot);
  }
  const tip = spots[spots.length - 1];
  const tail = spots[spots.length - 2];
  if (!tip || !tail) return undefined;
  const angle = Math.atan2(dot.y - tail.y, dot.x - tail.x);
  const barb = (turn: number): Spot => ({
    x: tip.x - barbs * Math.cos(angle + turn),
    y: tip.y - barbs * Math.sin(angle + turn),
  });
  return { spots, path: straightPath(spots), head: straightPath([barb(0.6), tip, barb(-0.6)]) };
}
