/** Runs only while the pages are built: every check is asked then, and the page needs no script. */
import { account, allowance, DIFFERENCE_FIGURES, number, runChecks, SOURCES, summarise } from '#validation';

export const prerender = true;
export const csr = false;

/** Keeps a number and its unit on one line. */
const together = (words: string) => words.replace(/(\d) (?=[%°a-zL])/g, '$1\u00a0');

export function load() {
  const rows = runChecks();
  const { assumptions, coefficients, materials, sources } = account();
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
    coefficients: coefficients.map((each) => ({
      ...each,
      value: number(each.value),
      low: number(each.low),
      high: number(each.high),
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
