/** The steam clock as geometry: how damp the air is, minute by minute, and how long mirror and walls stay wet. */
import { say } from '#i18n';
import { ticksOf, type Tick } from './crossing.ts';
import { segmentsOf, straightPath, type Spot } from './curve.ts';
import { textWidth } from './measure.ts';
import { placeLabels, type Box, type LabelRequest, type PlacedLabel } from './placeLabels.ts';
import { linearScale } from './scale.ts';
import type { SteamStory } from './types.ts';

export interface SteamInput {
  readonly stories: readonly SteamStory[];
  readonly shower_min: number;
  /** How long the fan goes on after the shower; absent when it goes on to the end. */
  readonly runOn_min?: number | undefined;
  /** Relative humidity, 0 to 1, above which the mirror is fogged. */
  readonly mirrorFogs: number;
}

/** From when to when something is wet, in minutes of the story; `to` is null when it still is at the end. */
export interface Wet {
  readonly from: number;
  readonly to: number | null;
}

/** Less than a gram on all the walls is dry to the hand (model assumption). */
const DRY_G = 1;

export const things = ['mirror', 'walls'] as const;
export type Thing = (typeof things)[number];

/** When a thing is wet: from the first wet minute to the first dry one after the last. Undefined: never. */
export function wetOf(thing: Thing, { moments }: SteamStory, { mirrorFogs }: SteamInput): Wet | undefined {
  const sound = soundMoments(moments);
  const wet = sound.map(({ relativeHumidity, film_g }) =>
    thing === 'mirror' ? relativeHumidity > mirrorFogs : film_g >= DRY_G,
  );
  const first = wet.indexOf(true);
  if (first < 0) return undefined;
  return { from: sound[first]!.minute, to: sound[wet.lastIndexOf(true) + 1]?.minute ?? null };
}

/** Minutes after the shower until it is dry: 0 when it dries before, null when it never does. */
export function dryAfter(thing: Thing, story: SteamStory, input: SteamInput): number | null {
  const wet = wetOf(thing, story, input);
  if (!wet) return 0;
  return wet.to === null ? null : Math.max(0, wet.to - input.shower_min);
}

export const soundMoments = (moments: SteamStory['moments']) =>
  moments.filter(
    ({ minute, relativeHumidity }) => Number.isFinite(minute) && Number.isFinite(relativeHumidity),
  );

/** The minutes worth drawing: a little past the last thing to dry and the run-on. */
export function spanOf(input: SteamInput): number {
  const whole = Math.max(1, ...input.stories.flatMap(({ moments }) => moments.at(-1)?.minute ?? 0));
  const ends = input.stories.flatMap((story) => things.map((thing) => wetOf(thing, story, input)));
  const stop = input.shower_min + (input.runOn_min ?? 0);
  const last = Math.max(stop, ...ends.map((wet) => wet?.to ?? 0));
  // What never dries runs off the right end; the rest should not be squeezed for it.
  const open = ends.some((wet) => wet?.to === null);
  return Math.min(whole, Math.max(last * (open ? 2 : 1.2), input.shower_min * (open ? 6 : 2)));
}

export interface Lane {
  readonly id: string;
  readonly tone: SteamStory['tone'];
  readonly y: number;
  readonly bar?: { readonly x: number; readonly width: number; readonly open: boolean } | undefined;
  readonly text: string;
  /** Where its words stand; they are set to the left of it inside the bar when there is no room beyond. */
  readonly at: { readonly x: number; readonly anchor: 'start' | 'end' };
}

export interface SteamLayout {
  readonly height: number;
  readonly frame: Box;
  readonly xTicks: readonly Tick[];
  readonly yTicks: readonly Tick[];
  readonly lines: readonly {
    readonly id: string;
    readonly tone: SteamStory['tone'];
    readonly path: string;
  }[];
  readonly shower: number;
  readonly stop?: number | undefined;
  readonly fogs: number;
  readonly labels: readonly PlacedLabel[];
  readonly names: readonly { readonly thing: Thing; readonly y: number }[];
  readonly lanes: readonly Lane[];
  readonly laneHeight: number;
}

