/** Setting a predicted flow by typing, sliding and saying how sure. */
import { fireEvent, render, screen } from '@testing-library/svelte';
import userEvent from '@testing-library/user-event';
import { describe, expect, test, vi } from 'vitest';
import { FlowGuess } from '#ui';
import { defaults, type UnitChoice } from '#units';

function setUp(props: { choice?: UnitChoice; sure?: number } = {}) {
  const onset = vi.fn<(flow_L_s: number, sure: number | undefined) => void>();
  render(FlowGuess, {
    value_L_s: 41.66,
    low_L_s: 0,
    high_L_s: 60,
    sure: props.sure,
    choice: props.choice ?? defaults,
    onset,
  });
  const field = screen.getByRole<HTMLInputElement>('textbox');
  return { onset, field, slider: screen.getByRole<HTMLInputElement>('slider'), user: userEvent.setup() };
}

async function type(text: string, choice?: UnitChoice) {
  const view = setUp(choice ? { choice } : {});
  await view.user.clear(view.field);
  if (text) await view.user.type(view.field, text);
  await view.user.tab();
  return view;
}

describe('FlowGuess', () => {
  test('shows the value at the reader’s digits, on slider and field alike', () => {
    const { field, slider } = setUp();
    expect([field.value, slider.getAttribute('aria-valuetext')]).toEqual(['41.7', '41.7 litres a second']);
  });

  test('a typed number is taken as it stands', async () => {
    const { onset, field } = await type('32.5');
    expect(onset.mock.calls).toEqual([[32.5, undefined]]);
    expect(field.value).toBe('32.5');
  });

  test.each([
    ['75', 60, '75 lies beyond 0 to 60 L/s; set to 60.'],
    ['-4', 0, '-4 lies beyond 0 to 60 L/s; set to 0.'],
  ])('%s is off the scale, is set to its end, and that is said', async (typed, end, said) => {
    const { onset, field } = await type(typed);
    expect(onset.mock.calls).toEqual([[end, undefined]]);
    expect(field.value).toBe(String(end));
    expect(screen.getByRole('status').textContent).toBe(said);
  });

  test('an empty field gets back what it showed, and nothing is sent', async () => {
    const { onset, field } = await type('');
    expect(onset).not.toHaveBeenCalled();
    expect(field.value).toBe('41.7');
    expect(screen.getByRole('status').textContent).toBe('');
  });

  test.each(['abc', '1e999', '12;5', '0x1f', '1.2.3', '-', '.'])(
    '%j is no number: it is named, what stays is said, and nothing is sent',
    async (odd) => {
      const { onset, field, user } = await type(odd);
      expect(onset).not.toHaveBeenCalled();
      expect(field.value).toBe('41.7');
      const told = screen.getByRole('status');
      expect(told.textContent).toBe(`“${odd}” is no number. It stays at 41.7 L/s; type digits, as in 32.5.`);
      expect(field.getAttribute('aria-describedby')).toBe(told.id);
      await user.clear(field);
      await user.type(field, '30');
      await user.tab();
      expect(told.textContent).toBe('');
      expect(onset.mock.calls).toEqual([[30, undefined]]);
    },
  );

  test.each(['32,5', ' 32.5 ', '32.5 L/s', '+32.5'])('%j is 32.5', async (typed) => {
    const { onset, field } = await type(typed);
    expect(onset.mock.calls).toEqual([[32.5, undefined]]);
    expect(field.value).toBe('32.5');
  });

  test('the arrows step by half a litre', async () => {
    const { onset, field, user } = setUp();
    await user.click(field);
    await user.keyboard('{ArrowUp}{ArrowDown}');
    // The value stays with whoever holds it, so both steps are from 41.7.
    expect(onset.mock.calls.map(([flow]) => flow)).toEqual([42.2, 41.2]);
  });

  test('a number in another unit is carried in litres a second', async () => {
    const { onset } = await type('90', { flow: 'm3/h', pressure: 'Pa' });
    expect(onset.mock.calls[0]![0]).toBeCloseTo(25, 9);
  });

  test('the ends of the scale stay on it in every unit', async () => {
    const { onset } = await type('999', { flow: 'cfm', pressure: 'Pa' });
    // 60 L/s is 127.13 cfm and shows as 127: what is kept may not lie beyond 60.
    expect(onset.mock.calls[0]![0]).toBeLessThanOrEqual(60);
  });

  test('the slider and how sure go together', async () => {
    const { onset, slider, user } = setUp({ sure: 2 });
    await fireEvent.input(slider, { target: { value: '20' } });
    await user.click(screen.getByLabelText('certain'));
    expect(onset.mock.calls).toEqual([
      [20, 2],
      [41.66, 3],
    ]);
    expect(screen.getByLabelText<HTMLInputElement>('fairly')).toBeInstanceOf(HTMLInputElement);
  });
});
