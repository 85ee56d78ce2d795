/** A lesson being played: what moves, what it rests at, and what it takes no notice of. */
import '../screen/page.ts';
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { flushSync } from 'svelte';
import { faultSteps, pile, type LessonEvent } from '#lesson';
import { loadLesson } from '#lesson-load';
import { LessonPlay, lessonRigs, stockFor } from '#session';

const { lesson } = loadLesson('five-small-faults');
const rigs = lessonRigs(lesson);
const steps = faultSteps(lesson);
const stock = stockFor(lesson, rigs);

let play: LessonPlay;
let close: () => void;
let settled: number;

beforeEach(() => {
  vi.useFakeTimers({ toFake: ['requestAnimationFrame', 'cancelAnimationFrame', 'performance', 'Date'] });
  settled = 0;
  close = $effect.root(() => {
    play = new LessonPlay(lesson, rigs, stock, undefined, () => (settled += 1));
  });
  // Past the entry check, to the first fault.
  play.send({ type: 'step.next' });
  settled = 0;
});

afterEach(async () => {
  // Svelte keeps one list of what moves and asks for a frame only when the list was empty: a move left
  // unended here, its frame gone with the faked clock, would hold up the next test's.
  await pass(3000);
  play.stop();
  close();
  vi.useRealTimers();
});

const flow = () => play.solution.flow_L_s.outdoors;
const stage = (count: number) => play.runs.at(pile(lesson, count)).flow_L_s.outdoors;

function send(...events: LessonEvent[]): void {
  for (const event of events) play.send(event);
  flushSync();
}

/** Lets the picture move for a while, then whatever waits for its end. */
async function pass(milliseconds: number): Promise<void> {
  await vi.advanceTimersByTimeAsync(milliseconds);
  flushSync();
}

async function settleStep(index: number): Promise<void> {
  const step = steps[index]!;
  send(
    { type: 'step.begin' },
    { type: 'prediction.set', flow_L_s: 30 },
    { type: 'prediction.lock' },
    { type: 'reveal.play' },
  );
  await pass(2000);
  send(
    { type: 'observation.answer', option: step.observe.right },
    { type: 'explanation.answer', option: step.explain.right },
  );
}

test('what is to be kept is told after each event and at the end of each move', async () => {
  send({ type: 'step.begin' });
  await pass(0);
  const quiet = settled;
  expect(quiet).toBeGreaterThan(0);
  send({ type: 'prediction.set', flow_L_s: 30 }, { type: 'prediction.lock' }, { type: 'reveal.play' });
  const started = settled;
  expect(started).toBeGreaterThan(quiet);
  // The end of a move is told in a turn of its own, after the last frame.
  for (let i = 0; i < 10 && settled <= started; i += 1) await pass(500);
  expect(settled).toBeGreaterThan(started);
});

describe('a reveal', () => {
  test('goes through flows between the two it joins, and ends by itself', async () => {
    send({ type: 'step.begin' }, { type: 'prediction.set', flow_L_s: 30 }, { type: 'prediction.lock' });
    expect(flow()).toBe(stage(0));
    send({ type: 'reveal.play' });
    const seen: number[] = [];
    for (let i = 0; i < 6; i += 1) {
      await pass(200);
      expect(play.phase).toBe('reveal');
      expect(play.moving).toBe(true);
      expect(play.stage.faults).toHaveLength(1);
      expect(play.stage.faults[0]!.amount).toBeLessThan(steps[0]!.fault.amount);
      expect(play.balances.at(-1)!.flow_L_s).toBe(flow());
      seen.push(flow());
    }
    expect(seen).toEqual([...seen].sort((a, b) => b - a));
    expect(new Set(seen).size).toBe(seen.length);
    expect(seen[0]).toBeLessThan(stage(0));
    expect(seen.at(-1)).toBeGreaterThan(stage(1));
    await pass(1000);
    expect(play.phase).toBe('observe');
    expect(play.moving).toBe(false);
    expect(flow()).toBe(stage(1));
    expect(play.stage.faults).toEqual([steps[0]!.fault]);
    expect(play.before.flow_L_s.outdoors).toBe(stage(0));
  });

  test('is seen again from its start, and lands where the step had got to', async () => {
    await settleStep(0);
    expect(play.phase).toBe('settled');
    send({ type: 'phase.replay' });
    await pass(32);
    expect(play.phase).toBe('reveal');
    expect(flow()).toBeGreaterThan((stage(0) + stage(1)) / 2);
    await pass(2000);
    expect(play.phase).toBe('settled');
    expect(flow()).toBe(stage(1));
  });

  test('is not ended by a move that came before it', async () => {
    send({ type: 'step.begin' }, { type: 'prediction.set', flow_L_s: 30 }, { type: 'prediction.lock' });
    send({ type: 'reveal.play' });
    await pass(800);
    send({ type: 'reveal.end' });
    expect(play.phase).toBe('observe');
    send({ type: 'phase.replay' });
    await pass(1000);
    expect(play.phase).toBe('reveal');
    await pass(1500);
    expect(play.phase).toBe('observe');
    expect(flow()).toBe(stage(1));
  });
});

test('events out of order change nothing', () => {
  const wrong: LessonEvent[] = [
    { type: 'reveal.play' },
    { type: 'prediction.lock' },
    { type: 'observation.answer', option: steps[0]!.observe.right },
    { type: 'step.next' },
    { type: 'step.visit', index: 4 },
    { type: 'repair.make', stepId: 'sag' },
    { type: 'lesson.finish' },
  ];
  const { context } = play.snapshot;
  for (const event of wrong) {
    send(event);
    expect(play.can(event).possible, event.type).toBe(false);
    expect(play.snapshot.context).toEqual(context);
    expect(play.phase).toBe('brief');
    expect(flow()).toBe(stage(0));
    expect(play.balances.map(({ line }) => line.kind)).toEqual(['opening']);
  }
});

test('nothing goes back from the first step', () => {
  send({ type: 'step.back' });
  expect(play.phase).toBe('brief');
  expect(play.can({ type: 'step.back' }).possible).toBe(false);
  const { context } = play.snapshot;
  send({ type: 'step.back' });
  expect(play.snapshot.context).toEqual(context);
});

test('the account and the flow follow the repairs, and an undone one', async () => {
  for (const index of steps.keys()) {
    await settleStep(index);
    expect(flow()).toBe(stage(index + 1));
    send({ type: 'step.next' });
  }
  expect(play.phase).toBe('mending');
  const without = (...ids: string[]) =>
    play.runs.at({
      rig: lesson.rig,
      faults: steps.filter((step) => !ids.includes(step.id)).map((step) => step.fault),
    }).flow_L_s.outdoors;
  send({ type: 'repair.make', stepId: 'ties' });
  await pass(300);
  expect(flow()).toBeGreaterThan(stage(5));
  expect(flow()).toBeLessThan(without('ties'));
  await pass(600);
  expect(flow()).toBe(without('ties'));
  send({ type: 'repair.make', stepId: 'sag' });
  await pass(900);
  expect(play.before.flow_L_s.outdoors).toBe(without('ties'));
  expect(flow()).toBe(without('ties', 'sag'));
  send({ type: 'repair.undo', stepId: 'ties' });
  await pass(900);
  expect(flow()).toBe(without('sag'));
  expect(play.balances.map(({ line }) => line.kind).filter((kind) => kind === 'credit')).toHaveLength(1);
  for (const { id } of steps) send({ type: 'repair.make', stepId: id });
  await pass(900);
  send({ type: 'step.next' });
  expect(play.phase).toBe('brief');
  expect(flow()).toBe(play.healthy.flow_L_s.outdoors);
});
