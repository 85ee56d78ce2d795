/** The lesson's drawing is to the scale of the deepest sag of all the lesson, from its first step on. */
import './page.ts';
import { expect, it } from 'vitest';
import { mounted, prepared } from './mounted.svelte.ts';

it('shows a slight sag as large as the deep one that comes later', () => {
  const { stop, unmount } = mounted(prepared('hang-it-straight'));
  expect(document.querySelector('.drawing svg')?.textContent).toContain('1.9 times size');
  unmount();
  stop();
});
