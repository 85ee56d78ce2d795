import { numeral } from '#i18n';
import { units, type Quantity, type Unit, type UnitChoice } from './table.ts';

export interface Shown {
  /** Digits alone, with a true minus sign and the decimal sign of the language. */
  readonly number: string;
  readonly symbol: string;
  /** "41.7 L/s". */
  readonly text: string;
}

function unitFor(quantity: Quantity, choice: UnitChoice): Unit {
  const list = units[quantity];
  const wanted = quantity === 'flow' ? choice.flow : quantity === 'pressure' ? choice.pressure : undefined;
  return list.find((unit) => unit.name === wanted) ?? list[0]!;
}

/** Carried value (L/s, Pa, m ...) to the number in the reader's unit, not rounded. */
export function toDisplay(quantity: Quantity, value: number, choice: UnitChoice): number {
  return value * unitFor(quantity, choice).factor;
}

/** The reverse of `toDisplay`. */
export function fromDisplay(quantity: Quantity, value: number, choice: UnitChoice): number {
  return value / unitFor(quantity, choice).factor;
}

/** The number in the reader's unit, rounded to the digits shown: differences of these always add up on screen. */
export function rounded(quantity: Quantity, value: number, choice: UnitChoice): number {
  const unit = unitFor(quantity, choice);
  const scale = 10 ** unit.digits;
  return Math.round(value * unit.factor * scale) / scale;
}

/** Digits shown after the decimal sign. */
export function digitsOf(quantity: Quantity, choice: UnitChoice): number {
  return unitFor(quantity, choice).digits;
}

/**
 * A carried value as text. `signed` writes a plus as well; `already` takes a number that is in the
 * reader's unit (for instance a difference of two `rounded` values); `brief` leaves out idle noughts ("25").
 */
export function show(
  quantity: Quantity,
  value: number,
  choice: UnitChoice,
  options: { signed?: boolean; already?: boolean; brief?: boolean } = {},
): Shown {
  const unit = unitFor(quantity, choice);
  const fixed = (options.already ? value : value * unit.factor).toFixed(unit.digits);
  const zero = Number(fixed) === 0;
  const whole = fixed.replace('-', '');
  const digits = numeral(options.brief ? String(Number(whole)) : whole);
  const sign = zero ? '' : fixed.startsWith('-') ? '−' : options.signed ? '+' : '';
  const number = sign + digits;
  return {
    number,
    symbol: unit.symbol,
    text: unit.symbol === '%' ? `${number} %` : `${number} ${unit.symbol}`,
  };
}
