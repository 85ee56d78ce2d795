/**
 * Every unit a reader may see: factor from the unit carried in our keys (L/s, Pa, m, m/s, W, L/s per
 * W), digits shown. 1 cfm = 0.4719474 L/s and 1 in w.g. = 249.089 Pa are exact conversions to the
 * digits given (international foot; water at 4 degC).
 */
export type Quantity =
  'flow' | 'pressure' | 'velocity' | 'length' | 'depth' | 'power' | 'efficacy' | 'share' | 'minutes' | 'mass';
export type UnitName =
  'L/s' | 'm3/h' | 'cfm' | 'Pa' | 'in w.g.' | 'm/s' | 'm' | 'mm' | 'W' | 'L/s per W' | '%' | 'min' | 'g';

export interface Unit {
  readonly name: UnitName;
  /** As set in type. */
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
    { name: 'L/s', symbol: 'L/s', factor: 1, digits: 1 },
    { name: 'm3/h', symbol: 'm³/h', factor: 3.6, digits: 0 },
    { name: 'cfm', symbol: 'cfm', factor: 1 / 0.4719474, digits: 0 },
  ],
  pressure: [
    { name: 'Pa', symbol: 'Pa', factor: 1, digits: 0 },
    { name: 'in w.g.', symbol: 'in w.g.', factor: 1 / 249.089, digits: 2 },
  ],
  velocity: [{ name: 'm/s', symbol: 'm/s', factor: 1, digits: 1 }],
  length: [{ name: 'm', symbol: 'm', factor: 1, digits: 1 }],
  depth: [{ name: 'mm', symbol: 'mm', factor: 1000, digits: 0 }],
  power: [{ name: 'W', symbol: 'W', factor: 1, digits: 0 }],
  efficacy: [{ name: 'L/s per W', symbol: 'L/s per W', factor: 1, digits: 2 }],
  share: [{ name: '%', symbol: '%', factor: 100, digits: 0 }],
  minutes: [{ name: 'min', symbol: 'min', factor: 1, digits: 0 }],
  mass: [{ name: 'g', symbol: 'g', factor: 1, digits: 0 }],
};

export const defaults: UnitChoice = { flow: 'L/s', pressure: 'Pa' };
