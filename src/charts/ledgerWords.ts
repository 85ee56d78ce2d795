/** The ledger in words and as a table. */
import { digitsOf, rounded, show, type UnitChoice } from '#units';
import { say } from '#i18n';
import type { Account, LedgerRow } from './ledger.ts';
import { brief, capital, sentence, spoken, spokenUnit, symbol } from './words.ts';
import type { ChartTable } from './types.ts';

/** The finding: who took how much, or what came back. */
export function ledgerTitle({ rows, lost, gained, opening }: Account, choice: UnitChoice): string {
  const debits = rows.filter((row) => row.kind === 'debit');
  const text = (value: number): string => show('flow', value, choice, { already: true }).text;
  // A case may only gain; "won back" would speak of a loss that the account does not show.
  if (gained > 0 && lost === 0) return say('chart.ledger.title.gained', { gained: text(gained) });
  if (gained > 0) return say('chart.ledger.title.mended', { gained: text(gained), lost: text(lost) });
  if (lost === 0 || debits.length === 0) return say('chart.ledger.title.opening', { flow: text(opening) });
  const label = debits[0]?.label ?? '';
  return capital(say('chart.ledger.title.lost', { count: debits.length, label, lost: text(lost) }));
}

/**
 * Whether what is left meets the required rate, as words; empty when nothing is required, and while the
 * balance moves in an account that knows its bands. A rate inside the band can be called by no one.
 */
export function verdict(book: Account, required: number | undefined, choice: UnitChoice): string {
  const { closing, likely, rows } = book;
  if (required == null || (!likely && rows.some((row) => row.likely))) return '';
  const digits = digitsOf('flow', choice);
  const rate = rounded('flow', required, choice);
  const spare = Number((closing - rate).toFixed(digits)) + 0;
  const close = likely && likely.low <= rate && rate <= likely.high;
  return say('chart.ledger.verdict', {
    way: close ? 'close' : spare < 0 ? 'short' : 'passes',
    gap: show('flow', Math.abs(spare), choice, { already: true }).number,
    required: brief('flow', required, choice),
  });
}

/** "likely 33.3 to 38.7", of what is left. */
export function likelyWords({ likely }: Account, choice: UnitChoice): string {
  if (!likely) return '';
  const number = (value: number): string => show('flow', value, choice, { already: true }).number;
  return say('chart.likely', { low: number(likely.low), high: number(likely.high) });
}

export function ledgerSummary(state: Account, required: number | undefined, choice: UnitChoice): string {
  const flow = (value: number): string => spoken('flow', value, choice, true);
  const parts = [say('chart.ledger.about', { unit: spokenUnit('flow', choice) })];
  for (const row of state.rows) {
    const way =
      row.kind === 'opening' || row.kind === 'pending' ? row.kind : row.amount > 0 ? 'gained' : 'lost';
    parts.push(
      say('chart.ledger.about.row', {
        way,
        label: capital(row.label),
        amount: flow(Math.abs(row.amount)),
        after: flow(row.after),
      }),
    );
    if (row.likely) {
      const { low, high } = row.likely;
      parts.push(say('chart.ledger.about.likely', { low: flow(low), high: flow(high) }));
    }
  }
  parts.push(say('chart.ledger.about.left', { after: flow(state.closing) }));
  const pass = verdict(state, required, choice);
  if (pass) parts.push(sentence(pass), say('verdict.local-code'));
  return parts.join(' ');
}

export function ledgerTable(state: Account, required: number | undefined, choice: UnitChoice): ChartTable {
  const unit = symbol('flow', choice);
  const number = (value: number, signed = false): string =>
    show('flow', value, choice, { already: true, signed }).number;
  const none = say('chart.none');
  const banded = state.rows.some((row) => row.likely);
  const ends = (likely: LedgerRow['likely']): string[] =>
    banded ? (likely ? [number(likely.low), number(likely.high)] : [none, none]) : [];
  const rows = state.rows.map((row): string[] => {
    if (row.kind === 'pending') return [row.label, none, none, ...ends(undefined)];
    const change = row.kind === 'opening' ? none : number(row.amount, true);
    return [row.label, change, number(row.after), ...ends(row.likely)];
  });
  rows.push([say('chart.ledger.left'), none, number(state.closing), ...ends(state.likely)]);
  if (required != null) {
    const rate = show('flow', required, choice).number;
    rows.push([say('chart.crossing.requiredRow'), none, rate, ...ends(undefined)]);
  }
  return {
    caption: say('chart.ledger.table'),
    columns: [
      say('chart.ledger.entry'),
      say('chart.ledger.change', { unit }),
      say('chart.ledger.balance', { unit }),
      ...(banded ? [say('chart.likely.low'), say('chart.likely.high')] : []),
    ],
    rows,
  };
}
