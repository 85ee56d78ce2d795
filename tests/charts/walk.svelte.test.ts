/** The pressure walk as a reader meets it. */
import './page.ts';
import { fireEvent, render, screen, within } from '@testing-library/svelte';
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

  it('keeps its name below the finding where nearly all of the walk lies below zero', () => {
    const { container } = render(PressureWalk, { ...props, extent_Pa: [-160, 20] });
    const y = (kind: string) => Number(container.querySelector(`text.${kind}`)!.getAttribute('y'));
    const type = (y('quiet') - y('name')) / 1.25;
    // The finding takes 1.3 of a line, and letters stand about 0.9 of one above their foot.
    expect(y('name') - 0.9 * type).toBeGreaterThan(1.3 * type);
    expect(y('quiet')).toBeLessThan(110);
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

  const name = (): string => screen.getByRole('img').getAttribute('aria-label')!;
  const along = (...totals: readonly [string, number][]) =>
    totals.map(([after, total_Pa], i) => ({ after, total_Pa, static_Pa: total_Pa, x: 100 + i * 90 }));
  /** Pressures as the engine gives them for a fan blown back by 260 Pa of wind, and for one held by a flap. */
  const back = along(['room', 6.1], ['grille', 17.7], ['fan inlet', 21.6], ['fan', 234.1], ['cowl', 260]);
  const still = along(['room', 0], ['grille', 0], ['fan inlet', 0], ['fan', 184.9], ['flap', 260]);
  const first = along(['room', 0], ['fan inlet', 0], ['fan', 73], ['out', 50], ['cowl', 0]);

  it('says that air comes back or stands still, and never that the fan lifts it then', async () => {
    const { container, rerender } = render(PressureWalk, { ...props, before: undefined, stations: back });
    const title = (): string | undefined => container.querySelector('figcaption')?.textContent;
    expect(title()).toBe('The air comes back: the fan gives 212 Pa, outdoors pushes with 260 Pa');
    expect(name()).toContain('The air runs back into the room.');
    await rerender({ stations: still });
    expect(title()).toBe('No air moves, though the fan gives 185 Pa');
    expect(name()).toContain('No air moves.');
    await rerender({ stations: first });
    expect(title()).toBe('The fan lifts the air from 0 to +73 Pa');
    expect(container.innerHTML).not.toMatch(/NaN|Infinity|undefined/);
  });

  it('marks what else spends pressure on the line, and says it as sentences', () => {
    const marks = [
      { id: 'crimp', x: 300, texts: ['crimp spends 12 Pa', 'crimp 12'] },
      { id: 'nowhere', x: Number.NaN, texts: ['never'] },
    ];
    const { container } = render(PressureWalk, { ...props, marks });
    expect(container.querySelectorAll('path.mark')).toHaveLength(1);
    expect(container.querySelector('text.mark')?.textContent).toMatch(/^crimp (spends )?12/);
    expect(name()).toContain(' Crimp spends 12 Pa.');
  });

  const leaks = [
    { id: 'a', at: 'out', x: 420, flow_L_s: 6.23 },
    { id: 'b', at: 'inlet', x: 200, flow_L_s: -1.25 },
    { id: 'c', at: 'out', x: 500, flow_L_s: 0.01 },
  ];

  it('draws a leak out upwards and a leak in downwards, and none that rounds to nothing', () => {
    const { leaks: drawn, labels } = walkLayout({ ...props, leaks }, 700, 160, 14);
    expect(drawn.map(({ id }) => id)).toEqual(['a', 'b']);
    const ends = drawn.map(({ shaft }) => shaft.match(/-?[\d.]+/g)!.map(Number));
    expect(ends[0]![1]).toBeGreaterThan(ends[0]![3]!);
    expect(ends[1]![1]).toBeLessThan(ends[1]![3]!);
    expect(labels.map(({ text }) => text)).toEqual(expect.arrayContaining(['6.2 L/s out', '1.3 L/s in']));
  });

  it('has its leaks in words and as a second table', async () => {
    render(PressureWalk, { ...props, leaks, names: { out: 'the long duct' } });
    expect(name()).toContain('At the long duct, 6.2 litres a second leaves for the roof space.');
    expect(name()).toContain('At inlet, 1.3 litres a second is drawn in from the roof space.');
    await userEvent.click(screen.getByRole('button', { name: 'Table' }));
    const rows = within(screen.getAllByRole('table')[1]!).getAllByRole('row').slice(1);
    expect(rows.map((row) => row.textContent)).toEqual([
      'the long duct+6.2',
      'inlet−1.3',
      'the long duct0.0',
    ]);
  });

  it('is walked from piece to piece by keyboard, each read aloud with its change', async () => {
    const lit: (string | null)[] = [];
    render(PressureWalk, {
      ...props,
      onhighlight: (id: string | null) => lit.push(id),
      names: { fan: 'Fan' },
    });
    const reader = screen.getByRole('slider', { name: 'Walk along the run' });
    reader.focus();
    expect(lit.at(-1)).toBe('grille');
    await fireEvent.input(reader, { target: { value: '2' } });
    expect(lit.at(-1)).toBe('fan');
    expect(reader.getAttribute('aria-valuetext')).toBe(
      'Fan: total pressure goes from −24 pascals to 78 pascals, 102 pascals gained.',
    );
    reader.blur();
    expect(lit.at(-1)).toBeNull();
  });

  it('writes what the piece pointed at does on the drawing', () => {
    const { container } = render(PressureWalk, { ...props, highlight: 'out' });
    expect(container.querySelector('text.reading')?.textContent).toBe('out: 66 Pa spent');
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
