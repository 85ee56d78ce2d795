/** Two ways to choose: a word of a few, and a station of the lesson. */
import { render, screen } from '@testing-library/svelte';
import userEvent from '@testing-library/user-event';
import { describe, expect, test, vi } from 'vitest';
import { Picker, StepLine, type Station } from '#ui';

describe('Picker', () => {
  const options = [
    { value: 'L/s', label: 'L/s', spoken: 'litres a second' },
    { value: 'cfm', label: 'cfm', spoken: 'cubic feet a minute' },
    { value: 'plain', label: 'plain' },
  ];

  test('is a named group, each choice read in whole words', () => {
    render(Picker, { legend: 'Unit of flow', name: 'flow', options, value: 'cfm', onpick: () => {} });
    expect(screen.getByRole('group', { name: 'Unit of flow' })).toBeTruthy();
    const names = screen
      .getAllByRole('radio')
      .map((radio) => [
        (radio as HTMLInputElement).checked,
        screen.getByRole('radio', { name: /litres/ }) === radio,
      ]);
    expect(names).toEqual([
      [false, true],
      [true, false],
      [false, false],
    ]);
    expect(screen.getByRole('radio', { name: 'cubic feet a minute' })).toBeTruthy();
    expect(screen.getByRole('radio', { name: 'plain' })).toBeTruthy();
  });

  test('sends what is picked', async () => {
    const onpick = vi.fn();
    render(Picker, { legend: 'Unit of flow', name: 'flow', options, value: 'cfm', onpick });
    await userEvent.setup().click(screen.getByRole('radio', { name: 'litres a second' }));
    expect(onpick.mock.calls).toEqual([['L/s']]);
  });
});

describe('StepLine', () => {
  const stations: Station[] = [
    { id: 'sag', mark: '1', title: 'Sag', state: 'done' },
    { id: 'crimp', mark: '2', title: 'Crimp', state: 'here' },
    { id: 'swap', mark: '3', title: 'Flexible', state: 'open' },
    { id: 'ties', mark: '4', title: 'Ties', state: 'ahead' },
  ];

  test('a step still ahead is no button and says why; the present one is marked', () => {
    render(StepLine, { stations, onvisit: () => {} });
    expect(
      screen.getAllByRole('button').map((button) => button.textContent?.trim().replace(/\s+/g, ' ')),
    ).toEqual(['1 Sag, done', '2 Crimp', '3 Flexible']);
    expect(screen.getByText('Ties: comes after the steps before it')).toBeTruthy();
    const here = screen
      .getAllByRole('button')
      .filter((button) => button.getAttribute('aria-current') === 'step');
    expect(here.map((button) => button.title)).toEqual(['Crimp']);
  });

  test('a reached step is visited by its place', async () => {
    const onvisit = vi.fn();
    render(StepLine, { stations, onvisit });
    const user = userEvent.setup();
    await user.click(screen.getByRole('button', { name: 'Sag, done' }));
    await user.click(screen.getByRole('button', { name: 'Flexible' }));
    expect(onvisit.mock.calls).toEqual([[0], [2]]);
    expect(screen.queryByRole('button', { name: /Ties/ })).toBeNull();
  });
});
