/** The rules of one step and of the mending half, one by one. */
import { describe, expect, it } from 'vitest';
import { currentRecord, lookAgain, phase } from '#lesson';
import { play, through, TO_MENDING } from './small.ts';

describe('a fault step', () => {
  it('has no reveal without a locked prediction', () => {
    expect(phase(play([{ type: 'reveal.play' }]))).toBe('brief');
    expect(phase(play([{ type: 'step.begin' }, { type: 'prediction.lock' }, { type: 'reveal.play' }]))).toBe(
      'predict',
    );
  });

  it('lets a prediction change until it is locked, and not after', () => {
    const set = (flow_L_s: number) => ({ type: 'prediction.set' as const, flow_L_s });
    const record = currentRecord(
      play([{ type: 'step.begin' }, { ...set(30), sure: 3 }, set(28), { type: 'prediction.lock' }, set(20)]),
    );
    expect(record.lockedPrediction).toEqual({ flow_L_s: 28, sure: 3 });
    expect(record.prediction).toEqual({ flow_L_s: 28, sure: 3 });
  });

  it('sends a wrong observation back to look again and keeps it', () => {
    const seen = play([...through('steeper').slice(0, 5), { type: 'observation.answer', option: 'shifted' }]);
    expect(phase(seen)).toBe('observe');
    expect(lookAgain(seen)).toBe(true);
    const right = play([
      ...through('steeper').slice(0, 5),
      { type: 'observation.answer', option: 'shifted' },
      { type: 'phase.replay' },
      { type: 'reveal.end' },
      { type: 'observation.answer', option: 'steeper' },
    ]);
    expect(phase(right)).toBe('explain');
    expect(currentRecord(right).observations).toEqual(['shifted', 'steeper']);
  });

  it('settles on the right explanation only and keeps the wrong ones', () => {
    const wrong = play([...through('steeper').slice(0, 6), { type: 'explanation.answer', option: 'climb' }]);
    expect(phase(wrong)).toBe('explain');
    const right = play([
      ...through('steeper').slice(0, 6),
      { type: 'explanation.answer', option: 'climb' },
      { type: 'explanation.answer', option: 'turns' },
    ]);
    expect(phase(right)).toBe('settled');
    expect(currentRecord(right).explanations).toEqual(['climb', 'turns']);
  });

  it('comes back from a replay to the phase it left', () => {
    const settled = [...through('steeper'), { type: 'phase.replay' as const }];
    expect(phase(play(settled))).toBe('reveal');
    expect(phase(play([...settled, { type: 'reveal.end' }]))).toBe('settled');
  });
});

describe('moving between steps', () => {
  it('lands in the furthest phase of each step, and the lock is as it was', () => {
    const there = play([
      ...through('steeper'),
      { type: 'step.next' },
      { type: 'step.begin' },
      { type: 'step.back' },
    ]);
    expect([there.context.stepIndex, phase(there)]).toEqual([0, 'settled']);
    expect(currentRecord(there).lockedPrediction).toEqual({ flow_L_s: 30 });
    const back = play([
      ...through('steeper'),
      { type: 'step.next' },
      { type: 'step.begin' },
      { type: 'step.back' },
      { type: 'step.next' },
    ]);
    expect([back.context.stepIndex, phase(back)]).toEqual([1, 'predict']);
  });

  it('leaves a reveal under way as seen', () => {
    const steps = [...through('steeper'), { type: 'step.next' as const }, ...through('rose').slice(0, 4)];
    expect(phase(play(steps))).toBe('reveal');
    expect(phase(play([...steps, { type: 'step.back' }, { type: 'step.visit', index: 1 }]))).toBe('observe');
  });

  it('visits no step that was not reached', () => {
    expect(play([{ type: 'step.visit', index: 1 }]).context.stepIndex).toBe(0);
  });
});

describe('the mending half', () => {
  const make = (stepId: string) => ({ type: 'repair.make' as const, stepId });

  it('takes repairs in any order, takes them back, and ends when all are made', () => {
    const all = play([
      ...TO_MENDING,
      make('second'),
      make('first'),
      { type: 'repair.undo', stepId: 'second' },
      { type: 'lesson.finish' },
    ]);
    expect([phase(all), all.context.repairs]).toEqual(['mending', ['first']]);
    const done = play([...TO_MENDING, make('second'), make('first'), { type: 'lesson.finish' }]);
    expect([phase(done), done.context.repairs]).toEqual(['finished', ['second', 'first']]);
  });

  it('starts again from nothing', () => {
    const again = play([...TO_MENDING, make('first'), { type: 'lesson.restart' }]);
    expect([phase(again), again.context.furthest, again.context.records, again.context.repairs]).toEqual([
      'brief',
      0,
      {},
      [],
    ]);
  });
});
