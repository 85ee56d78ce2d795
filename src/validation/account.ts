/** Everything the page "How we know" prints, gathered from where it lives. */
import { ASSUMPTIONS, COEFFICIENTS, type Coefficient, type Mark, type Material } from '#physics';
import { stock } from '#catalogue';
import { SOURCES } from './sources.ts';
import type { Source } from './types.ts';

export interface Account {
  readonly assumptions: readonly { readonly code: string; readonly mark: Mark }[];
  readonly coefficients: readonly (Coefficient & { readonly name: string })[];
  readonly materials: readonly (Material & { readonly id: string })[];
  readonly sources: readonly (Source & { readonly id: string })[];
}

export function account(): Account {
  return {
    assumptions: Object.entries(ASSUMPTIONS).map(([code, mark]) => ({ code, mark })),
    coefficients: Object.entries(COEFFICIENTS).map(([name, coefficient]) => ({ name, ...coefficient })),
    materials: Object.entries(stock.materials).map(([id, material]) => ({ id, ...material })),
    sources: Object.entries(SOURCES).map(([id, source]) => ({ id, ...source })),
  };
}
