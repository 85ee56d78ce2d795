/** The one door of the validation: every check against something outside this engine, and its verdict. */
import { aroundChecks } from './checks/around.ts';
import { airChecks } from './checks/air.ts';
import { bendChecks } from './checks/bends.ts';
import { frictionChecks } from './checks/friction.ts';
import { handbookChecks } from './checks/handbook.ts';
import { leakChecks } from './checks/leaks.ts';
import { lengthChecks } from './checks/lengths.ts';
import { lossChecks } from './checks/losses.ts';
import { practiceChecks } from './checks/practice.ts';
import { textbookChecks } from './checks/textbooks.ts';
import { wholeRunChecks } from './checks/whole-runs.ts';
import { judge } from './judge.ts';
import type { Check, Row } from './types.ts';

export { judge, summarise, LEAST, type Summary } from './judge.ts';
export { SOURCES, type SourceId } from './sources.ts';
export { allowance, DIFFERENCE_FIGURES, number, report, table } from './print.ts';
export { account, COEFFICIENT_TABLES, type Account, type CoefficientTable } from './account.ts';
export type { Allowed, Check, CheckMark, Row, Source } from './types.ts';

/** In the order they are read: whole runs last but one, practice last. */
export const CHECKS: readonly Check[] = [
  ...handbookChecks,
  ...textbookChecks,
  ...lengthChecks,
  ...frictionChecks,
  ...lossChecks,
  ...bendChecks,
  ...airChecks,
  ...aroundChecks,
  ...leakChecks,
  ...wholeRunChecks,
  ...practiceChecks,
];

/** Every check asked and judged, in order. */
export function runChecks(checks: readonly Check[] = CHECKS): Row[] {
  return checks.map(judge);
}
