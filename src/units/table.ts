/**
 * Every unit a reader may see: factor from the unit carried in our keys (L/s, Pa, m, m/s, W, L/s per
 * W), digits shown. 1 cfm = 0.4719474 L/s and 1 in w.g. = 249.089 Pa are exact conversions to the
 * digits given (international foot; water at 4 degC).
 */
import { say } from '#i18n';

export type Quantity =
  'flow' | 'pressure' | 'velocity' | 'length' | 'depth' | 'power' | 'efficacy' | 'share' | 'minutes' | 'mass';
export type UnitName =
  'L/s' | 'm3/h' | 'cfm' | 'Pa' | 'in w.g.' | 'm/s' | 'm' | 'mm' | 'W' | 'L/s per W' | '%' | 'min' | 'g';

export interface Unit {
  readonly name: UnitName;
  /** As set in type, in the language of this build. */
  readonly symbol: string;
  /** Display value = carried value x factor. */
  readonly factor: number;
  readonly digits: number;
}

export interface UnitChoice {
  readonly flow: 'L/s' | 'm3/h' | 'cfm';
  readonly pressure: 'Pa' | 'in w.g.';
}

export const units: Readonly<Record<Quantity, readonly Unit[]>> = {
  flow: [
    { name: 'L/s', symbol: say('unit.L/s'), factor: 1, digits: 1 },
    { name: 'm3/h', symbol: say('unit.m3/h'), factor: 3.6, digits: 0 },
    { name: 'cfm', symbol: say('unit.cfm'), factor: 1 / 0.4719474, digits: 0 },
  ],
  pressure: [
    { name: 'Pa', symbol: say('unit.Pa'), factor: 1, digits: 0 },
    { name: 'in w.g.', symbol: say('unit.in w.g.'), factor: 1 / 249.089, digits: 2 },
  ],
  velocity: [{ name: 'm/s', symbol: say('unit.m/s'), factor: 1, digits: 1 }],
  length: [{ name: 'm', symbol: say('unit.m'), factor: 1, digits: 1 }],
  depth: [{ name: 'mm', symbol: say('unit.mm'), factor: 1000, digits: 0 }],
  power: [{ name: 'W', symbol: say('unit.W'), factor: 1, digits: 0 }],
  efficacy: [{ name: 'L/s per W', symbol: say('unit.L/s per W'), factor: 1, digits: 2 }],
  share: [{ name: '%', symbol: say('unit.%'), factor: 100, digits: 0 }],
  minutes: [{ name: 'min', symbol: say('unit.min'), factor: 1, digits: 0 }],
  mass: [{ name: 'g', symbol: say('unit.g'), factor: 1, digits: 0 }],
};

export const defaults: UnitChoice = { flow: 'L/s', pressure: 'Pa' };
