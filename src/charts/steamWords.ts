/** The steam clock in words and as tables. */
import { say } from '#i18n';
import { soundMoments, spanOf, things, told, type SteamInput, type Thing } from './steam.ts';
import { capital } from './words.ts';
import type { ChartTable, SteamStory } from './types.ts';

const percent = (share: number): string => String(Math.round(share * 100));

/** The finding: how long the thing that parts the two runs most stays wet, now against the run with nothing wrong. */
export function steamTitle(input: SteamInput): string {
  const present = input.stories.find(({ tone }) => tone === 'present') ?? input.stories[0];
  const healthy = input.stories.find(({ tone }) => tone === 'healthy');
  if (!present) return say('chart.steam.title.none');
  const minutesOf = (thing: Thing, story: SteamStory): number => {
    const { way, minutes, whole } = told(thing, story, input);
    return way === 'never' ? whole + 1 : minutes;
  };
  /** Minutes between the two runs. */
  const apart = (thing: Thing): number =>
    healthy ? Math.abs(minutesOf(thing, present) - minutesOf(thing, healthy)) : 0;
  const ways = (thing: Thing): boolean =>
    healthy !== undefined && told(thing, present, input).way !== told(thing, healthy, input).way;
  const most = (of: (thing: Thing) => number): Thing =>
    things.reduce((best, one) => (of(one) > of(best) ? one : best));
  const parted = things.some((thing) => apart(thing) > 0 || ways(thing));
  // Where both are alike, or there is one alone, what stays wet longest is the news.
  const thing = parted
    ? most((one) => apart(one) + (ways(one) ? 0.5 : 0))
    : most((one) => minutesOf(one, present));
  const was = healthy && (apart(thing) > 0 || ways(thing)) ? told(thing, healthy, input) : undefined;
  const now = told(thing, present, input);
  return say('chart.steam.title', { thing, ...now, was: was?.way ?? 'none', before: was?.minutes ?? 0 });
}

export function steamSummary(input: SteamInput): string {
  const parts = [say('chart.steam.about', { shower: input.shower_min })];
  for (const story of input.stories) {
    const peak = Math.max(0, ...soundMoments(story.moments).map(({ relativeHumidity }) => relativeHumidity));
    parts.push(capital(say('chart.steam.about.peak', { label: story.label, percent: percent(peak) })));
    for (const thing of things)
      parts.push(
        capital(say(`chart.steam.about.${thing}`, { label: story.label, ...told(thing, story, input) })),
      );
  }
  if (input.runOn_min != null) parts.push(say('chart.steam.about.stop', { minutes: input.runOn_min }));
  return parts.join(' ');
}

/** When things dry, and the damp of the air every few minutes. */
export function steamTables(input: SteamInput): ChartTable[] {
  const { stories } = input;
  const every = Math.max(1, Math.round(spanOf(input) / 60) * 5);
  const minutes = Array.from({ length: Math.floor(spanOf(input) / every) + 1 }, (_, index) => index * every);
  const at = (story: SteamStory, minute: number) =>
    soundMoments(story.moments).find((moment) => moment.minute >= minute);
  return [
    {
      caption: say('chart.steam.table.dry'),
      columns: ['', ...things.map((thing) => say(`chart.steam.${thing}`))],
      rows: stories.map((story) => [
        story.label,
        ...things.map((thing) => say('chart.steam.cell', told(thing, story, input))),
      ]),
    },
    {
      caption: say('chart.steam.table.air'),
      columns: [
        say('chart.steam.minute'),
        ...stories.flatMap(({ label }) => [
          say('chart.steam.damp', { label }),
          say('chart.steam.film', { label }),
        ]),
      ],
      rows: minutes.map((minute) => [
        String(minute),
        ...stories.flatMap((story) => {
          const moment = at(story, minute);
          return moment
            ? [percent(moment.relativeHumidity), String(Math.round(moment.film_g))]
            : [say('chart.none'), say('chart.none')];
        }),
      ]),
    },
  ];
}
