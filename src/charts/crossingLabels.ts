/** The words on the crossing and the places each would like, most important first. */
import { say } from '#i18n';
import { show } from '#units';
import type { Spot } from './curve.ts';
import { spotAt } from './curve.ts';
import type { CrossingView } from './crossing.ts';
import { textWidth } from './measure.ts';
import {
  placeLabels,
  type Box,
  type LabelRequest,
  type Obstacles,
  type Place,
  type PlacedLabel,
} from './placeLabels.ts';
import type { Curve } from './types.ts';
import { brief, more } from './words.ts';

export interface LabelGround {
  readonly frame: Box;
  readonly type: number;
  readonly fan: readonly Spot[];
  readonly curves: readonly (Curve & { readonly spots: readonly Spot[] })[];
  readonly dot?: Spot;
  readonly required?: number;
  readonly prediction?: { readonly x: number; readonly size: number };
  /** Where what leaves the run lies on the axis, when leaks make it another flow than the fan's. */
  readonly leaves?: number;
  readonly gap?: { readonly from: number; readonly to: number; readonly y: number };
  /** Prediction less result in the reader's unit. */
  readonly missed: number;
}

/** Where along a system curve its words may stand: near its end first. */
const fromTheEnd = [0.97, 0.92, 0.86, 0.8, 0.73, 0.66, 0.58, 0.5, 0.42, 0.34];
/** The fan curve is named where it runs down alone, else near its start. */
const alongTheFan = [0.8, 0.74, 0.86, 0.68, 0.92, 0.12, 0.2, 0.28, 0.6, 0.5, 0.4];

export function crossingLabels(view: CrossingView, ground: LabelGround, obstacles: Obstacles): PlacedLabel[] {
  const { frame, type, required, prediction, gap, missed } = ground;
  // What is said of a curve when its own words find no room.
  const short: Record<Curve['tone'], string[]> = {
    present: [say('chart.crossing.presentShort')],
    before: [say('chart.crossing.beforeShort')],
    healthy: [say('chart.crossing.healthyShort')],
    ghost: [],
  };
  const height = type * 1.15;
  const request = (
    id: string,
    texts: readonly string[],
    places: readonly Place[],
    optional = false,
  ): LabelRequest => ({
    id,
    texts: texts.map((text) => ({ text, width: textWidth(text, type) + 2 })),
    height,
    places,
    optional,
    over: id === 'you' || id === 'gap',
    tied: id === 'fan' || id.startsWith('curve-'),
  });
  const requests: LabelRequest[] = [];

  if (prediction && view.predicted != null) {
    const value = brief('flow', view.predicted, view.choice);
    // Only a result can be hit; a prediction beside the starting point is still open.
    const exact = ground.dot && view.before && missed === 0;
    const texts = exact
      ? [say('chart.crossing.youExact', { value }), say('chart.crossing.you', { value })]
      : [say('chart.crossing.you', { value })];
    const leftFirst = missed < 0 || (missed === 0 && prediction.x > frame.width * 0.7);
    requests.push(request('you', texts, besideMark(prediction, frame.height, height, leftFirst)));
  }
  if (gap && prediction) {
    const value = show('flow', Math.abs(missed), view.choice, { already: true }).number;
    const middle = (gap.from + gap.to) / 2;
    const above = gap.y - height / 2 - 1;
    const away = gap.to > gap.from;
    const far = gap.to + (away ? 5 : -5);
    requests.push(
      request(
        'gap',
        [say('chart.crossing.gap', { value, way: more(missed) }), value],
        [
          { x: middle, y: above, anchor: 'middle' },
          { x: far, y: gap.y - height * 0.3, anchor: away ? 'start' : 'end' },
          { x: far, y: above, anchor: away ? 'start' : 'end' },
          { x: gap.from + (away ? -5 : 5), y: above, anchor: away ? 'end' : 'start' },
        ],
      ),
    );
  }
  pushCurves('present', false);
  requests.push(
    request(
      'fan',
      [say('chart.crossing.fan'), say('chart.crossing.fanShort')],
      alongside(ground.fan, alongTheFan, height, 'fan'),
    ),
  );
  if (required != null && view.required != null) {
    const value = brief('flow', view.required, view.choice);
    requests.push(
      request(
        'required',
        [say('chart.crossing.required', { value }), value],
        besideRule(required, frame, height),
      ),
    );
  }
  if (ground.dot && view.point) {
    const { x, y } = ground.dot;
    const spots = [0.45, 0.6, 0.3, 0.75].flatMap((share): Place[] => {
      const at = y + share * (frame.height - y);
      return [
        { x: x + 5, y: at, anchor: 'start' },
        { x: x - 5, y: at, anchor: 'end' },
      ];
    });
    requests.push(request('result', [show('flow', view.point.flow_L_s, view.choice).number], spots, true));
  }
  if (ground.leaves !== undefined && view.leaving_L_s !== undefined) {
    const value = show('flow', view.leaving_L_s, view.choice).number;
    const y = frame.height - height * 0.8;
    requests.push(
      request(
        'leaves',
        [say('chart.crossing.leaves', { value })],
        [1, 2, 3].flatMap((row): Place[] =>
          (['middle', 'end', 'start'] as const).map((anchor) => ({
            x: ground.leaves! + (anchor === 'end' ? -5 : anchor === 'start' ? 5 : 0),
            y: y - (row - 1) * height,
            anchor,
          })),
        ),
        true,
      ),
    );
  }
  pushCurves('before', false);
  pushCurves('healthy', false);
  pushCurves('ghost', true);

  function pushCurves(tone: Curve['tone'], optional: boolean): void {
    for (const curve of ground.curves) {
      if (curve.tone !== tone || curve.spots.length < 2) continue;
      requests.push(
        request(
          `curve-${curve.id}`,
          [curve.label, ...short[tone]],
          alongside(curve.spots, fromTheEnd, height, 'system'),
          optional,
        ),
      );
    }
  }

  const margin = { x: 3, y: 1, width: frame.width + type * 0.8, height: frame.height - 3 };
  return placeLabels(requests, obstacles, margin);
}

