/** The crossing in words and as tables; both are made from what may be seen, so neither can give a result away. */
import { ticks } from 'd3';
import { show, toDisplay, fromDisplay } from '#units';
import { say } from '#i18n';
import { pressureAt, tidy } from './curve.ts';
import { leaving, readable, type CrossingView } from './crossing.ts';
import { brief, difference, more, spoken, spokenUnit, symbol } from './words.ts';
import type { ChartTable, Curve } from './types.ts';

/** How it is built, what it shows, what changed from what to what. */
export function summary(view: CrossingView): string {
  const { choice, extent, point, before, required, predicted } = view;
  const result = leaving(view);
  const fan = tidy(view.fan);
  const first = fan[0];
  const last = fan[fan.length - 1];
  const flow = (value: number, already = false): string => spoken('flow', value, choice, already);
  const pressure = (value: number): string => spoken('pressure', value, choice);
  const parts = [
    say('chart.crossing.about.axes', {
      flow: brief('flow', extent.flow_L_s, choice),
      flowUnit: spokenUnit('flow', choice),
      pressure: brief('pressure', extent.pressure_Pa, choice),
      pressureUnit: spokenUnit('pressure', choice),
    }),
  ];
  if (first && last) {
    parts.push(
      say('chart.crossing.about.fan', {
        from: pressure(first.pressure_Pa),
        fromFlow: flow(first.flow_L_s),
        to: pressure(last.pressure_Pa),
        toFlow: flow(last.flow_L_s),
      }),
    );
  }
  for (const curve of view.curves) {
    if (curve.tone === 'ghost') continue;
    const end = tidy(curve.points).at(-1);
    if (end) {
      parts.push(
        say('chart.crossing.about.curve', {
          label: curve.label,
          pressure: pressure(end.pressure_Pa),
          flow: flow(end.flow_L_s),
        }),
      );
    }
  }
  if (point) {
    parts.push(
      say('chart.crossing.about.point', {
        flow: flow(point.flow_L_s),
        pressure: pressure(point.pressure_Pa),
      }),
    );
  } else if (view.hidden) {
    parts.push(say('chart.crossing.about.hidden'));
  }
  if (before) {
    const change = point ? difference('flow', before.flow_L_s, point.flow_L_s, choice) : 0;
    parts.push(
      point
        ? say('chart.crossing.about.change', {
            flow: flow(before.flow_L_s),
            pressure: pressure(before.pressure_Pa),
            difference: flow(Math.abs(change), true),
            way: more(change),
          })
        : say('chart.crossing.about.before', {
            flow: flow(before.flow_L_s),
            pressure: pressure(before.pressure_Pa),
          }),
    );
  }
  if (view.likely) {
    parts.push(
      say('chart.crossing.about.likely', {
        low: flow(view.likely.low_L_s),
        high: flow(view.likely.high_L_s),
      }),
    );
  }
  if (predicted != null) {
    const gap = result !== null && before ? difference('flow', result, predicted, choice) : 0;
    parts.push(
      point && before
        ? say('chart.crossing.about.gap', {
            value: flow(predicted),
            gap: flow(Math.abs(gap), true),
            way: more(gap),
          })
        : say('chart.crossing.about.you', { value: flow(predicted) }),
    );
  }
  if (required != null) {
    const spare = result !== null ? difference('flow', required, result, choice) : 0;
    parts.push(
      point
        ? say('chart.crossing.about.verdict', {
            value: flow(required),
            gap: flow(Math.abs(spare), true),
            way: spare < 0 ? 'short' : 'passes',
          })
        : say('chart.crossing.about.required', { value: flow(required) }),
    );
  }
  return parts.join(' ');
}

export function tables(view: CrossingView): ChartTable[] {
  const { choice, extent, point, before, required, predicted } = view;
  const flowHead = say('chart.axis.flow', { unit: symbol('flow', choice) });
  const pressureHead = say('chart.axis.pressure', { unit: symbol('pressure', choice) });
  const none = say('chart.none');
  const pressureCell = (value: number | null): string =>
    value == null ? none : show('pressure', value, choice).number;
  const rows: string[][] = [];
  const add = (name: string, flow_L_s: number, pressure_Pa: number | null): void => {
    rows.push([name, show('flow', flow_L_s, choice).number, pressureCell(pressure_Pa)]);
  };
  if (point) add(say('chart.crossing.now'), point.flow_L_s, point.pressure_Pa);
  if (before) add(say('chart.crossing.was'), before.flow_L_s, before.pressure_Pa);
  if (view.likely) {
    add(say('chart.likely.low'), view.likely.low_L_s, null);
    add(say('chart.likely.high'), view.likely.high_L_s, null);
  }
  if (predicted != null) add(say('chart.crossing.predicted'), predicted, null);
  if (required != null) add(say('chart.crossing.requiredRow'), required, null);

  const fan = tidy(view.fan);
  const curves = view.curves.map((curve) => ({ label: curve.label, points: tidy(curve.points) }));
  const places = ticks(0, toDisplay('flow', extent.flow_L_s, choice), 8);
  const byFlow: ChartTable = {
    caption: say('chart.crossing.table.curves', { unit: symbol('pressure', choice) }),
    columns: [flowHead, say('chart.crossing.fan'), ...curves.map((curve) => curve.label)],
    rows: places.map((place) => {
      const flow_L_s = fromDisplay('flow', place, choice);
      return [
        brief('flow', place, choice, true),
        pressureCell(pressureAt(fan, flow_L_s)),
        ...curves.map((curve) => pressureCell(pressureAt(curve.points, flow_L_s))),
      ];
    }),
  };
  if (rows.length === 0) return [byFlow];
  return [
    { caption: say('chart.crossing.table.points'), columns: ['', flowHead, pressureHead], rows },
    byFlow,
  ];
}

/** What the reading cursor says at a flow: for the line under the plot, and aloud. */
export function reading(view: CrossingView, flow_L_s: number): { text: string; aloud: string } {
  const { choice } = view;
  const run = readable(view);
  // Where they meet both are what was solved; the drawn points lie to either side of it.
  const met = view.point?.flow_L_s === flow_L_s ? view.point : undefined;
  const along = (points: Curve['points'], meets: boolean): number | null => {
    const drawn_Pa = pressureAt(tidy(points), flow_L_s);
    return drawn_Pa !== null && meets && met ? met.pressure_Pa : drawn_Pa;
  };
  const fan_Pa = along(view.fan, true);
  const run_Pa = run ? along(run.points, run.tone === 'present') : null;
  const way = fan_Pa == null ? (run_Pa == null ? 'none' : 'run') : run_Pa == null ? 'fan' : 'both';
  const spare = fan_Pa != null && run_Pa != null ? difference('pressure', run_Pa, fan_Pa, choice) : 0;
  return {
    text: say('chart.read.text', {
      way,
      flow: show('flow', flow_L_s, choice).text,
      fan: show('pressure', fan_Pa ?? 0, choice).text,
      run: show('pressure', run_Pa ?? 0, choice).text,
      label: run?.label ?? '',
    }),
    aloud: say('chart.read.aloud', {
      way,
      flow: spoken('flow', flow_L_s, choice),
      fan: spoken('pressure', fan_Pa ?? 0, choice),
      run: spoken('pressure', run_Pa ?? 0, choice),
      label: run?.label ?? '',
      spare: spoken('pressure', Math.abs(spare), choice, true),
      side: more(spare),
    }),
  };
}
