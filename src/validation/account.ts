/** Everything the page "How we know" prints, gathered from where it lives. */
import {
  ASSUMPTIONS,
  COEFFICIENTS,
  FAN_PRESSURE,
  HOUSEHOLD,
  LABOUR,
  LOWEST_SPEED,
  METER_COEFFICIENTS,
  MOISTURE,
  NOISE,
  OTHER_LABOUR,
  type Coefficient,
  type Labour,
  type Mark,
  type Material,
} from '#physics';
import { rates, stock, type Rate } from '#catalogue';
import { SOURCES } from './sources.ts';
import type { Source } from './types.ts';

/** A coefficient under the key of its words, `know.coefficient.` left off. */
export type NamedCoefficient = Coefficient & { readonly name: string };

const named = (table: Readonly<Record<string, Coefficient>>, prefix = ''): NamedCoefficient[] =>
  Object.entries(table).map(([name, coefficient]) => ({ ...coefficient, name: `${prefix}${name}` }));

/** Every table of numbers that are not laws, in the order they are read. */
export const COEFFICIENT_TABLES = {
  run: named(COEFFICIENTS),
  fan: named({ pressure: FAN_PRESSURE, lowestSpeed: LOWEST_SPEED }, 'fan.'),
  noise: named(NOISE, 'noise.'),
  moisture: named(MOISTURE, 'moisture.'),
  household: named(HOUSEHOLD, 'household.'),
  meters: named(METER_COEFFICIENTS, 'meter.'),
} as const satisfies Record<string, readonly NamedCoefficient[]>;

export type CoefficientTable = keyof typeof COEFFICIENT_TABLES;

export interface Account {
  readonly assumptions: readonly { readonly code: string; readonly mark: Mark }[];
  readonly coefficients: Readonly<Record<CoefficientTable, readonly NamedCoefficient[]>>;
  /** Minutes to put a fault right; the last is for any kind not named. */
  readonly labour: readonly (Labour & { readonly kind: string })[];
  readonly materials: readonly (Material & { readonly id: string })[];
  readonly rates: readonly Rate[];
  readonly sources: readonly (Source & { readonly id: string })[];
}

/** All of it, in the order it is printed. */
export function account(): Account {
  return {
    assumptions: Object.entries(ASSUMPTIONS).map(([code, mark]) => ({ code, mark })),
    coefficients: COEFFICIENT_TABLES,
    labour: [...Object.entries(LABOUR), ['other', OTHER_LABOUR] as const].map(([kind, labour]) => ({
      kind,
      ...labour,
    })),
    materials: Object.entries(stock.materials).map(([id, material]) => ({ id, ...material })),
    rates,
    sources: Object.entries(SOURCES).map(([id, source]) => ({ id, ...source })),
  };
}
