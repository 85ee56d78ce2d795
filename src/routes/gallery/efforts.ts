/** What air costs and what it saves: watts and litres, and the steam clock, each fed by the engine. */
import type { SteamStory, WattsFan, WattsPoint } from '#charts';
import { say } from '#i18n';
import {
  absoluteHumidity,
  atSameWatts,
  atSpeed,
  MOISTURE,
  saturationHumidity,
  showerStory,
  withFan,
  type FanTable,
  type Fault,
  type Rig,
} from '#physics';
import { RunSolver, stock } from '#session';
import { five } from './faults.ts';
import { whole } from './rigs.ts';
import type { State } from './types.ts';

const titleOf = (chart: 'watts' | 'steam', state: string) =>
  say('gallery.chart.of', { chart: say(`gallery.chart.${chart}`), state });

/** The stock's fans as if their motors followed a signal, so that there are speeds to compare. */
const steered = (id: string): FanTable => ({ ...stock.fans[id]!, motor: 'EC' });
const SPEEDS = [0.4, 0.5, 0.6, 0.7, 0.8, 0.9, 1];

function point(rig: Rig, fan: FanTable, speed: number): WattsPoint | undefined {
  const answer = atSpeed(withFan(rig, fan), stock, speed);
  const power_W = answer.outcome === 'solved' ? answer.solution.fan.power_W : null;
  if (answer.outcome !== 'solved' || power_W === null) return undefined;
  return { speed, power_W, flow_L_s: answer.solution.flow_L_s.outdoors };
}

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
  points: speeds.flatMap((speed) => point(rig, fan, speed) ?? []),
  present: point(rig, fan, now),
});

const axial = steered('axial-125');
const mixed = steered('mixed-125');
const two = [
  line('axial', axial.name ?? 'axial-125', whole, axial, 1),
  line('mixed', mixed.name ?? 'mixed-125', whole, mixed, 1),
];
const contenders = atSameWatts(whole, stock, [axial, mixed], { flow: 'outdoors' });
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
    same: {
      power_W: contenders[0]?.power_W ?? 0,
      flow_L_s: contenders.map(({ flow_L_s }) => flow_L_s),
    },
  }),
  watts('before-after', say('gallery.chart.before-after'), {
    fans: [
      line('before', say('play.curve.healthy'), whole, oneSpeed, 1, [1]),
      line('after', say('gallery.chart.all'), bad, oneSpeed, 1, [1]),
    ],
  }),
];

const run = new RunSolver(whole, stock);
const SHOWER_MIN = 10;
const ROOM_C = 22;
/** A mirror as cold as the walls fogs once the air holds what is all that air at its face can. */
const mirrorFogs = saturationHumidity(ROOM_C - MOISTURE.wallBelowRoom_K.value) / saturationHumidity(ROOM_C);

function story(tone: SteamStory['tone'], faults: readonly Fault[], runOn_min = 300): SteamStory {
  const makeUp_g_m3 = absoluteHumidity(20, 0.55);
  const moments = showerStory({
    room: {
      volume_m3: whole.room?.volume_m3 ?? 12,
      temperature_C: ROOM_C,
      flow_L_s: run.at(faults).flow_L_s.room,
      makeUp_g_m3,
    },
    start_g_m3: makeUp_g_m3,
    shower_min: SHOWER_MIN,
    runOn_min,
    whole_min: 300,
  });
  const label = say(tone === 'healthy' ? 'play.curve.healthy' : 'gallery.chart.all');
  return { id: `${tone}`, label, tone, moments };
}

type SteamProps = Extract<State['body'], { kind: 'steam' }>['props'];
const steam = (id: string, title: string, props: Partial<SteamProps>): State => ({
  id: `steam-${id}`,
  title: titleOf('steam', title),
  body: { kind: 'steam', props: { stories: [], shower_min: SHOWER_MIN, mirrorFogs, ...props } },
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
