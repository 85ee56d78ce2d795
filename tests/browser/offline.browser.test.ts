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
  await visit.getByRole('button', { name: 'Begin the lesson', exact: true }).click();
  await visit.getByRole('button', { name: 'Skip the questions' }).click();
  await visit.getByRole('button', { name: 'Make a prediction' }).waitFor();
  await visit.goto('/');
  expect(await visit.getByRole('heading', { level: 1 }).textContent()).toBe('Lost Litres');
  expect(problemsOf(visit)).toEqual([]);
  await visit.context().close();
});

test('each language opens offline after a visit to it, and neither throws out what the other keeps', async () => {
  const visit = await page({ path: '/lessons/five-small-faults' });
  const kept = (folder: string) =>
    visit.waitForFunction(
      (end) => navigator.serviceWorker.controller?.scriptURL.endsWith(end) ?? false,
      `${folder}/service-worker.js`,
    );
  await visit.evaluate(() => navigator.serviceWorker.ready.then(() => undefined));
  await visit.goto('/de/lessons/five-small-faults');
  await kept('/de');
  await visit.context().setOffline(true);
  await visit.reload();
  expect(await visit.getByTestId('flow').textContent()).toMatch(/^\d+,\d$/);
  await visit.getByRole('link', { name: 'English' }).click();
  await visit.waitForURL(/:\d+\/lessons/);
  expect(await visit.getByTestId('flow').textContent()).toMatch(/^\d+\.\d$/);
  expect(problemsOf(visit)).toEqual([]);
  await visit.context().close();
});
