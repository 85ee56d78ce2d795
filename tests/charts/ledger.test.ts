/** The account adds up as shown, to the last digit, in every unit of flow. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { rounded, units, type UnitChoice } from '#units';
import { account } from '../../src/charts/ledger.ts';
import type { LedgerEntry } from '../../src/charts/types.ts';

const flow = fc.double({ min: 0, max: 400, noNaN: true });
const choices: UnitChoice[] = (['L/s', 'm3/h', 'cfm'] as const).map((name) => ({
  flow: name,
  pressure: 'Pa',
}));

/** Entries that follow one another, with pending ones anywhere. */
const entries = fc
  .tuple(flow, fc.array(fc.record({ to: flow, pending: fc.boolean() }), { maxLength: 14 }))
  .map(([opening, steps]): LedgerEntry[] => {
    const list: LedgerEntry[] = [
      { id: 'o', label: 'o', kind: 'opening', flow_L_s: opening, before_L_s: opening },
    ];
    let balance = opening;
    steps.forEach(({ to, pending }, index) => {
      const kind = pending ? 'pending' : to < balance ? 'debit' : 'credit';
      list.push({ id: `${index}`, label: `${index}`, kind, flow_L_s: to, before_L_s: balance });
      if (!pending) balance = to;
    });
    return list;
  });

describe('account', () => {
  for (const choice of choices) {
    it(`balances to the displayed digit in ${choice.flow}`, () => {
      const digits = units.flow.find((unit) => unit.name === choice.flow)!.digits;
      // Whole units of the last digit, so that the sum is exact.
      const whole = (value: number): number => Math.round(value * 10 ** digits);
      fc.assert(
        fc.property(entries, (list) => {
          const book = account(list, choice);
          const debits = book.rows
            .filter((row) => row.amount < 0)
            .reduce((sum, row) => sum - whole(row.amount), 0);
          const credits = book.rows
            .filter((row) => row.amount > 0)
            .reduce((sum, row) => sum + whole(row.amount), 0);
          expect(whole(book.opening) - debits + credits).toBe(whole(book.closing));
          expect(whole(book.lost)).toBe(debits);
          expect(whole(book.gained)).toBe(credits);
          const last = list.findLast((entry) => entry.kind !== 'pending')!;
          expect(book.closing).toBe(rounded('flow', last.flow_L_s, choice));
          for (const row of book.rows) expect(row.amount).toBe(Number(row.amount.toFixed(digits)));
        }),
      );
    });
  }

  it('shows the difference of what is shown, not the difference rounded', () => {
    // 41.66 - 33.84 = 7.82, shown 41.7 and 33.8: a reader works out 7.9.
    const book = account(
      [
        { id: 'a', label: 'a', kind: 'opening', flow_L_s: 41.66, before_L_s: 41.66 },
        { id: 'b', label: 'b', kind: 'debit', flow_L_s: 33.84, before_L_s: 41.66 },
      ],
      { flow: 'L/s', pressure: 'Pa' },
    );
    expect(book.rows[1]!.amount).toBe(-7.9);
  });

  it('leaves no gap between two rows that do not quite follow', () => {
    const book = account(
      [
        { id: 'a', label: 'a', kind: 'opening', flow_L_s: 40, before_L_s: 40 },
        { id: 'b', label: 'b', kind: 'debit', flow_L_s: 30, before_L_s: 39 },
      ],
      { flow: 'L/s', pressure: 'Pa' },
    );
    expect(book.rows[1]).toMatchObject({ before: 40, after: 30, amount: -10 });
  });

  it('of nothing is nothing', () => {
    expect(account([], { flow: 'cfm', pressure: 'Pa' })).toEqual({
      rows: [],
      opening: 0,
      closing: 0,
      lost: 0,
      gained: 0,
    });
  });
});
