/** What is told by itself after each reveal and repair of every other lesson, against the stored list: flow, leaks, reading, watts, drying. */
import './page.ts';
import { join } from 'node:path';
import { tick } from 'svelte';
import { expect, test, vi } from 'vitest';
import { guessesFlow, isTaught, jobsOf, type Lesson, type TaughtStep } from '#lesson';
import { loadLessons } from '#lesson-load';
import { compared } from '../gallery/stored.ts';
import { EVENTS, opened, sentences, told, type Opened } from './open.svelte.ts';

vi.setConfig({ testTimeout: 180_000 });

async function through({ play, send }: Opened, step: TaughtStep): Promise<string> {
  await send({ type: 'step.begin' });
  if (step.predict) {
    const said = guessesFlow(step.predict) ? { flow_L_s: 20 } : { option: step.predict.right };
    await send({ type: 'prediction.set', ...said });
    await send({ type: 'prediction.lock' });
    await send({ type: 'reveal.play' });
    await vi.waitFor(() => expect(play.phase).toBe('observe'));
  }
  await tick();
  // A chart that is fetched when wanted tells its finding as soon as it is there.
  if (step.chart) await vi.waitFor(() => expect(document.querySelector('.effort figure')).not.toBeNull());
  const said = told();
  for (const part of ['observe', 'explain', 'again'] as const) {
    const question = step[part];
    if (!question || play.phase !== part) continue;
    await send({ type: EVENTS[part], option: question.right });
  }
  return said;
}

async function listened(lesson: Lesson): Promise<string[]> {
  const reader = opened(lesson.slug);
  const lines: string[] = [];
  document.querySelector<HTMLElement>('#panel .press')!.click();
  for (const step of lesson.steps) {
    if (isTaught(step)) lines.push(`${step.id}: ${sentences(await through(reader, step))}`);
    else if (step.kind === 'mend') {
      // The list is fetched when it is wanted.
      await vi.waitFor(() => expect(document.querySelector('#panel li .press')).not.toBeNull());
      lines.push(`${step.id}: ${sentences(told())}`);
      for (const { id } of jobsOf(lesson, step)) {
        await reader.send({ type: 'repair.make', stepId: id });
        lines.push(`${id}: ${sentences(told())}`);
      }
    }
    await reader.send({ type: 'step.next' });
  }
  reader.close();
  return lines;
}

test('the words after each reveal are the stored ones', async () => {
  const lines: string[] = [];
  for (const { lesson } of loadLessons()) {
    if (lesson.slug === 'five-small-faults') continue;
    lines.push(`== ${lesson.slug}`, ...(await listened(lesson)), '');
  }
  const complaint = compared(
    join(import.meta.dirname, 'every-lesson.txt'),
    'What the lessons say aloud',
    lines.join('\n'),
  );
  if (complaint) throw new Error(complaint);
});
