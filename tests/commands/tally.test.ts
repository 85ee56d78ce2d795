import { describe, expect, test } from 'vitest';
import { tally, type Report } from '../../src/commands/tally.ts';

const file = (name: string, statuses: string[], status = 'passed'): Report['testResults'][number] => ({
  name,
  status,
  assertionResults: statuses.map((one, index) => ({ fullName: `test ${index}`, status: one })),
});
const all = [
  file('/tests/a.test.ts', ['passed', 'passed']),
  file('/tests/A.svelte.test.ts', ['passed']),
  file('/tests/browser/a.browser.test.ts', ['passed']),
];
const count = (testResults: Report['testResults'], exitCode = 1) => {
  const { passed, failed } = tally({ testResults }, exitCode);
  return [passed, failed];
};

describe('tally', () => {
  test('adds up what passed', () => expect(count(all, 0)).toEqual([4, 0]));

  test('adds up what failed', () =>
    expect(count([...all, file('/tests/b.test.ts', ['failed', 'passed'], 'failed')])).toEqual([5, 1]));

  test('a file that broke before its first test is a failure', () =>
    expect(count([...all, file('/tests/b.test.ts', [], 'failed')])).toEqual([4, 1]));

  test('a skipped test is a failure', () =>
    expect(count([...all, file('/tests/b.test.ts', ['pending', 'todo', 'skipped'])], 0)).toEqual([4, 3]));

  test('a kind that ran nothing is a failure', () => {
    expect(count(all.slice(0, 2), 0)).toEqual([3, 1]);
    expect(count([], 0)).toEqual([0, 3]);
  });

  test('a bad exit with nothing to show for it is a failure', () => expect(count(all, 1)).toEqual([4, 1]));

  test('no report is a failure', () => expect(tally(undefined, 0)).toMatchObject({ passed: 0, failed: 1 }));
});
