/** Counts what Vitest ran, so that nothing that failed to run can pass for a success. */

/** The part of Vitest's JSON report that is read here. */
export interface Report {
  testResults: {
    name: string;
    status: string;
    message?: string;
    assertionResults: { fullName: string; status: string }[];
  }[];
}

export interface Tally {
  passed: number;
  failed: number;
  /** Failures that are no failed test: one line each, and each counted in `failed`. */
  complaints: string[];
}

const KINDS: Record<string, (file: string) => boolean> = {
  unit: (file) => !KINDS.component?.(file) && !KINDS.browser?.(file),
  component: (file) => file.endsWith('.svelte.test.ts'),
  browser: (file) => file.endsWith('.browser.test.ts'),
};

/**
 * Passed and failed tests of a report; no report at all is a failure. A skipped test, a file that broke
 * before its first test, a kind of test that ran nothing, and a bad exit with no failure to show for it
 * each count as one failed.
 */
export function tally(report: Report | undefined, exitCode: number): Tally {
  if (!report) return { passed: 0, failed: 1, complaints: ['Vitest left no report'] };
  const complaints: string[] = [];
  let passed = 0;
  let failed = 0;
  const ran = new Set<string>();
  for (const file of report.testResults) {
    const kind = Object.keys(KINDS).find((name) => KINDS[name]?.(file.name));
    for (const test of file.assertionResults) {
      if (test.status === 'passed') passed += 1;
      else if (test.status === 'failed') failed += 1;
      else complaints.push(`${test.status}, not run: ${test.fullName} (${file.name})`);
      if (kind && (test.status === 'passed' || test.status === 'failed')) ran.add(kind);
    }
    const showsIt = file.assertionResults.some((test) => test.status === 'failed');
    if (file.status === 'failed' && !showsIt) complaints.push(`broke outside its tests: ${file.name}`);
  }
  for (const kind of Object.keys(KINDS)) {
    if (!ran.has(kind)) complaints.push(`no ${kind} test ran`);
  }
  failed += complaints.length;
  if (exitCode !== 0 && failed === 0) {
    complaints.push(`Vitest ended with exit code ${exitCode} for a reason outside the tests`);
    failed += 1;
  }
  return { passed, failed, complaints };
}
