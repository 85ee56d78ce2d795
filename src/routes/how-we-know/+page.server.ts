/** Runs only while the pages are built: every check is asked then, and the page needs no script. */
import { account, allowance, number, runChecks, SOURCES, summarise } from '#validation';

export const prerender = true;
export const csr = false;

export function load() {
  const rows = runChecks();
  const { assumptions, coefficients, materials, sources } = account();
  return {
    summary: summarise(rows),
    checks: rows.map((row) => ({
      ...row,
      source: SOURCES[row.source],
      outside: number(row.published),
      ours: number(row.ours),
      difference: number(row.difference),
      allowance: allowance(row),
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
