/** The question beside the picture, phase by phase, and the whole screen with its number, account and words. */
import './page.ts';
import { screen, waitFor } from '@testing-library/svelte';
import userEvent from '@testing-library/user-event';
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { flushSync } from 'svelte';
import { pile, type LessonEvent } from '#lesson';
import { settings, type LessonPlay } from '#session';
import { defaults, show } from '#units';
import { mounted, prepared } from './mounted.svelte.ts';

const parts = prepared('five-small-faults');
const { lesson, text } = parts;
const user = userEvent.setup();

// Looking a control up by role is slow in jsdom on a whole screen.
vi.setConfig({ testTimeout: 60_000 });

let play: LessonPlay;
let close: () => void;
let restarts: number;

beforeEach(() => {
  restarts = 0;
  ({ play, stop: close } = mounted(parts, () => (restarts += 1)));
});

afterEach(() => {
  play.stop();
  close();
  settings.setFlow(defaults.flow);
});

const big = () => screen.getByTestId('flow').textContent;
const heading = () => screen.getByRole('heading', { level: 2 }).textContent;
const press = (name: string | RegExp) => user.click(screen.getByRole('button', { name }));
const flow = (count: number) => play.runs.at(pile(lesson, count)).flow_L_s.outdoors;
const digits = (value: number) => show('flow', value, defaults).number;

function send(...events: LessonEvent[]): void {
  for (const event of events) play.send(event);
  flushSync();
}

/** The reveal takes its 1.6 s here too. */
const seen = () => waitFor(() => expect(play.phase).toBe('observe'), { timeout: 6000 });

/** Past the first words and the entry check. */
async function start(): Promise<void> {
  await press('Begin the lesson');
  await press('Skip the questions');
}

async function reveal(): Promise<void> {
  send({ type: 'step.begin' }, { type: 'prediction.set', flow_L_s: 20 }, { type: 'prediction.lock' });
  send({ type: 'reveal.play' });
  await seen();
}

describe('the screen of a lesson', () => {
  test('opens on the healthy run, with nothing to see of what is to come', async () => {
    expect(big()).toBe(digits(flow(0)));
    expect(heading()).toBe(text.sections.intro!.title);
    await start();
    expect(heading()).toBe(text.sections.sag!.title);
    expect(document.activeElement).toBe(screen.getByRole('heading', { level: 2 }));
    expect(screen.queryByRole('button', { name: 'Put the fault in' })).toBeNull();
    expect(document.body.textContent).not.toContain(digits(flow(1)));
  });

  test('will not lock what has not been set, and says why beside the button', async () => {
    await start();
    await press('Make a prediction');
    const lock = screen.getByRole('button', { name: 'Lock it in' });
    expect(lock.getAttribute('aria-disabled')).toBe('true');
    const reason = document.getElementById(lock.getAttribute('aria-describedby')!);
    expect(reason?.textContent).toBe('Set a number first.');
    await user.click(lock);
    expect(play.phase).toBe('predict');
    await user.clear(screen.getByRole('textbox'));
    await user.type(screen.getByRole('textbox'), '20{Tab}');
    await press('Lock it in');
    expect(heading()).toBe('Locked: 20.0 L/s');
    expect(screen.queryByRole('textbox')).toBeNull();
  });

  test('shows the engine’s flow after the reveal, takes a wrong answer with its reason, and goes on', async () => {
    await start();
    await reveal();
    expect(big()).toBe(digits(flow(1)));
    expect(heading()).toBe(`You said 20.0. It is ${digits(flow(1))}.`);
    const title = (id: string) => new RegExp(text.sections[`sag/${id}`]!.title.slice(0, 25));
    await press(title('observe/shifted'));
    expect(
      screen
        .getAllByRole('status')
        .map((each) => each.textContent)
        .join(),
    ).toContain('The fixed-toll idea.');
    expect(play.phase).toBe('observe');
    await press(title('observe/steeper'));
    expect(play.phase).toBe('explain');
    await press(title('explain/turns'));
    expect(play.phase).toBe('settled');
    await press('Next fault');
    expect(heading()).toBe(text.sections.crimp!.title);
    expect(big()).toBe(digits(flow(1)));
  });

  test('changes its unit everywhere at once', async () => {
    await start();
    await user.click(screen.getByRole('radio', { name: 'cubic metres an hour' }));
    const shown = show('flow', flow(0), { flow: 'm3/h', pressure: 'Pa' });
    expect(big()).toBe(shown.number);
    expect(screen.getByText(/cubic metres an hour out of the wall/)).toBeTruthy();
    expect(
      [...document.querySelectorAll('.ledger text.amount')].map((each) => each.textContent?.trim()),
    ).toEqual([shown.number, shown.number]);
  });

  test('asks its page to start over, and does nothing else by itself', async () => {
    await press('Start over');
    expect(restarts).toBe(1);
    expect(play.phase).toBe('brief');
  });
});
