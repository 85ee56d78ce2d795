/** The pressure walk as a reader meets it. */
import './page.ts';
import { render, screen, within } from '@testing-library/svelte';
import userEvent from '@testing-library/user-event';
import { describe, expect, it } from 'vitest';
import { PressureWalk, charts } from '#charts';
import { boxesOverlap } from '../../src/charts/placeLabels.ts';
import { walkLayout } from '../../src/charts/walk.ts';
import { stations } from './fixtures.ts';

const choice = { flow: 'L/s', pressure: 'Pa' } as const;
const props = { stations, before: stations, width: 700, choice, extent_Pa: [-60, 150] as const };

describe('PressureWalk', () => {
  it('names its finding and the highest and lowest pressure', () => {
    const { container } = render(PressureWalk, props);
    expect(container.querySelector('figcaption')?.textContent).toBe(
      'The fan lifts the air from −24 to +78 Pa',
    );
    const words = [...container.querySelectorAll('svg text')].map((text) => text.textContent);
    expect(words).toEqual(expect.arrayContaining(['Pressure', 'along the run', '+78 Pa', '−24 Pa', '0 Pa']));
    expect(screen.getByRole('img').getAttribute('aria-label')).toContain('lowest −24 pascals before the fan');
  });

  it('keeps the drawing’s own horizontal axis', () => {
    const { container } = render(PressureWalk, props);
    expect(container.querySelector('svg')?.getAttribute('viewBox')).toBe('0 0 700 110');
    expect(container.querySelector('path.total')?.getAttribute('d')).toMatch(/^M120,.*L580,[^L]*$/);
  });

  it('keeps its words clear of the title and the button laid over its corners', () => {
    const high = stations.map((station) => ({
      ...station,
      x: station.x - 110,
      total_Pa: station.total_Pa + 60,
    }));
    const taken = [
      { x: 0, y: 0, width: 300, height: 18 },
      { x: 650, y: 0, width: 50, height: 26 },
    ];
    const drawn = walkLayout({ ...props, stations: high, extent_Pa: [-20, 140] }, 700, 110, 14, taken);
    expect(drawn.labels.length).toBeGreaterThan(2);
    for (const label of drawn.labels)
      for (const box of taken) expect(boxesOverlap(label.box, box)).toBe(false);
  });

  it('names the cause on the line and lights a piece', () => {
    const cause = { x0: 270, x1: 560, text: 'sag spends 47 Pa here' };
    const { container } = render(PressureWalk, { ...props, cause, highlight: 'inlet' });
    expect(screen.getByText(cause.text)).toBeTruthy();
    const lit = container.querySelector('rect.lit');
    expect([lit?.getAttribute('x'), lit?.getAttribute('width')]).toEqual(['130', '90']);
    expect(container.querySelectorAll('path.thick')).toHaveLength(2);
  });

  it('has its stations as a table, in the reader’s unit and words', async () => {
    render(PressureWalk, {
      ...props,
      choice: { flow: 'cfm', pressure: 'in w.g.' },
      names: { fan: 'the fan' },
    });
    await userEvent.click(screen.getByRole('button', { name: 'Table' }));
    const rows = within(screen.getByRole('table')).getAllByRole('row');
    expect(rows).toHaveLength(stations.length + 1);
    expect([...rows[4]!.children].map((cell) => cell.textContent)).toEqual([
      'after the fan',
      '0.31',
      '0.27',
      '0.31',
    ]);
    expect(rows[0]!.textContent).toContain('in w.g.');
  });

  it('draws no NaN from nothing', () => {
    const { container } = render(PressureWalk, {
      ...props,
      stations: [],
      before: undefined,
      extent_Pa: [0, 0],
    });
    expect(container.innerHTML).not.toMatch(/NaN|Infinity|undefined/);
  });
});

describe('the registry', () => {
  it('knows every chart by name', () => {
    expect(Object.keys(charts)).toEqual(['crossing', 'ledger', 'walk']);
  });
});
