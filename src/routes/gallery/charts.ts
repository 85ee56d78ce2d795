/** Every chart in its states, each fed by the engine. */
import type { Curve, LedgerEntry, WalkStation } from '#charts';
import { say } from '#i18n';
import type { Fault, Rig, Solution } from '#physics';
import { frameFor, layout } from '#scene';
import { trouble } from '#scene-trouble';
import { likelyBand, RunSolver, stock } from '#session';
import { defaults, show } from '#units';
import { efforts } from './efforts.ts';
import { faultWord, five } from './faults.ts';
import { againstWind, cowl, fan, grille, out, rigOf, whole } from './rigs.ts';
import type { State } from './types.ts';

const REQUIRED_L_S = 25;
const WIDTH = 660;

const run = new RunSolver(whole, stock);
const leaky: readonly Fault[] = [{ kind: 'joint-open', at: 'out', amount: 0.8 }];
const point = ({ flow_L_s, fan }: Solution) => ({ flow_L_s: flow_L_s.fan, pressure_Pa: fan.pressure_Pa });
const passing = ({ flow_L_s }: Solution) => show('flow', flow_L_s.fan, defaults).text;

const titleOf = (chart: 'crossing' | 'ledger' | 'walk', state: string) =>
  say('gallery.chart.of', { chart: say(`gallery.chart.${chart}`), state });

/** Ghosts of every stage up to the present one. */
function curvesOf(solver: RunSolver, faults: readonly Fault[]): Curve[] {
  return Array.from({ length: faults.length + 1 }, (_, count): Curve => {
    const last = faults[count - 1];
    const tone =
      count === faults.length
        ? 'present'
        : count === 0
          ? 'healthy'
          : count === faults.length - 1
            ? 'before'
            : 'ghost';
    return {
      id: `stage-${count}`,
      label: last ? say('play.curve.with', { fault: faultWord(last.kind) }) : say('play.curve.healthy'),
      points: solver.curveAt(faults.slice(0, count)),
      tone,
    };
  });
}

type CrossingBody = Extract<State['body'], { kind: 'crossing' }>;
function crossing(
  id: string,
  title: string,
  faults: readonly Fault[],
  more: Partial<CrossingBody['props']> = {},
  { solver = run, guess }: { solver?: RunSolver; guess?: CrossingBody['guess'] } = {},
): State {
  const now = solver.at(faults);
  const before = faults.length ? solver.at(faults.slice(0, -1)) : undefined;
  return {
    id: `crossing-${id}`,
    title: titleOf('crossing', title),
    body: {
      kind: 'crossing',
      ...(guess ? { guess } : {}),
      props: {
        // As in a lesson: of what passes the fan, which with leaks is not what leaves the wall.
        title: say('play.crossing.meet', { flow: passing(now), before: before ? passing(before) : '' }),
        fan: solver.fan,
        curves: curvesOf(solver, faults),
        point: point(now),
        before: before ? point(before) : null,
        required: REQUIRED_L_S,
        extent: solver.extent,
        height: 320,
        ...more,
      },
    },
  };
}

const healthy_L_s = run.at([]).flow_L_s.outdoors;
const wind = (flap: boolean): { solver: RunSolver } => ({ solver: new RunSolver(againstWind(flap), stock) });

/** Likely bands of the first two stages. */
const banded = five.slice(0, 2);
const bandAfter = (count: number) => likelyBand({ ...whole, faults: banded.slice(0, count) }, stock);

const crossings: readonly State[] = [
  crossing('empty', say('gallery.chart.empty'), [], {
    title: say('gallery.chart.empty'),
    curves: [],
    point: null,
    fan: [],
  }),
  crossing('healthy', say('gallery.chart.healthy'), []),
  crossing('one', say('gallery.chart.one'), five.slice(0, 1)),
  crossing('all', say('gallery.chart.all'), five),
  crossing('hidden', say('gallery.chart.hidden'), five.slice(0, 1), { hideResult: true }),
  crossing(
    'guessing',
    say('gallery.chart.guessing'),
    [],
    {},
    {
      guess: { value_L_s: Math.round(healthy_L_s) - 6, min: 0, max: 50, step: 0.5 },
    },
  ),
  crossing('said', say('gallery.chart.said'), five.slice(0, 1), { predicted: Math.round(healthy_L_s) + 4 }),
  crossing('band', say('gallery.chart.band'), banded, { likely: bandAfter(2) }),
  crossing('leak', say('gallery.chart.leak'), leaky),
  crossing('reversed', say('gallery.flow.reversed'), [], {}, wind(false)),
  crossing('stopped', say('gallery.flow.stopped'), [], {}, wind(true)),
];

function account(debits: number, credits: number, pending = 0): LedgerEntry[] {
  const at = (faults: readonly Fault[]) => run.at(faults).flow_L_s.outdoors;
  const entries: LedgerEntry[] = [
    {
      id: 'opening',
      label: say('play.ledger.opening'),
      kind: 'opening',
      flow_L_s: at([]),
      before_L_s: at([]),
    },
  ];
  five.slice(0, debits).forEach((fault, i) =>
    entries.push({
      id: `debit-${fault.kind}`,
      label: faultWord(fault.kind),
      kind: 'debit',
      flow_L_s: at(five.slice(0, i + 1)),
      before_L_s: at(five.slice(0, i)),
    }),
  );
  five.slice(0, credits).forEach((fault, i) =>
    entries.push({
      id: `credit-${fault.kind}`,
      label: say('gallery.chart.mended', { fault: faultWord(fault.kind) }),
      kind: 'credit',
      flow_L_s: at(five.slice(i + 1, debits)),
      before_L_s: at(five.slice(i, debits)),
    }),
  );
  const left = entries.at(-1)!.flow_L_s;
  five.slice(debits, debits + pending).forEach((fault) =>
    entries.push({
      id: `pending-${fault.kind}`,
      label: faultWord(fault.kind),
      kind: 'pending',
      flow_L_s: left,
      before_L_s: left,
    }),
  );
  return entries;
}

