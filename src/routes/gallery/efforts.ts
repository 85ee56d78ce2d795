/** What air costs and what it saves: watts and litres, and the steam clock, each fed by the engine. */
import type { SteamStory, WattsFan } from '#charts';
import { say } from '#i18n';
import type { FanTable, Fault, Rig } from '#physics';
import { effortAt, effortsAtSameWatts, MIRROR_FOGS, RunSolver, SHOWER_MIN, showerOf, stock } from '#session';
import { five } from './faults.ts';
import { whole } from './rigs.ts';
import type { State } from './types.ts';

const titleOf = (chart: 'watts' | 'steam', state: string) =>
  say('gallery.chart.of', { chart: say(`gallery.chart.${chart}`), state });

/** The stock's fans as if their motors followed a signal, so that there are speeds to compare. */
const steered = (id: string): FanTable => ({ ...stock.fans[id]!, motor: 'EC' });
const SPEEDS = [0.4, 0.5, 0.6, 0.7, 0.8, 0.9, 1];

const line = (
  id: string,
  label: string,
  rig: Rig,
  fan: FanTable,
  now: number,
  speeds = SPEEDS,
): WattsFan => ({
  id,
  label,
  points: speeds.flatMap((speed) => effortAt(rig, stock, fan, speed) ?? []),
  present: effortAt(rig, stock, fan, now),
});

const axial = steered('axial-125');
const mixed = steered('mixed-125');
const two = [
  line('axial', axial.name ?? 'axial-125', whole, axial, 1),
  line('mixed', mixed.name ?? 'mixed-125', whole, mixed, 1),
];
const bad: Rig = { ...whole, faults: five };
const oneSpeed = stock.fans['mixed-100']!;

type WattsProps = Extract<State['body'], { kind: 'watts' }>['props'];
const watts = (id: string, title: string, props: WattsProps): State => ({
  id: `watts-${id}`,
  title: titleOf('watts', title),
  body: { kind: 'watts', props },
});

const wattsStates: readonly State[] = [
  watts('empty', say('gallery.chart.empty'), { fans: [] }),
  watts('two-fans', say('gallery.chart.two-fans'), { fans: two }),
  watts('same', say('gallery.chart.same-watts'), {
    fans: two,
    same: effortsAtSameWatts(whole, stock, [axial, mixed]),
  }),
  watts('before-after', say('gallery.chart.before-after'), {
    fans: [
      line('before', say('play.curve.healthy'), whole, oneSpeed, 1, [1]),
      line('after', say('gallery.chart.all'), bad, oneSpeed, 1, [1]),
    ],
  }),
];

const run = new RunSolver(whole, stock);
const WHOLE_MIN = 300;

function story(tone: SteamStory['tone'], faults: readonly Fault[], runOn_min?: number): SteamStory {
  const moments = showerOf(whole, run.at(faults), WHOLE_MIN, runOn_min);
  const label = say(tone === 'healthy' ? 'play.curve.healthy' : 'gallery.chart.all');
  return { id: tone, label, tone, moments };
}

type SteamProps = Extract<State['body'], { kind: 'steam' }>['props'];
const steam = (id: string, title: string, props: Partial<SteamProps>): State => ({
  id: `steam-${id}`,
  title: titleOf('steam', title),
  body: { kind: 'steam', props: { stories: [], shower_min: SHOWER_MIN, mirrorFogs: MIRROR_FOGS, ...props } },
});

const steamStates: readonly State[] = [
  steam('empty', say('gallery.chart.empty'), {}),
  steam('healthy', say('gallery.chart.healthy'), { stories: [story('healthy', [])] }),
  steam('all', say('gallery.chart.all'), { stories: [story('healthy', []), story('present', five)] }),
  steam('run-on', say('gallery.chart.run-on'), {
    stories: [story('healthy', [], 10), story('present', five, 10)],
    runOn_min: 10,
  }),
];

export const efforts: readonly State[] = [...wattsStates, ...steamStates];
