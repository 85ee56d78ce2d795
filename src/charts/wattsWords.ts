/** Watts and litres in words and as tables. */
import { show, type UnitChoice } from '#units';
import { numeral, say } from '#i18n';
import type { ChartTable, WattsFan, WattsPoint } from './types.ts';
import { capital, difference, more, spoken, spokenUnit, symbol } from './words.ts';
import { drawable, gapAt, gapText, perWatt, presentOf, toTenth, watts, type WattsInput } from './watts.ts';

function perWattText(point: WattsPoint | undefined, choice: UnitChoice): string {
  const text = perWatt(point, choice)?.toFixed(choice.flow === 'L/s' ? 2 : 1);
  return text === undefined ? say('chart.none') : numeral(text);
}

const efficacy = (fan: WattsFan | undefined, choice: UnitChoice): string =>
  perWattText(presentOf(fan), choice);

/** The finding: what lies between the two at the same watts, else what each moves for a watt. */
export function wattsTitle(input: WattsInput): string {
  const { fans, choice } = input;
  const [first, second] = fans;
  const gap = gapAt(input);
  if (gap && second) {
    const text = gapText(gap.gap, choice);
    return say('chart.watts.title.same', { watts: watts(gap.power_W), label: second.label, gap: text });
  }
  const fan = second ?? first;
  if (!fan || !presentOf(fan)) return say('chart.watts.title.none');
  const said = say('chart.watts.title.each', {
    label: fan.label,
    value: efficacy(fan, choice),
    unit: symbol('flow', choice),
    other: second ? efficacy(first, choice) : '',
    otherLabel: second ? (first?.label ?? '') : '',
    count: fans.length,
  });
  return capital(said);
}

export function wattsSummary(input: WattsInput): string {
  const { fans, choice } = input;
  const unit = spokenUnit('flow', choice);
  const parts = [say('chart.watts.about', { unit })];
  for (const fan of fans) {
    const at = presentOf(fan);
    if (!at) continue;
    const said = {
      label: fan.label,
      watts: watts(at.power_W),
      flow: spoken('flow', at.flow_L_s, choice),
      value: efficacy(fan, choice),
      unit,
    };
    parts.push(capital(say('chart.watts.about.fan', said)));
  }
  const [first, second] = fans.map(presentOf);
  if (first && second) {
    const change = difference('flow', first.flow_L_s, second.flow_L_s, choice);
    const drawn = toTenth(second.power_W) - toTenth(first.power_W);
    parts.push(
      say('chart.watts.about.change', {
        from: fans[0]!.label,
        to: fans[1]!.label,
        flow: spoken('flow', Math.abs(change), choice, true),
        way: more(change),
        watts: watts(Math.abs(drawn)),
        drawn: more(drawn),
      }),
    );
  }
  const gap = gapAt(input);
  if (gap)
    parts.push(
      say('chart.watts.about.same', {
        watts: watts(gap.power_W),
        first: spoken('flow', gap.first, choice),
        firstLabel: fans[0]!.label,
        second: spoken('flow', gap.second, choice),
        secondLabel: fans[1]!.label,
      }),
    );
  return parts.join(' ');
}

/** One table a fan, a row a speed step. */
export function wattsTables({ fans, choice }: WattsInput): ChartTable[] {
  const unit = symbol('flow', choice);
  return fans.map((fan) => ({
    caption: say('chart.watts.table', { label: fan.label }),
    columns: [
      say('chart.watts.speed'),
      say('chart.watts.power'),
      say('chart.axis.flow', { unit }),
      say('chart.watts.perWatt', { unit }),
    ],
    rows: drawable(fan.points).map((point) => [
      show('share', point.speed, choice).text,
      watts(point.power_W),
      show('flow', point.flow_L_s, choice).number,
      perWattText(point, choice),
    ]),
  }));
}
