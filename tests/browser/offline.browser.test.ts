/** After one visit every page opens without a network. */
import { expect, test } from 'vitest';
import { page, problemsOf } from './support/page.ts';

test('the lesson and the first page open offline after one visit', async () => {
  const visit = await page({ path: '/lessons/five-small-faults' });
  await visit.evaluate(async () => {
    await navigator.serviceWorker.ready;
  });
  await visit.waitForFunction(() => navigator.serviceWorker.controller !== null);
  await visit.context().setOffline(true);
  await visit.reload();
  expect(await visit.getByTestId('flow').textContent()).toMatch(/^\d+\.\d$/);
  await visit.getByRole('button', { name: 'Start', exact: true }).click();
  await visit.getByRole('button', { name: 'Skip the questions' }).click();
  await visit.getByRole('button', { name: 'Make a prediction' }).waitFor();
  await visit.goto('/');
  expect(await visit.getByRole('heading', { level: 1 }).textContent()).toBe('Lost Litres');
  expect(problemsOf(visit)).toEqual([]);
  await visit.context().close();
});