type LedgerProps = Extract<State['body'], { kind: 'ledger' }>['props'];
const ledger = (
  id: string,
  title: string,
  entries: readonly LedgerEntry[],
  more: Partial<LedgerProps> = {},
): State => ({
  id: `ledger-${id}`,
  title: titleOf('ledger', title),
  body: {
    kind: 'ledger',
    props: { entries, required: REQUIRED_L_S, max_L_s: healthy_L_s * 1.08, ...more },
  },
});
const ledgers: readonly State[] = [
  ledger('empty', say('gallery.chart.empty'), account(0, 0)),
  ledger('pending', say('gallery.chart.pending'), account(0, 0, 5)),
  ledger('one', say('gallery.chart.one'), account(1, 0, 4)),
  ledger('all', say('gallery.chart.all'), account(5, 0)),
  ledger('mending', say('gallery.chart.mending'), account(5, 2)),
  ledger('mended', say('gallery.chart.all-mended'), account(5, 5)),
  ledger('lit', say('gallery.chart.lit'), account(2, 0), { highlight: 'debit-sag' }),
  ledger('no-rate', say('gallery.chart.no-rate'), account(2, 0), { required: undefined }),
  ledger(
    'band',
    say('gallery.chart.band'),
    account(2, 0).map((entry, i) => ({ ...entry, likely: bandAfter(i) })),
  ),
];

/** Pressure walk under the drawing of its rig. */
function stationsOf(rig: Rig, solution: Solution, healthy: Solution): WalkStation[] {
  const lettering = { choice: defaults };
  const { stationX } = layout(rig, solution, healthy, frameFor(WIDTH), lettering, trouble.drawer);
  return solution.stations.map((station, i) => ({
    x: stationX[i] ?? 0,
    total_Pa: station.totalPressure_Pa,
    static_Pa: station.staticPressure_Pa,
    after: station.after,
  }));
}

type WalkProps = Extract<State['body'], { kind: 'walk' }>['props'];
function walk(
  id: string,
  title: string,
  rig: Rig,
  more: (stations: readonly WalkStation[], solution: Solution) => Partial<WalkProps> = () => ({}),
): State {
  const solver = new RunSolver(rig, stock);
  const now = solver.at(rig.faults ?? []);
  const healthy = solver.at([]);
  const stations = stationsOf(rig, now, healthy);
  const pressures = stations.flatMap(({ total_Pa, static_Pa }) => [total_Pa, static_Pa]);
  const least = Math.min(0, ...pressures);
  const most = Math.max(0, ...pressures);
  const room = (most - least) * 0.12;
  return {
    id: `walk-${id}`,
    title: titleOf('walk', title),
    body: {
      kind: 'walk',
      props: {
        width: WIDTH,
        height: 150,
        stations,
        extent_Pa: [least - room, most + room],
        names: Object.fromEntries(rig.run.map((piece) => [piece.id, piece.id])),
        ...more(stations, now),
      },
    },
  };
}

/** Leaks gathered by piece, each where its piece begins. */
function leaksOf(stations: readonly WalkStation[], { leaks }: Solution): Partial<WalkProps> {
  const pieces = [...new Set(leaks.map(({ at }) => at))];
  return {
    leaks: pieces.map((at) => ({
      id: at,
      at,
      flow_L_s: leaks.reduce((sum, leak) => sum + (leak.at === at ? leak.flow_L_s : 0), 0),
      x: stations[Math.max(0, stations.findIndex(({ after }) => after === at) - 1)]!.x,
    })),
  };
}

const bad: Rig = { ...whole, faults: five };
const walks: readonly State[] = [
  walk('empty', say('gallery.chart.empty'), whole, () => ({ stations: [] })),
  walk('healthy', say('gallery.chart.healthy'), whole),
  walk('all', say('gallery.chart.all'), bad),
  walk('compared', say('gallery.chart.compared'), bad, () => ({
    before: stationsOf(whole, run.at([]), run.at([])),
  })),
  walk('cause', say('gallery.chart.cause'), { ...whole, faults: five.slice(0, 1) }, (stations, solution) => {
    const end = stations.findIndex(({ after }) => after === 'out');
    const piece = solution.pieces.find(({ id }) => id === 'out');
    const spent = piece?.causes.find(({ cause }) => cause === 'sag')?.loss_Pa ?? 0;
    const loss = show('pressure', spent, defaults).text;
    const text = say('play.spends', { fault: faultWord('sag'), loss });
    return { cause: { x0: stations[end - 1]!.x, x1: stations[end]!.x, text } };
  }),
  walk('lit', say('gallery.chart.lit'), whole, () => ({ highlight: 'out' })),
  walk('leak', say('gallery.chart.leak'), { ...whole, faults: leaky }, leaksOf),
  walk('fan-first', say('gallery.chart.fan-first'), rigOf('Fan at the grille', [grille, fan, out, cowl])),
  walk('fan-last', say('gallery.chart.fan-last'), rigOf('Fan at the outlet', [grille, out, fan, cowl])),
  walk('reversed', say('gallery.flow.reversed'), againstWind(false)),
  walk('stopped', say('gallery.flow.stopped'), againstWind(true)),
];

export const charts: readonly State[] = [...crossings, ...ledgers, ...walks, ...efforts];
