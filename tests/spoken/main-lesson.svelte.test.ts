/**
 * What a screen reader is told through the whole main lesson, phase by phase, against the stored list. A change that
 * is meant is kept by `npm run -s stored`.
 */
import './page.ts';
import { join } from 'node:path';
import { flushSync, tick } from 'svelte';
import { expect, test, vi } from 'vitest';
import { faultSteps, guessesFlow, isTaught, questionOf, type Part, type TaughtStep } from '#lesson';
import { loadLesson } from '#lesson-load';
import { compared } from '../gallery/stored.ts';
import { EVENTS, opened, sentences, told, words } from './open.svelte.ts';

vi.setConfig({ testTimeout: 180_000 });

const { lesson } = loadLesson('five-small-faults');
const steps = faultSteps(lesson);

/** Pictures by their accessible names, and whatever speaks up by itself. */
function spoken(): Record<string, string> {
  const all = (selector: string) => [...document.querySelectorAll(selector)];
  const picture = (element: Element): string => {
    const place = element.closest('.crossing, .ledger, .scene')?.className ?? '';
    return /crossing|ledger|scene/.exec(place)?.[0] ?? 'walk';
  };
  return {
    heading: words(document.querySelector('#panel h2')),
    ...Object.fromEntries(
      all('svg[role=img]').map((each) => [picture(each), each.getAttribute('aria-label') ?? '']),
    ),
    'told at once': told(),
  };
}

test('the words of the main lesson are the stored ones', async () => {
  const { play, send, close } = opened('five-small-faults');
  const lines: string[] = [];
  let last: Record<string, string> = {};
  /** Everything that is new since the phase before. */
  const note = (what: string): void => {
    const now = spoken();
    lines.push(`== ${what}`);
    for (const [name, said] of Object.entries(now)) {
      if (said === '' || (said === last[name] && name !== 'heading')) continue;
      lines.push(`${name}: ${sentences(said)}`);
    }
    lines.push('');
    last = now;
  };
  const answers = async (step: TaughtStep, part: Part): Promise<void> => {
    const { options, right } = questionOf(step, part)!;
    for (const option of options.filter((id) => id !== right)) {
      await send({ type: EVENTS[part], option });
      note(`${step.id}, ${part}: wrong answer ${option}`);
    }
    await send({ type: EVENTS[part], option: right });
    note(`${step.id}, ${part}: right answer ${right}, now ${play.phase}`);
  };
  const taught = async (step: TaughtStep): Promise<void> => {
    note(`${step.id}, ${play.phase}`);
    await send({ type: 'step.begin' });
    note(`${step.id}, ${play.phase}`);
    const said = guessesFlow(step.predict) ? { flow_L_s: 20 } : { option: step.predict!.right };
    await send({ type: 'prediction.set', ...said });
    await send({ type: 'prediction.lock' });
    note(`${step.id}, ${play.phase}`);
    await send({ type: 'reveal.play' });
    await vi.waitFor(() => expect(play.phase).toBe('observe'));
    await tick();
    note(`${step.id}, revealed`);
    for (const part of ['observe', 'explain', 'again'] as const) await answers(step, part);
  };

  note('opening');
  document.querySelector<HTMLElement>('#panel .press')!.click();
  flushSync();
  for (const step of lesson.steps) {
    if (step.kind === 'entry') {
      note(`${step.id}, ${play.phase}`);
      await send({ type: 'step.begin' });
      for (const { id, right } of step.questions) {
        await vi.waitFor(() => expect(document.querySelector('#panel h3')).not.toBeNull());
        note(`${step.id}, ${play.phase} ${id}`);
        await send({ type: 'entry.answer', question: id, option: right });
      }
      note(`${step.id}, ${play.phase}`);
    } else if (isTaught(step)) await taught(step);
    else {
      note('mending');
      for (const { id } of steps) {
        await send({ type: 'repair.make', stepId: id });
        note(`mended ${id}`);
      }
    }
    if (step !== lesson.steps.at(-1)) await send({ type: 'step.next' });
  }
  await send({ type: 'lesson.finish' });
  note('finished');
  expect(play.phase).toBe('finished');
  close();

  const complaint = compared(
    join(import.meta.dirname, 'main-lesson.txt'),
    'What the main lesson says aloud',
    lines.join('\n'),
  );
  if (complaint) throw new Error(complaint);
});
