/** Runs only while the pages are built: every check is asked then, and the page needs no script. */
import {
  account,
  allowance,
  DIFFERENCE_FIGURES,
  number,
  runChecks,
  SOURCES,
  summarise,
  type CoefficientTable,
} from '#validation';

export const prerender = true;
export const csr = false;

/** A flow as a document states it, or a dash where it states none. */
const flow = (value: number | null) => (value === null ? '–' : number(value));

/** Keeps a number and its unit on one line. */
const together = (words: string) => words.replace(/(\d) (?=[%°a-zL])/g, '$1\u00a0');

export function load() {
  const rows = runChecks();
  const { assumptions, coefficients, labour, materials, rates, sources } = account();
  return {
    summary: summarise(rows),
    groups: [...new Set(rows.map((row) => row.source))].map((id) => ({
      id,
      source: SOURCES[id],
      checks: rows
        .filter((row) => row.source === id)
        .map((row) => ({
          ...row,
          quantity: together(row.quantity),
          where: together(row.where),
          outside: number(row.published),
          ours: number(row.ours),
          difference: number(row.difference, DIFFERENCE_FIGURES),
          allowance: allowance(row),
        })),
    })),
    assumptions,
    coefficients: Object.entries(coefficients).map(([table, entries]) => ({
      table: table as CoefficientTable,
      entries: entries.map((each) => ({
        ...each,
        value: number(each.value),
        low: number(each.low),
        high: number(each.high),
      })),
    })),
    labour: labour.map((each) => ({ ...each, minutes: number(each.minutes) })),
    rates: rates.map((rate) => ({
      ...rate,
      intermittent: flow(rate.intermittent_L_s),
      continuous: flow(rate.continuous_L_s),
    })),
    materials: materials.map(({ roughness_mm, roughnessRange_mm: [low, high], ...rest }) => ({
      ...rest,
      value: number(roughness_mm),
      low: number(low),
      high: number(high),
    })),
    sources,
  };
}
