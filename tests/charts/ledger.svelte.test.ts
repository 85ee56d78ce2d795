/** The ledger as a reader meets it: amounts as shown, the sign for lost air, pass or fail in words. */
import './page.ts';
import { render, screen, within } from '@testing-library/svelte';
import userEvent from '@testing-library/user-event';
import { describe, expect, it, vi } from 'vitest';
import { Ledger } from '#charts';
import { entries } from './fixtures.ts';

const choice = { flow: 'L/s', pressure: 'Pa' } as const;
const props = { entries, required: 25, choice, max_L_s: 45 };

describe('Ledger', () => {
  const name = (): string => screen.getByRole('img').getAttribute('aria-label')!;

  it('shows opening, debit, credit and what is left', () => {
    const { container } = render(Ledger, props);
    const amounts = [...container.querySelectorAll('text.amount')].map((text) => text.textContent?.trim());
    expect(amounts).toEqual(['41.7', '−7.9', '+4.2', '38.0']);
    expect(container.querySelectorAll('line.pending')).toHaveLength(1);
    expect(container.querySelector('p .pass')?.textContent).toBe('passes the 25 required, 13.0 to spare');
    expect(container.querySelector('p')?.textContent).toContain('Your local code decides.');
    expect(name()).toContain(' Passes the 25 required, 13.0 to spare. ');
    expect(container.querySelector('figcaption')?.textContent).toBe('4.2 L/s won back of 7.9 L/s lost');
  });

  it('speaks of no loss where nothing was lost', () => {
    const opening = { ...entries[0]!, flow_L_s: 33.84, before_L_s: 33.84 };
    const gains = [opening, entries[2]!];
    const { container } = render(Ledger, { ...props, entries: gains });
    expect(container.querySelector('figcaption')?.textContent).toBe('4.2 L/s gained');
  });

  it('says when it falls short', () => {
    const { container } = render(Ledger, { ...props, required: 40 });
    expect(container.querySelector('p .pass')?.textContent).toBe('2.0 short of the 40 required');
    expect(screen.getByRole('img').getAttribute('aria-label')).toContain('2.0 short of the 40 required.');
  });

  /** Every line with a band of 3 to either side. */
  const banded = entries.map((entry) =>
    entry.kind === 'pending'
      ? entry
      : { ...entry, likely: { low_L_s: entry.flow_L_s - 3, high_L_s: entry.flow_L_s + 3 } },
  );
  it('draws the likely band of every balance, and says it in words and table', async () => {
    const { container } = render(Ledger, { ...props, entries: banded });
    // Three lines and what is left; the line still to come has none.
    expect(container.querySelectorAll('path.likely')).toHaveLength(4);
    expect(container.querySelector('p')?.textContent).toContain('likely 35.0 to 41.0.');
    expect(name()).toContain('33.8 litres a second left. That is likely 30.8 litres a second to 36.8');
    await userEvent.click(screen.getByRole('button', { name: 'Table' }));
    const rows = within(screen.getByRole('table')).getAllByRole('row');
    const cells = rows.map((row) => [...row.children].slice(3).map((cell) => cell.textContent));
    expect(cells).toEqual([
      ['likely, lowest', 'likely, highest'],
      ['38.7', '44.7'],
      ['30.8', '36.8'],
      ['35.0', '41.0'],
      ['–', '–'],
      ['35.0', '41.0'],
      ['–', '–'],
    ]);
  });

  it('calls no rate that lies inside the likely band', async () => {
    const { container, rerender } = render(Ledger, { ...props, entries: banded, required: 36 });
    const pass = (): string | null | undefined => container.querySelector('p .pass')?.textContent;
    expect(pass()).toBe('too close to call: the 36 required lies inside the likely band');
    expect(name()).toContain(' Too close to call: the 36');
    await rerender({ required: 34.9 });
    expect(pass()).toBe('passes the 34.9 required, 3.1 to spare');
    await rerender({ required: 41.1 });
    expect(pass()).toBe('3.1 short of the 41.1 required');
  });

  it('says no verdict while the last balance moves, and keeps its place', () => {
    const moving = banded.map((entry) => (entry.id === 'mended' ? { ...entry, likely: undefined } : entry));
    const { container } = render(Ledger, { ...props, entries: moving });
    expect(container.querySelector('p .pass')?.textContent).toBe('');
    expect(name()).not.toMatch(/passes/i);
  });

  it('marks every line about a piece, and tells of the piece that is pointed at', () => {
    const onhighlight = vi.fn();
    const about = entries.map((entry) => (entry.id.startsWith('healthy') ? entry : { ...entry, at: 'out' }));
    const { container } = render(Ledger, { ...props, entries: about, highlight: 'out', onhighlight });
    expect(container.querySelectorAll('li.lit')).toHaveLength(3);
    screen.getByRole('button', { name: 'Sag' }).focus();
    expect(onhighlight).toHaveBeenLastCalledWith('out');
  });

  it('hatches what is lost with a pattern of its own, 6 px apart at 45 degrees', () => {
    const { container } = render(Ledger, props);
    render(Ledger, props);
    const ids = [...document.querySelectorAll('pattern')].map((pattern) => pattern.id);
    expect(new Set(ids).size).toBe(2);
    const pattern = container.querySelector('pattern')!;
    expect(container.querySelector('rect.lost')?.getAttribute('fill')).toBe(`url(#${pattern.id})`);
    expect(pattern.getAttribute('width')).toBe('6');
    expect(pattern.getAttribute('patternTransform')).toBe('rotate(45)');
    expect(pattern.querySelector('line')?.getAttribute('stroke-width')).toBe('1.2');
  });

  it('has the account as a table that adds up, in cfm as well', async () => {
    render(Ledger, { ...props, choice: { flow: 'cfm', pressure: 'in w.g.' } });
    await userEvent.click(screen.getByRole('button', { name: 'Table' }));
    const rows = within(screen.getByRole('table')).getAllByRole('row').slice(1);
    const cells = rows.map((row) => [...row.children].map((cell) => cell.textContent));
    expect(cells).toEqual([
      ['Healthy run', '–', '88'],
      ['Sag', '−16', '72'],
      ['Sag put right', '+9', '81'],
      ['Crimp at the fan', '–', '–'],
      ['left at the outlet', '–', '81'],
      ['required', '–', '53'],
    ]);
  });

  it('brings a row forward from the keyboard', async () => {
    const onhighlight = vi.fn();
    const { container } = render(Ledger, { ...props, highlight: 'sag', onhighlight });
    expect(container.querySelector('li.lit')?.textContent?.trim()).toBe('Sag');
    screen.getByRole('button', { name: 'Crimp at the fan' }).focus();
    expect(onhighlight).toHaveBeenLastCalledWith('crimp');
  });

  it('draws no NaN from nothing', () => {
    const { container } = render(Ledger, { entries: [], choice, max_L_s: 0 });
    expect(container.innerHTML).not.toMatch(/NaN|Infinity|undefined/);
  });
});
