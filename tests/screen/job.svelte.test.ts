/** A job on the screen: what each repair buys, how the run stands against its rate, how few would have done. */
import './page.ts';
import { screen } from '@testing-library/svelte';
import userEvent from '@testing-library/user-event';
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { flushSync } from 'svelte';
import { jobsOf, mended, type MendStep } from '#lesson';
import type { LessonPlay } from '#session';
import { defaults, show } from '#units';
import { mounted, prepared } from './mounted.svelte.ts';

const parts = prepared('the-call-out');
const { lesson, text } = parts;
const step = lesson.steps.find((each) => each.id === 'put-right') as MendStep;
const user = userEvent.setup();
vi.setConfig({ testTimeout: 60_000 });

let play: LessonPlay;
let close: () => void;

beforeEach(async () => {
  ({ play, stop: close } = mounted(parts));
  // Brought to the job by its own rules: everything before it answered rightly.
  for (let i = 0; i < 400 && play.snapshot.context.stepIndex < lesson.steps.indexOf(step); i++) {
    const here = lesson.steps[play.snapshot.context.stepIndex]!;
    if (here.kind === 'entry') play.send({ type: 'step.next' });
    else if (here.kind === 'case') {
      const { predict } = here;
      play.send({ type: 'step.begin' });
      if (predict && 'low_L_s' in predict)
        play.send({ type: 'prediction.set', flow_L_s: predict.low_L_s + 20 });
      else if (predict) play.send({ type: 'prediction.set', option: predict.right });
      play.send({ type: 'prediction.lock' });
      play.send({ type: 'reveal.play' });
      play.send({ type: 'reveal.end' });
      if (here.observe) play.send({ type: 'observation.answer', option: here.observe.right });
      play.send({ type: 'explanation.answer', option: here.explain.right });
      play.send({ type: 'step.next' });
    }
  }
  flushSync();
  await screen.findByRole('button', { name: /^Mend .*nest/i }, { timeout: 20_000 });
  await vi.waitFor(() => expect(play.moving).toBe(false), { timeout: 5000 });
  flushSync();
});

afterEach(() => {
  play.stop();
  close();
});

const flowWith = (...ids: string[]) => play.runs.at(mended(lesson, step, ids)).flow_L_s.outdoors;
const digits = (value: number) => show('flow', value, defaults).number;
const titled = (id: string) => text.sections[`put-right/${id}`]!.title;
const goal = () => document.querySelector('.goal')?.textContent;
async function press(way: 'Mend' | 'Undo', id: string): Promise<void> {
  await user.click(screen.getByRole('button', { name: `${way} ${titled(id)}` }));
  await vi.waitFor(() => expect(play.moving).toBe(false), { timeout: 5000 });
  flushSync();
}

describe('a job', () => {
  test('opens as it was found, with nothing told of what would do', () => {
    expect(screen.getByTestId('flow').textContent).toBe(digits(flowWith()));
    expect(goal()).toBe(
      `${(25 - Number(digits(flowWith()))).toFixed(1)} L/s short of the 25.0 L/s asked for.`,
    );
    expect(document.querySelector('.ledger')?.textContent).toContain('As found');
    expect(document.body.textContent).not.toContain('would do');
  });

  test('says when the rate is reached, and at the end how few would have done', async () => {
    await press('Mend', 'belly');
    await press('Mend', 'pinch');
    expect(goal()).toContain('short of');
    await press('Mend', 'nest');
    await press('Mend', 'ties');
    const count = [['belly'], ['belly', 'pinch'], ['belly', 'pinch', 'nest']]
      .map((ids) => flowWith(...ids.map((id) => `put-right/${id}`)))
      .findIndex((flow) => flow >= 25);
    expect(goal()).toBe(
      `${count < 0 ? 4 : count + 1} repairs brought it to the 25.0 L/s asked for. ` +
        `2 of them would do: ${titled('ties')}, ${titled('nest')}.`,
    );
    expect(document.querySelector('#panel .told')?.textContent).toBe(
      text.sections['put-right/done']!.html.replace(/<[^>]+>/g, ''),
    );
    expect(jobsOf(lesson, step)).toHaveLength(4);
  });

  test('a repair taken back costs what it bought, and other repairs can be tried', async () => {
    await press('Mend', 'ties');
    await press('Mend', 'nest');
    expect(goal()).toBe('2 repairs brought it to the 25.0 L/s asked for.');
    await press('Undo', 'ties');
    expect(screen.getByTestId('flow').textContent).toBe(digits(flowWith('put-right/nest')));
    expect(goal()).toContain('short of');
  });
});
