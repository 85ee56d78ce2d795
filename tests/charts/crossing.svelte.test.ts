/** The crossing as a reader meets it: title, words, table, cursor, and nothing told before the reveal. */
import './page.ts';
import { fireEvent, render, screen, within } from '@testing-library/svelte';
import userEvent from '@testing-library/user-event';
import { describe, expect, it, vi } from 'vitest';
import { show } from '#units';
import { Crossing } from '#charts';
import { crossing, meeting } from './fixtures.ts';

const title = 'The sag turned the system curve up';
const imperial = { flow: 'cfm', pressure: 'in w.g.' } as const;

async function openTable(): Promise<HTMLElement[]> {
  const button = screen.getByRole('button', { name: 'Table' });
  expect(button.getAttribute('aria-expanded')).toBe('false');
  await userEvent.click(button);
  expect(button.getAttribute('aria-expanded')).toBe('true');
  return screen.getAllByRole('table');
}
const row = (table: HTMLElement, name: string): string[] =>
  within(within(table).getByRole('rowheader', { name }).closest('tr')!)
    .getAllByRole('cell')
    .map((cell) => cell.textContent ?? '');

describe('Crossing', () => {
  it('is a figure named by its finding, with a picture that says what it shows', () => {
    const input = crossing(1);
    const { container } = render(Crossing, { title, ...input });
    expect(container.querySelector('figure > figcaption')?.textContent).toBe(title);
    const name = screen.getByRole('img').getAttribute('aria-label')!;
    expect(name.startsWith(`${title}. `)).toBe(true);
    expect(name).toContain(`${show('flow', input.point!.flow_L_s, input.choice).number} litres a second`);
    expect(name).toContain(`${show('flow', input.before!.flow_L_s, input.choice).number} litres a second`);
    expect(name).toContain('You said 38.0 litres a second');
    expect(name).toContain('asks for 25.0 litres a second: passed');
  });

  it('says how far from what to what, as differences of what is shown', () => {
    const input = crossing(1, {
      point: { flow_L_s: 33.84, pressure_Pa: 120 },
      before: { flow_L_s: 41.66, pressure_Pa: 110 },
    });
    render(Crossing, { title, ...input });
    expect(screen.getByRole('img').getAttribute('aria-label')).toContain(
      'Before, they met at 41.7 litres a second and 110 pascals: 7.9 litres a second lost.',
    );
  });

  for (const choice of [crossing().choice, imperial]) {
    it(`puts its numbers in a table, in ${choice.flow}`, async () => {
      const input = crossing(2, { choice });
      render(Crossing, { title, ...input });
      const [points, curves] = await openTable();
      const flow = (value: number): string => show('flow', value, choice).number;
      const pressure = (value: number): string => show('pressure', value, choice).number;
      expect(row(points!, 'where they meet now')).toEqual([
        flow(input.point!.flow_L_s),
        pressure(input.point!.pressure_Pa),
      ]);
      expect(row(points!, 'where they met before')[0]).toBe(flow(input.before!.flow_L_s));
      expect(row(points!, 'what you said')).toEqual([flow(38), '–']);
      expect(row(points!, 'required')).toEqual([flow(25), '–']);
      expect(within(points!).getByText(`flow, ${show('flow', 0, choice).symbol}`)).toBeTruthy();
      const heads = within(curves!)
        .getAllByRole('columnheader')
        .map((cell) => cell.textContent);
      expect(heads.slice(1)).toEqual(['fan curve', 'healthy run', 'with sag', 'with crimp']);
      if (choice.flow === 'L/s') {
        const q2 = 20 ** 2;
        expect(row(curves!, '20').slice(1)).toEqual([0.065, 0.1, 0.12].map((k) => pressure(k * q2)));
      }
    });
  }

  it('has a cursor that reads both curves, by keyboard alone', async () => {
    const input = crossing(1);
    render(Crossing, { title, ...input });
    const slider = screen.getByRole('slider', { name: 'Read the chart at' });
    // At rest it reads the point where both agree.
    const met = show('flow', input.point!.flow_L_s, input.choice);
    expect(slider.getAttribute('aria-valuetext')).toContain(`At ${met.number} litres a second`);
    expect(slider.getAttribute('aria-valuetext')).toContain('they agree');
    expect(screen.getByText(new RegExp(`^${met.text}: fan`))).toBeTruthy();
    slider.focus();
    await fireEvent.input(slider, { target: { value: '30' } });
    const fan = input.fan.find((point) => point.flow_L_s === 30)!.pressure_Pa;
    const run = 0.1 * 30 ** 2;
    expect(slider.getAttribute('aria-valuetext')).toBe(
      `At 30.0 litres a second the fan gives ${Math.round(fan)} pascals and the run, with sag, asks for ${Math.round(run)} pascals: ` +
        `the fan has ${Math.round(fan) - Math.round(run)} pascals to spare.`,
    );
    expect(
      screen.getByText(`30.0 L/s: fan ${Math.round(fan)} Pa, with sag ${Math.round(run)} Pa`),
    ).toBeTruthy();
  });

  it('opens its table with the key t while the reader is in it, and only then', async () => {
    render(Crossing, { title, ...crossing(1) });
    await fireEvent.keyDown(document.body, { key: 't' });
    expect(screen.queryByRole('table')).toBeNull();
    await fireEvent.keyDown(screen.getByRole('slider'), { key: 't', ctrlKey: true });
    expect(screen.queryByRole('table')).toBeNull();
    await fireEvent.keyDown(screen.getByRole('slider'), { key: 't' });
    expect(screen.getAllByRole('table').length).toBeGreaterThan(0);
    await fireEvent.keyDown(screen.getByRole('slider'), { key: 't' });
    expect(screen.queryByRole('table')).toBeNull();
  });

  it('draws the likely band round the run and gives its ends in words and table', async () => {
    const likely = { low_L_s: 30, high_L_s: 40 };
    const { container } = render(Crossing, { title, ...crossing(1), likely });
    expect(container.querySelectorAll('path.edge')).toHaveLength(2);
    expect(container.querySelector('path.band')?.getAttribute('d')).toMatch(/^M[^N]*Z$/);
    expect(screen.getByRole('img').getAttribute('aria-label')).toContain(
      'between 30.0 litres a second and 40.0 litres a second',
    );
    const [points] = await openTable();
    expect(row(points!, 'likely, lowest')).toEqual(['30.0', '–']);
    expect(row(points!, 'likely, highest')).toEqual(['40.0', '–']);
  });

  it('gives nothing of the result away before the reveal', async () => {
    const input = crossing(2, { before: meeting(0.065) });
    const shownNow = {
      flow: show('flow', input.point!.flow_L_s, input.choice).number,
      pressure: show('pressure', input.point!.pressure_Pa, input.choice).number,
    };
    const likely = { low_L_s: input.point!.flow_L_s - 3, high_L_s: input.point!.flow_L_s + 3 };
    const hidden = { ...input, likely, hideResult: true };
    const { container } = render(Crossing, { title: 'Where will they meet?', ...hidden });
    await openTable();
    const all = container.innerHTML;
    expect(all).not.toContain(shownNow.flow);
    expect(all).not.toContain('with crimp');
    expect(all).not.toContain('where they meet now');
    expect(container.querySelector('.dot, .drop, .gap, .arrow, .curve.present, .likely, .band')).toBeNull();
    expect(screen.getByRole('img').getAttribute('aria-label')).toContain('not shown yet');
    // At the very flow that is the answer the cursor reads the run as it was, not as it is.
    const slider = screen.getByRole('slider');
    await fireEvent.input(slider, { target: { value: String(input.point!.flow_L_s) } });
    expect(slider.getAttribute('aria-valuetext')).toContain('with sag');
    expect(slider.getAttribute('aria-valuetext')).not.toContain('with crimp');
  });

  it('shows the same things once revealed: the check above can fail', () => {
    // Far enough apart for an arrow to fit between the two marks.
    const input = crossing(2, { before: meeting(0.065) });
    const { container } = render(Crossing, { title, ...input });
    expect(container.innerHTML).toContain(show('flow', input.point!.flow_L_s, input.choice).number);
    expect(container.innerHTML).toContain('with crimp');
    for (const mark of ['.dot', '.drop', '.gap', '.arrow', '.curve.present']) {
      expect(container.querySelector(mark)).not.toBeNull();
    }
  });

  it('takes a prediction from a press on the plot, stepped and held to its range', async () => {
    const onset = vi.fn();
    const guess = { value_L_s: 30, min: 10, max: 50, step: 0.5, onset };
    const { container } = render(Crossing, {
      title,
      ...crossing(1),
      predicted: null,
      hideResult: true,
      guess,
    });
    const plot = container.querySelector('.catch')!;
    // jsdom lays nothing out: the drawing's own left edge is 0, its width the one drawn before layout.
    const left = 14 * 2.4;
    const width = 460 - 14 * 3.4;
    const press = (flow_L_s: number): Promise<boolean> =>
      fireEvent(
        plot,
        new MouseEvent('pointerdown', { clientX: left + (flow_L_s / 65) * width, bubbles: true }),
      );
    await press(33.3);
    expect(onset).toHaveBeenLastCalledWith(33.5);
    await press(64);
    expect(onset).toHaveBeenLastCalledWith(50);
    await press(1);
    expect(onset).toHaveBeenLastCalledWith(10);
    expect(container.textContent).toContain('you 30');
  });

  it('draws no NaN when nothing flows', () => {
    const still = { flow_L_s: 0, pressure_Pa: 0 };
    const curves = crossing().curves.map((curve) => ({ ...curve, points: [still, still] }));
    const { container } = render(Crossing, {
      title,
      ...crossing(),
      fan: [still, still],
      curves,
      point: still,
      before: still,
      predicted: 0,
      required: 0,
    });
    expect(container.innerHTML).not.toMatch(/NaN|Infinity|undefined/);
  });

  it('has one picture to describe and one prediction to compare when spot on', () => {
    render(Crossing, { title, ...crossing(1, { point: meeting(0.1), predicted: meeting(0.1).flow_L_s }) });
    expect(screen.getByRole('img').getAttribute('aria-label')).toContain('spot on');
  });

  it('calls nothing spot on before a fault has moved the point', () => {
    const { container } = render(Crossing, { title, ...crossing(0), predicted: 38 });
    expect(container.textContent).toContain('you 38');
    expect(container.innerHTML).not.toContain('spot on');
    expect(screen.getByRole('img').getAttribute('aria-label')).toContain('You said 38.0 litres a second.');
  });
});
