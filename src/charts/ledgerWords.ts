/** The ledger in words and as a table. */
import { rounded, show, type UnitChoice } from '#units';
import { say } from '#i18n';
import type { Account } from './ledger.ts';
import { brief, spoken, spokenUnit, symbol } from './words.ts';
import type { ChartTable } from './types.ts';

/** The finding: who took how much, or what came back. */
export function ledgerTitle({ rows, lost, gained, opening }: Account, choice: UnitChoice): string {
  const debits = rows.filter((row) => row.kind === 'debit');
  const text = (value: number): string => show('flow', value, choice, { already: true }).text;
  if (gained > 0) return say('chart.ledger.title.mended', { gained: text(gained), lost: text(lost) });
  if (lost === 0 || debits.length === 0) return say('chart.ledger.title.opening', { flow: text(opening) });
  return say('chart.ledger.title.lost', {
    count: debits.length,
    label: debits[0]?.label ?? '',
    lost: text(lost),
  });
}

/** Whether what is left meets the required rate, as words; empty when nothing is required. */
export function verdict({ closing }: Account, required: number | undefined, choice: UnitChoice): string {
  if (required == null) return '';
  const digits = show('flow', 0, choice).number.split('.')[1]?.length ?? 0;
  const spare = Number((closing - rounded('flow', required, choice)).toFixed(digits)) + 0;
  return say('chart.ledger.verdict', {
    way: spare < 0 ? 'short' : 'passes',
    gap: show('flow', Math.abs(spare), choice, { already: true }).number,
    required: brief('flow', required, choice),
  });
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
        label: row.label,
        amount: flow(Math.abs(row.amount)),
        after: flow(row.after),
      }),
    );
  }
  parts.push(say('chart.ledger.about.left', { after: flow(state.closing) }));
  const pass = verdict(state, required, choice);
  if (pass) parts.push(say('chart.sentence', { text: pass }));
  return parts.join(' ');
}

export function ledgerTable(state: Account, required: number | undefined, choice: UnitChoice): ChartTable {
  const unit = symbol('flow', choice);
  const number = (value: number, signed = false): string =>
    show('flow', value, choice, { already: true, signed }).number;
  const rows = state.rows.map((row): string[] => {
    if (row.kind === 'pending') return [row.label, say('chart.none'), say('chart.none')];
    return [
      row.label,
      row.kind === 'opening' ? say('chart.none') : number(row.amount, true),
      number(row.after),
    ];
  });
  rows.push([say('chart.ledger.left'), say('chart.none'), number(state.closing)]);
  if (required != null) {
    rows.push([say('chart.crossing.requiredRow'), say('chart.none'), show('flow', required, choice).number]);
  }
  return {
    caption: say('chart.ledger.table'),
    columns: [
      say('chart.ledger.entry'),
      say('chart.ledger.change', { unit }),
      say('chart.ledger.balance', { unit }),
    ],
    rows,
  };
}
