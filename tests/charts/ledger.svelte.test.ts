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
  it('shows opening, debit, credit and what is left', () => {
    const { container } = render(Ledger, props);
    const amounts = [...container.querySelectorAll('text.amount')].map((text) => text.textContent?.trim());
    expect(amounts).toEqual(['41.7', '−7.9', '+4.2', '38.0']);
    expect(container.querySelectorAll('line.pending')).toHaveLength(1);
    expect(container.querySelector('p')?.textContent).toBe('passes the 25 required, 13.0 to spare');
    expect(container.querySelector('figcaption')?.textContent).toBe('4.2 L/s won back of 7.9 L/s lost');
  });

  it('says when it falls short', () => {
    const { container } = render(Ledger, { ...props, required: 40 });
    expect(container.querySelector('p')?.textContent).toBe('2.0 short of the 40 required');
    expect(screen.getByRole('img').getAttribute('aria-label')).toContain('2.0 short of the 40 required.');
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
