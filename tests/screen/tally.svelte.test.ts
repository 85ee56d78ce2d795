/** Hands counted before a class: shares of both rounds, and what to do next by the later one. */
import './page.ts';
import { render, screen } from '@testing-library/svelte';
import userEvent from '@testing-library/user-event';
import { expect, test } from 'vitest';
import { adviceFor, sharesOf } from '../../src/routes/lessons/[slug]/tally.ts';
import Tally from '../../src/routes/lessons/[slug]/Tally.svelte';

test.each([
  [[undefined, undefined, undefined], undefined],
  [[0, 0, 0], undefined],
  [
    [6, 12, 6],
    [25, 50, 25],
  ],
  [
    [-3, Number.NaN, 4],
    [0, 0, 100],
  ],
])('of %o hands the shares are %o', (count, shares) => {
  expect(sharesOf(count)).toEqual(shares);
});

test('advises by a third and two thirds', () => {
  expect([0, 33, 34, 66, 67, 100].map(adviceFor)).toEqual(['low', 'low', 'middle', 'middle', 'high', 'high']);
});

test('takes typed hands, tells the shares, and goes by the second count once there is one', async () => {
  const user = userEvent.setup();
  render(Tally, { id: 'sag observe', options: 3, right: 1 });
  const type = (name: string, text: string) =>
    user.type(screen.getByRole('spinbutton', { name, hidden: true }), text);
  expect(screen.queryByRole('status', { hidden: true })).toBeNull();
  await type('A, Alone, no talking yet', '9');
  await type('B, Alone, no talking yet', '3');
  const status = () => screen.getByRole('status', { hidden: true }).textContent ?? '';
  expect(status()).toContain('Few have it.');
  expect(document.querySelector('.tally')?.textContent).toContain('75 %');
  await type('B, After talking in pairs', '12');
  expect(status()).toContain('Most have it.');
});