function besideMark(
  mark: { x: number; size: number },
  floor: number,
  height: number,
  leftFirst: boolean,
): Place[] {
  const aside = mark.size * 0.65 + 3;
  const right = (lift: number): Place => ({ x: mark.x + aside, y: floor - lift, anchor: 'start' });
  const left = (lift: number): Place => ({ x: mark.x - aside, y: floor - lift, anchor: 'end' });
  const places: Place[] = [];
  for (const lift of [height * 0.72, height * 2, height * 3, height * 4]) {
    places.push(...(leftFirst ? [left(lift), right(lift)] : [right(lift), left(lift)]));
  }
  return places;
}

function besideRule(x: number, frame: Box, height: number): Place[] {
  const places: Place[] = [];
  for (let y = height * 0.7; y < frame.height - height; y += height * 0.8) {
    places.push({ x: x + 5, y, anchor: 'start' }, { x: x - 5, y, anchor: 'end' });
  }
  return places;
}

/** Both sides of a line, far enough off for a box of this height to clear the line's slope. */
function alongside(
  spots: readonly Spot[],
  shares: readonly number[],
  height: number,
  kind: 'fan' | 'system',
): Place[] {
  const first = spots[0];
  const last = spots[spots.length - 1];
  if (!first || !last) return [];
  const places: Place[] = [];
  for (const share of shares) {
    const x = first.x + share * (last.x - first.x);
    const spot = spotAt(spots, x);
    const next = spotAt(spots, x + 4);
    const back = spotAt(spots, x - 4);
    if (!spot || !next || !back) continue;
    const slope = Math.abs((next.y - back.y) / (next.x - back.x || 1));
    const off = 5 + height / 2 / Math.max(0.45, slope);
    const right: Place = { x: x + off, y: spot.y, anchor: 'start', tie: spot };
    const left: Place = { x: x - off, y: spot.y, anchor: 'end', tie: spot };
    // A falling fan curve has its free side to the upper right, a rising system curve to the lower right.
    const lift = kind === 'fan' ? -height * 0.35 : height * 0.35;
    places.push({ ...right, y: spot.y + lift }, { ...left, y: spot.y - lift }, right, left);
  }
  return places;
}