export function steamLayout(input: SteamInput, width: number, plotHeight: number, type: number): SteamLayout {
  const span = spanOf(input);
  const stories = input.stories.map((story) => ({ ...story, moments: soundMoments(story.moments) }));
  const lowest = Math.min(
    input.mirrorFogs,
    ...stories.flatMap(({ moments }) => moments.map(({ relativeHumidity }) => relativeHumidity)),
  );
  const floor = Math.max(0, Math.floor(lowest * 10 - 0.2) / 10) * 100;
  const frame: Box = {
    x: type * 2.7,
    y: type * 1.9,
    width: Math.max(60, width - type * 3.5),
    height: Math.max(60, plotHeight - type * 4.7),
  };
  const x = linearScale([0, span], [0, frame.width]);
  const up = linearScale([floor, 100], [frame.height, 0], { clamp: true });
  const lines = stories.map(({ id, tone, label, moments }) => {
    const spots: Spot[] = moments
      .filter(({ minute }) => minute <= span)
      .map(({ minute, relativeHumidity }) => ({ x: x(minute), y: up(relativeHumidity * 100) }));
    return { id, tone, label, spots, path: straightPath(spots) };
  });
  const shower = x(input.shower_min);
  const end = input.runOn_min == null ? undefined : input.shower_min + input.runOn_min;
  const stop = end != null && end <= span ? x(end) : undefined;
  const fogs = up(input.mirrorFogs * 100);

  const size = type * 1.15;
  const label = (
    id: string,
    text: string,
    places: LabelRequest['places'],
    optional = false,
  ): LabelRequest => ({
    id,
    texts: [{ text, width: textWidth(text, type) + 2 }],
    height: size,
    places,
    optional,
  });
  const requests: LabelRequest[] = lines.map(({ tone, label: text, spots }) =>
    label(
      tone,
      text,
      // Beside the stretch after the shower, where the two runs part.
      [0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8, 0.95].flatMap((share) => {
        const spot = spots[Math.floor(share * (spots.length - 1))];
        if (!spot) return [];
        const [near, far] = tone === 'present' ? ([-1, 1] as const) : ([1, -1] as const);
        return [near, far].flatMap((side) => [
          {
            x: spot.x - side * 4,
            y: spot.y + side * (size * 0.55 + 4),
            anchor: side < 0 ? 'start' : 'end',
          } as const,
          { x: spot.x, y: spot.y + side * (size + 6), anchor: 'middle' } as const,
        ]);
      }),
    ),
  );
  const fogText = say('chart.steam.fogs', { percent: Math.round(input.mirrorFogs * 100) });
  requests.push(
    label('fogs', fogText, [
      { x: frame.width, y: fogs - size * 0.6, anchor: 'end' },
      { x: frame.width, y: fogs + size * 0.6, anchor: 'end' },
      { x: shower + 6, y: fogs + size * 0.6, anchor: 'start' },
    ]),
  );
  const showerText = say('chart.steam.shower');
  if (shower > textWidth(showerText, type) + 4)
    requests.push(
      label('shower', showerText, [{ x: shower / 2, y: frame.height - size * 0.6, anchor: 'middle' }]),
    );
  if (stop != null) {
    const foot = frame.height - size * 0.6;
    requests.push(
      label('stop', say('chart.steam.stop'), [
        { x: stop + 5, y: foot, anchor: 'start' },
        { x: stop - 5, y: foot, anchor: 'end' },
      ]),
    );
  }
  const segments = lines.flatMap(({ spots }) => segmentsOf(spots, undefined, 40));
  segments.push({ x1: 0, y1: fogs, x2: frame.width, y2: fogs });
  if (stop != null) segments.push({ x1: stop, y1: 0, x2: stop, y2: frame.height });

  const laneHeight = Math.round(type * 1.3);
  const names: { thing: Thing; y: number }[] = [];
  const lanes: Lane[] = [];
  let y = frame.y + frame.height + type * 3;
  for (const thing of things) {
    names.push({ thing, y: y + type });
    y += type * 1.5;
    for (const story of stories) {
      const wet = wetOf(thing, story, input);
      const to = x(Math.min(span, wet?.to ?? span));
      const bar = wet && { x: x(wet.from), width: Math.max(2, to - x(wet.from)), open: wet.to === null };
      const text = laneText(thing, story, input);
      const after = (bar ? to : shower) + 6;
      const fits = after + textWidth(text, type) <= frame.width + type * 0.8;
      const at = fits ? ({ x: after, anchor: 'start' } as const) : ({ x: to - 6, anchor: 'end' } as const);
      lanes.push({ id: `${thing}-${story.id}`, tone: story.tone, y, bar, text, at });
      y += laneHeight + 4;
    }
    y += type * 0.3;
  }
  return {
    height: y,
    frame,
    xTicks: ticksOf(x, Math.max(2, Math.round(frame.width / (type * 4.2)))),
    yTicks: ticksOf(up, Math.max(2, Math.round(frame.height / (type * 3.6)))),
    lines: lines.map(({ id, tone, path }) => ({ id, tone, path })),
    shower,
    stop,
    fogs,
    labels: placeLabels(
      requests,
      { boxes: [], segments },
      { x: 0, y: -type, width: frame.width, height: frame.height + type },
    ),
    names,
    lanes,
    laneHeight,
  };
}

/** "31 min, healthy run": minutes after the shower. */
function laneText(thing: Thing, story: SteamStory, input: SteamInput): string {
  return say('chart.steam.lane', { ...told(thing, story, input), label: story.label });
}

/** The same as values for words: dry after so many minutes, never in the whole story, or never wet. */
export function told(thing: Thing, story: SteamStory, input: SteamInput) {
  const minutes = dryAfter(thing, story, input);
  const way = wetOf(thing, story, input) ? (minutes === null ? 'never' : 'dry') : 'stays';
  const whole = Math.round((story.moments.at(-1)?.minute ?? 0) - input.shower_min);
  return { way, minutes: Math.round(minutes ?? 0), whole } as const;
}
