/** What the charts say: numbers in the reader's unit, a summary for a screen reader, and the table. */
import { digitsOf, rounded, show, type UnitChoice } from '#units';
import { say } from '#i18n';
import type { WalkLeak } from './types.ts';

type Measured = 'flow' | 'pressure';

/** "33.8 litres a second": units written out, because "L/s" is read badly aloud. */
export function spoken(quantity: Measured, value: number, choice: UnitChoice, already = false): string {
  return `${show(quantity, value, choice, { already }).number} ${spokenUnit(quantity, choice)}`;
}

export function spokenUnit(quantity: Measured, choice: UnitChoice): string {
  if (quantity === 'pressure')
    return choice.pressure === 'Pa' ? say('chart.unit.Pa') : say('chart.unit.in-wg');
  if (choice.flow === 'cfm') return say('chart.unit.cfm');
  return choice.flow === 'L/s' ? say('chart.unit.L-s') : say('chart.unit.m3-h');
}

/** Unit as set in type: "L/s". */
export function symbol(quantity: Measured, choice: UnitChoice): string {
  return show(quantity, 0, choice).symbol;
}

/** Number alone without idle zeros: "25", "38", "33.8". For what people chose, not for results. */
export function brief(quantity: Measured, value: number, choice: UnitChoice, already = false): string {
  return show(quantity, value, choice, { already, brief: true }).number;
}

/** Difference of two values as shown, in the reader's unit: what a reader would work out from the screen. */
export function difference(quantity: Measured, from: number, to: number, choice: UnitChoice): number {
  const apart = rounded(quantity, to, choice) - rounded(quantity, from, choice);
  return Number(apart.toFixed(digitsOf(quantity, choice))) + 0;
}

/** A title made ready to be read before other sentences. */
export function ended(title: string): string {
  return /[.?!]$/.test(title) ? title : say('chart.sentence', { text: title });
}

/** Words off the drawing as a sentence that can be read aloud between others. */
export function sentence(text: string): string {
  return ended(capital(text));
}

export function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

export function more(value: number): 'more' | 'less' | 'same' {
  return value > 0 ? 'more' : value < 0 ? 'less' : 'same';
}

/** "6.2 L/s out", of air that leaves for the roof space; the bare number where room is short. */
export function leakWords({ flow_L_s }: WalkLeak, choice: UnitChoice): string[] {
  const flow = show('flow', Math.abs(flow_L_s), choice);
  return [say('chart.walk.leak', { flow: flow.text, way: flow_L_s > 0 ? 'out' : 'in' }), flow.number];
}
