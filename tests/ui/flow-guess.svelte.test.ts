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
  const field = screen.getByRole<HTMLInputElement>('spinbutton');
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
    ['75', 60],
    ['-4', 0],
  ])('%s is off the scale and is set to its end', async (typed, end) => {
    const { onset, field } = await type(typed);
    expect(onset.mock.calls).toEqual([[end, undefined]]);
    expect(field.value).toBe(String(end));
  });

  test('an empty field gets back what it showed, and nothing is sent', async () => {
    const { onset, field } = await type('');
    expect(onset).not.toHaveBeenCalled();
    expect(field.value).toBe('41.7');
  });

  test.each(['abc', '1e999', '  ', '12;5'])('%j is no number, and nothing is sent', async (odd) => {
    const { onset, field } = setUp();
    // A number field hands over only what it understands, so odd text is put past it.
    field.type = 'text';
    await fireEvent.change(field, { target: { value: odd } });
    expect(onset).not.toHaveBeenCalled();
    expect(field.value).toBe('41.7');
  });

  test('a decimal comma is a decimal point', async () => {
    const { onset, field } = setUp();
    field.type = 'text';
    await fireEvent.change(field, { target: { value: '32,5' } });
    expect(onset.mock.calls).toEqual([[32.5, undefined]]);
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
