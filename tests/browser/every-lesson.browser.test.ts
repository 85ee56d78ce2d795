/** Every lesson played to its end in a real browser: all right, and wrong wherever a wrong answer is on offer. */
import { describe, expect, test } from 'vitest';
import { isTaught } from '#lesson';
import { loadLessons } from '#lesson-load';
import { page, problemsOf } from './support/page.ts';
import { act, play } from './support/play.ts';

const lessons = loadLessons();

describe.each(lessons.map(({ lesson }) => [lesson.slug, lesson] as const))('%s', (slug, lesson) => {
  test.each([
    ['all right', false],
    ['wrong wherever it can be', true],
  ] as const)('is played to its end, %s', async (_name, wrongly) => {
    const reader = await page({ path: `/lessons/${slug}`, reducedMotion: 'reduce' });
    await reader.locator('main[data-alive]').waitFor();
    const begins = lesson.steps[0]!.kind === 'fault' ? 'Put the first fault in' : 'Begin the lesson';
    expect((await act(reader).textContent())?.trim()).toBe(begins);
    const seen = await play(reader, lesson, wrongly);
    for (const step of lesson.steps) expect(seen.join('\n')).toContain(`${step.id} `);
    // A second question comes to those who were wrong, and to nobody else.
    const again = lesson.steps.filter((step) => isTaught(step) && step.again);
    expect(seen.filter((each) => each.endsWith(' again'))).toHaveLength(wrongly ? again.length : 0);
    expect(problemsOf(reader)).toEqual([]);
    if (lesson.returns) {
      // What keeps the record is fetched at the end; a busy machine takes its time.
      const kept = () => reader.evaluate(() => localStorage.getItem('lost-litres.practice') ?? '');
      await expect.poll(kept, { timeout: 20_000 }).toContain(`"${slug}"`);
      await reader.goto('/practice');
      await reader.locator('main[data-alive]').waitFor();
      await expect.poll(() => reader.locator(`#${slug}-title`).count(), { timeout: 20_000 }).toBe(1);
    }
    await reader.context().close();
  });
});
