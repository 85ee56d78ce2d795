/** Numbers with a unit that an author typed, where the engine could have worked them out. */
import type { File } from './assemble.ts';
import { say } from '#i18n';
import { lineOf } from './problems.ts';
import { readText } from './text.ts';

/**
 * Figures that may stand in the words because they are published and no engine computes them, or name what
 * is assumed. Each names its source where it stands; the list says who publishes it.
 */
const PUBLISHED: Readonly<Record<string, string>> = {
  '1.2 m': 'support spacing, US DOE and PNNL guide',
  '38 mm': 'strap width, US DOE and PNNL guide; lap of a round metal joint, IRC M1601.4.1',
  '0.9 m': 'straight duct at the fan, US DOE checklist',
  '75 mm': 'strap or saddle, AS 4254.1:2021 as a trade summary reports it',
  '25 mm': 'strap on a saddle, the same; least strap, SMACNA 1995',
  '90 %': 'free area of a terminal, England, Approved Document F 2021, 1.80',
  '30 L/s': 'flow above which one flexible bend is the most, NHBC Standards 2024, 8.4.2.6',
  '60 %': 'relative humidity called clear, a model assumption the words name',
  '85 %': 'over a day, England, Approved Document F 2021, Table B3',
  '75 %': 'over a week, the same',
  '10 mm': 'gap under a door, England, Approved Document F 2021, 1.25',
  '2 L/s': 'the same turned over: one over 0.5 W for a litre a second',
  '0.5 W': 'most watts for a litre a second, England, Approved Document L, Volume 1, 2021, 6.55',
  '3.8 cfm': 'least air for a watt of an in-line fan, 10 CFR 460.204',
  '5 %': 'accuracy of the meter, England, Approved Document F 2021, 4.10',
  '120 mm': 'fan and duct of a rented bathroom, New Zealand, Healthy Homes Standards 2019',
  '1.5 m': 'most flexible, England, Approved Document F 2021, 1.77',
};

const WITH_UNIT =
  /\d+(?:[.,]\d+)?\s*(?:%|percent|(?:mm|cm|m|L\/s|l\/s|litres?|m3\/h|m³\/h|cfm|Pa|pascals?|W|watts?|°C|degrees?)\b)/g;

/** Figures with a unit, but those that are published, each where it begins. */
export function typedNumbers(markdown: string): { readonly figure: string; readonly index: number }[] {
  return [...markdown.matchAll(WITH_UNIT)].flatMap(({ 0: figure, index }) =>
    Object.hasOwn(PUBLISHED, figure.replace(/\s+/, ' ')) ? [] : [{ figure, index }],
  );
}

/**
 * A line for each. They are warnings: a figure that somebody has published may stand, and only its author can
 * tell it from one that will be wrong as soon as the lesson's rig is changed.
 */
export function typedWarnings({ name, content }: File): string[] {
  const headings = [...readText(content, name).lines].reverse();
  return typedNumbers(content).map(({ figure, index }) => {
    const line = lineOf(content, index);
    const path = headings.find(([, at]) => at <= line)?.[0] ?? '#';
    return say('lesson.problem.typed', { file: name, path, line: String(line), figure });
  });
}
