/** The steam clock in words and as tables. */
import { say } from '#i18n';
import { soundMoments, spanOf, things, told, type SteamInput, type Thing } from './steam.ts';
import { capital } from './words.ts';
import type { ChartTable, SteamStory } from './types.ts';

const percent = (share: number): string => String(Math.round(share * 100));

/** The finding: how long the mirror takes now against the run with nothing wrong, or the walls if it is no longer. */
export function steamTitle(input: SteamInput): string {
  const present = input.stories.find(({ tone }) => tone === 'present') ?? input.stories[0];
  const healthy = input.stories.find(({ tone }) => tone === 'healthy');
  if (!present) return say('chart.steam.title.none');
  const parted = (thing: Thing): boolean => {
    if (!healthy) return false;
    const [now, was] = [told(thing, present, input), told(thing, healthy, input)];
    return now.way !== was.way || now.minutes !== was.minutes;
  };
  // Where both are alike, what stays wet is the news.
  const stuck = things.find((one) => told(one, present, input).way === 'never');
  const thing = things.find(parted) ?? stuck ?? 'mirror';
  const was = healthy && parted(thing) ? told(thing, healthy, input) : undefined;
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
