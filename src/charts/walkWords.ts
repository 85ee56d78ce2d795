/** The pressure walk in words and as tables. */
import { show, type UnitChoice } from '#units';
import { say } from '#i18n';
import { extremes, FAN_INLET, type WalkInput, type WalkPiece } from './walk.ts';
import type { ChartTable, WalkStation } from './types.ts';
import { difference, sentence, spoken, spokenUnit, symbol } from './words.ts';

/** Before and after the fan; the run's lowest and highest where the list does not say which is the fan. */
function lift(stations: readonly WalkStation[]): { low: number; high: number } {
  const inlet = stations.findIndex((station) => station.after === FAN_INLET);
  const [before, after] = [stations[inlet], stations[inlet + 1]];
  if (before && after) return { low: before.total_Pa, high: after.total_Pa };
  const { peak, trough } = extremes(stations);
  return { low: Math.min(0, trough?.total_Pa ?? 0), high: Math.max(0, peak?.total_Pa ?? 0) };
}

/**
 * Which way the air goes, read off the pressure spent between room and fan: it rises there only where the
 * air runs back. Where nothing is spent, a run that falls beyond the fan still says that air goes on.
 */
function wayOf(stations: readonly WalkStation[], choice: UnitChoice): 'on' | 'back' | 'still' {
  const inlet = stations.findIndex((station) => station.after === FAN_INLET);
  const [first, before, after, last] = [stations[0], stations[inlet], stations[inlet + 1], stations.at(-1)];
  if (!first || !before || !after || !last) return 'on';
  const spent = difference('pressure', first.total_Pa, before.total_Pa, choice);
  if (spent !== 0) return spent > 0 ? 'back' : 'on';
  return difference('pressure', after.total_Pa, last.total_Pa, choice) < 0 ? 'on' : 'still';
}

/** The finding: from where to where the fan lifts the air, or that it cannot. */
export function walkTitle(stations: readonly WalkStation[], choice: UnitChoice): string {
  const { low, high } = lift(stations);
  const rise = difference('pressure', low, high, choice);
  return say('chart.walk.title', {
    way: wayOf(stations, choice),
    low: show('pressure', low, choice).number,
    high: show('pressure', high, choice, { signed: true }).text,
    rise: show('pressure', rise, choice, { already: true }).text,
    outside: show('pressure', stations.at(-1)?.total_Pa ?? 0, choice).text,
  });
}

const pieceName = (id: string, names: Readonly<Record<string, string>>): string => names[id] ?? id;

/** What one piece does to the pressure: for the drawing, and aloud. */
export function pieceReading(
  { id, from_Pa, to_Pa }: WalkPiece,
  names: Readonly<Record<string, string>>,
  choice: UnitChoice,
): { text: string; aloud: string } {
  const change = difference('pressure', from_Pa, to_Pa, choice);
  const way = change > 0 ? 'lifts' : change < 0 ? 'spends' : 'none';
  const piece = pieceName(id, names);
  return {
    text: say('chart.walk.read', {
      piece,
      way,
      change: show('pressure', Math.abs(change), choice, { already: true }).text,
    }),
    aloud: say('chart.walk.read.aloud', {
      piece,
      way,
      change: spoken('pressure', Math.abs(change), choice, true),
      from: spoken('pressure', from_Pa, choice),
      to: spoken('pressure', to_Pa, choice),
    }),
  };
}

export function walkSummary(input: WalkInput, names: Readonly<Record<string, string>> = {}): string {
  const { peak, trough } = extremes(input.stations);
  const was = extremes(input.before ?? []);
  const value = (station: WalkStation | undefined): string =>
    spoken('pressure', station?.total_Pa ?? 0, input.choice);
  const parts = [
    say('chart.walk.about', {
      unit: spokenUnit('pressure', input.choice),
      way: wayOf(input.stations, input.choice),
      low: value(trough),
      high: value(peak),
    }),
  ];
  if (input.before?.length)
    parts.push(say('chart.walk.about.before', { low: value(was.trough), high: value(was.peak) }));
  if (input.cause) parts.push(sentence(input.cause.text));
  for (const { texts } of input.marks ?? []) parts.push(sentence(texts[0] ?? ''));
  for (const { at, flow_L_s } of input.leaks ?? []) {
    parts.push(
      say('chart.walk.about.leak', {
        piece: pieceName(at, names),
        flow: spoken('flow', Math.abs(flow_L_s), input.choice),
        way: flow_L_s > 0 ? 'out' : 'in',
      }),
    );
  }
  return parts.join(' ');
}

export function walkTables(input: WalkInput, names: Readonly<Record<string, string>>): ChartTable[] {
  const { choice, leaks = [] } = input;
  const walk = walkTable(input, names);
  if (leaks.length === 0) return [walk];
  return [
    walk,
    {
      caption: say('chart.walk.leaks'),
      columns: [say('chart.walk.place'), say('chart.walk.leakHead', { unit: symbol('flow', choice) })],
      rows: leaks.map(({ at, flow_L_s }) => [
        pieceName(at, names),
        show('flow', flow_L_s, choice, { signed: true }).number,
      ]),
    },
  ];
}

function walkTable(input: WalkInput, names: Readonly<Record<string, string>>): ChartTable {
  const { choice } = input;
  const unit = symbol('pressure', choice);
  const before = input.before;
  const number = (value: number | undefined): string =>
    value == null ? say('chart.none') : show('pressure', value, choice).number;
  return {
    caption: say('chart.walk.table'),
    columns: [
      say('chart.walk.place'),
      say('chart.walk.totalHead', { unit }),
      say('chart.walk.staticHead', { unit }),
      ...(before ? [say('chart.walk.beforeHead', { unit })] : []),
    ],
    rows: input.stations.map((station) => [
      station.after === 'outside air'
        ? say('chart.walk.outside')
        : station.after === 'room'
          ? say('chart.walk.room')
          : station.after === FAN_INLET
            ? say('chart.walk.fanInlet')
            : say('chart.walk.after', { piece: pieceName(station.after, names) }),
      number(station.total_Pa),
      number(station.static_Pa),
      ...(before ? [number(before.find((other) => other.after === station.after)?.total_Pa)] : []),
    ]),
  };
}
