/**
 * The running account of litres. Amounts are differences of the balances as shown, so that what a
 * reader adds up on paper is what stands at the foot, in any unit.
 */
import { rounded, units, type UnitChoice } from '#units';
import type { LedgerEntry } from './types.ts';

export interface LedgerRow {
  readonly id: string;
  readonly label: string;
  readonly kind: LedgerEntry['kind'];
  /** Balances in the reader's unit, rounded to the digits shown. */
  readonly before: number;
  readonly after: number;
  /** After less before: below zero for litres lost. */
  readonly amount: number;
  /** Where the balance really lies, in the reader's unit, rounded. */
  readonly likely?: { readonly low: number; readonly high: number } | undefined;
  readonly at?: string | undefined;
}

export interface Account {
  readonly rows: readonly LedgerRow[];
  readonly opening: number;
  readonly closing: number;
  /** Sums of the amounts below and above zero, both as positive numbers. */
  readonly lost: number;
  readonly gained: number;
  /** Of what is left; absent when it is not known. */
  readonly likely?: LedgerRow['likely'];
}

/** Takes the dust of binary arithmetic off a difference of two rounded numbers. */
function clean(value: number, choice: UnitChoice): number {
  const digits = units.flow.find((unit) => unit.name === choice.flow)?.digits ?? 1;
  return Number(value.toFixed(digits)) + 0;
}

/**
 * Rows and sums of the account. A row starts from the balance the row above left; its own
 * `before_L_s` counts only where no row stands above, so nothing can slip between two rows.
 */
export function account(entries: readonly LedgerEntry[], choice: UnitChoice): Account {
  const rows: LedgerRow[] = [];
  let balance: number | undefined;
  let opening: number | undefined;
  let lost = 0;
  let gained = 0;
  let likely: LedgerRow['likely'];
  for (const { id, label, kind, flow_L_s, before_L_s, at, likely: band } of entries) {
    const piece = at === undefined ? {} : { at };
    if (kind === 'pending') {
      const held = balance ?? 0;
      rows.push({ id, label, kind, before: held, after: held, amount: 0, ...piece });
      continue;
    }
    likely = band && {
      low: rounded('flow', band.low_L_s, choice),
      high: rounded('flow', band.high_L_s, choice),
    };
    const after = rounded('flow', flow_L_s, choice);
    const before: number = kind === 'opening' ? after : (balance ?? rounded('flow', before_L_s, choice));
    opening ??= before;
    const amount = clean(after - before, choice);
    if (amount < 0) lost = clean(lost - amount, choice);
    else gained = clean(gained + amount, choice);
    rows.push({ id, label, kind, before, after, amount, ...piece, ...(likely && { likely }) });
    balance = after;
  }
  return { rows, opening: opening ?? 0, closing: balance ?? 0, lost, gained, ...(likely && { likely }) };
}
