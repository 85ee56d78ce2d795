/** Watts and litres as a reader meets it. */
import './page.ts';
import { render, screen, within } from '@testing-library/svelte';
import userEvent from '@testing-library/user-event';
import { describe, expect, it } from 'vitest';
import { WattsLitres, type WattsFan, type WattsPoint } from '#charts';
import { boxesOverlap } from '../../src/charts/placeLabels.ts';
import { wattsLayout } from '../../src/charts/watts.ts';

const choice = { flow: 'L/s', pressure: 'Pa' } as const;
const at = (speed: number, power_W: number, flow_L_s: number): WattsPoint => ({ speed, power_W, flow_L_s });
const fan = (id: string, label: string, points: WattsPoint[]): WattsFan => ({
  id,
  label,
  points,
  present: points.at(-1),
});
const axial = fan('axial', 'the axial', [at(0.5, 4, 8), at(0.8, 12, 15), at(1, 22, 19.75)]);
const mixed = fan('mixed', 'the mixed-flow', [at(0.5, 7, 24), at(0.8, 22, 39.2), at(1, 43, 48.9)]);
const fans = [axial, mixed];
const same = { power_W: 22, flow_L_s: [19.75, 39.2] };
const name = (): string => screen.getByRole('img').getAttribute('aria-label')!;
const title = (container: HTMLElement) => container.querySelector('figcaption')?.textContent;

describe('WattsLitres', () => {
  it('states what lies between two fans at the same watts, as a reader would work it out', () => {
    const { container } = render(WattsLitres, { fans, choice, same });
    // 39.2 less 19.8, as both are shown.
    expect(title(container)).toBe('At 22 W, the mixed-flow moves 19.4 L/s more');
    expect(container.querySelector('text.gap')?.textContent).toBe('19.4 L/s more');
    expect(container.querySelectorAll('line.same')).toHaveLength(1);
    expect(name()).toContain(
      'At the same 22 watts, the axial moves 19.8 litres a second and the mixed-flow 39.2',
    );
  });

  it('states what each moves for a watt otherwise, and what changed from what to what', () => {
    const { container } = render(WattsLitres, { fans, choice });
    expect(title(container)).toBe('The mixed-flow: 1.14 L/s for a watt; the axial: 0.90');
    expect(name()).toContain('From the axial to the mixed-flow: 29.1 litres a second more, 21 watts more.');
    expect(container.querySelector('.gap')).toBeNull();
  });

  it('claims no gap where a fan cannot run at those watts', () => {
    const { container } = render(WattsLitres, { fans, choice, same: { power_W: 40, flow_L_s: [null, 47] } });
    expect(title(container)).toContain('for a watt');
    expect(container.querySelector('path.gap')).toBeNull();
  });

  it('tells the two apart by dash and ring as well as by label', () => {
    const { container } = render(WattsLitres, { fans, choice });
    expect(container.querySelectorAll('path.line.fan-0, path.line.fan-1')).toHaveLength(2);
    expect(container.querySelectorAll('circle.step')).toHaveLength(6);
    const words = [...container.querySelectorAll('svg text')].map((text) => text.textContent);
    expect(words).toEqual(expect.arrayContaining(['the axial', 'the mixed-flow']));
  });

  it('joins before and after where a fan has but one speed', () => {
    const one = [fan('a', 'healthy run', [at(1, 32, 40)]), fan('b', 'five faults', [at(1, 30, 23)])];
    const { container } = render(WattsLitres, { fans: one, choice });
    expect(container.querySelector('path.moved')?.getAttribute('d')).toMatch(/^M.*L/);
    expect(title(container)).toBe('Five faults: 0.77 L/s for a watt; healthy run: 1.25');
  });

  it.each([296, 366, 666])(
    'sets labels clear of each other at %d px, each ray with its own litres',
    (width) => {
      const { labels, rays, frame } = wattsLayout({ fans, choice, same }, width, 320, 14);
      labels.forEach(({ box, id }, i) => {
        for (const other of labels.slice(i + 1)) expect(boxesOverlap(box, other.box), id).toBe(false);
        expect(frame.x + box.x + box.width).toBeLessThanOrEqual(width);
      });
      // A ray's end lies where its litres for a watt say: 43 W x 1.12 across, 48.9 L/s x 1.12 up.
      for (const { value, path } of rays) {
        const [x = 0, y = 0] = path.split('L')[1]!.split(',').map(Number);
        const watts = (x / frame.width) * 43 * 1.12;
        expect((((frame.height - y) / frame.height) * 48.9 * 1.12) / watts).toBeCloseTo(value, 2);
      }
    },
  );

  it('has a table for each fan, in cfm as well, by button and by key', async () => {
    render(WattsLitres, { fans, choice: { flow: 'cfm', pressure: 'Pa' } });
    screen.getByRole('button', { name: 'Table' }).focus();
    await userEvent.keyboard('t');
    const rows = within(screen.getAllByRole('table')[1]!).getAllByRole('row');
    const cells = rows.map((row) => [...row.children].map((cell) => cell.textContent));
    expect(cells[0]).toEqual(['speed', 'drawn, W', 'flow, cfm', 'cfm per W']);
    expect(cells[3]).toEqual(['100 %', '43', '104', '2.4']);
  });

  it('draws no NaN from nothing', async () => {
    const holes = [fan('x', 'x', [at(1, Number.NaN, 4)]), fan('y', 'y', [])];
    const { container, rerender } = render(WattsLitres, { fans: [], choice });
    expect(title(container)).toBe('No watts stated');
    await rerender({ fans: holes });
    expect(container.innerHTML).not.toMatch(/NaN|Infinity|undefined/);
  });
});
