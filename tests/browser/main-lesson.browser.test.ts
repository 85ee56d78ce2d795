/** The main job of the whole thing: the main lesson from first to last step, by keyboard alone, against the engine. */
import { describe, expect, test } from 'vitest';
import type { Page } from 'playwright-core';
import { stock } from '#catalogue';
import {
  guessesFlow,
  judgePrediction,
  stagesOf,
  type CaseStep,
  type FaultStep,
  type Question,
  type Verdict,
} from '#lesson';
import { systemCurve, type CurvePoint, type Fault } from '#physics';
import { defaults, show } from '#units';
import { focused, openTable, press, tabTo, typeGuess } from './support/keyboard.ts';
import * as main from './support/lesson.ts';
import { page, problemsOf } from './support/page.ts';

const { steps, flowAfter, shownFlow } = main;
const CURVES = 'Pressure on each curve, Pa';

/** A prediction for each step, all of them wrong, each out of another mistaken idea. */
const wrongGuess = (count: number): { typed: string; idea: Verdict } => {
  const before = flowAfter(count - 1);
  const fall = before - flowAfter(count);
  const ideas: { typed: number; idea: Verdict }[] = [
    { typed: before - fall * 0.4, idea: 'too-small' },
    { typed: before + 8, idea: 'rose' },
    { typed: before - fall - 6, idea: 'too-big' },
    { typed: before, idea: 'same' },
    { typed: before + 20, idea: 'rose' },
  ];
  const { typed, idea } = ideas[(count - 1) % ideas.length]!;
  return { typed: typed.toFixed(1), idea };
};

const faultsOf = (count: number): Fault[] => steps.slice(0, count).map((step) => step.fault);

async function expectStage(reader: Page, count: number): Promise<main.Shown> {
  const seen = await main.read(reader);
  main.expectEngine(seen, main.entriesAfter(count));
  return seen;
}

/** Every system curve stands above the one before: as drawn up in the open table, and as the engine has it. */
function expectCurvesRise(seen: main.Shown, count: number): void {
  const [head = [], ...rows] = seen.tables[CURVES] ?? [];
  expect(head.slice(1, 3)).toEqual(['fan curve', 'healthy run']);
  expect(head).toHaveLength(3 + count);
  const flows = rows.map(([flow]) => Number(flow));
  const curves = Array.from({ length: count + 1 }, (_, i) =>
    systemCurve({ ...main.rig, faults: faultsOf(i) }, stock, flows),
  ) as CurvePoint[][];
  rows.forEach(([flow, , ...cells], row) => {
    cells.forEach((cell, i) => {
      const { pressure_Pa } = curves[i]![row]!;
      // The chart reads straight between its points, which may put a cell one digit off.
      if (cell !== '–') expect(Math.abs(Number(cell) - pressure_Pa)).toBeLessThanOrEqual(1.5);
      if (i === 0 || Number(flow) === 0) return;
      expect(pressure_Pa).toBeGreaterThan(curves[i - 1]![row]!.pressure_Pa);
      if (cell !== '–') expect(Number(cell)).toBeGreaterThanOrEqual(Number(cells[i - 1]));
    });
  });
  // Far out the gap is wide enough to be seen in whole pascals.
  const far = rows.filter((cells) => !cells.includes('–')).at(-1)!;
  const shown = far.slice(2).map(Number);
  expect(shown).toEqual([...new Set(shown)].sort((a, b) => a - b));
}

/** Answers wrongly with every wrong option, then rightly. The letters are those on the cards. */
async function answer(reader: Page, part: Question, next: string): Promise<void> {
  const letter = (id: string) => 'ABCDE'[part.options.indexOf(id)]!;
  const phase = await main.phaseOf(reader);
  for (const wrong of part.options.filter((id) => id !== part.right)) {
    await press(reader, new RegExp(`^${letter(wrong)}`));
    expect(await main.phaseOf(reader)).toBe(phase);
    const reason = await reader.textContent('#panel [role=status]');
    expect(reason, `a reason for ${wrong}`).toMatch(/^The .+ idea\./);
    // The pressed card is gone; the reader must not be thrown back to the top of the page.
    expect((await focused(reader)).place).toBe('panel');
  }
  await press(reader, new RegExp(`^${letter(part.right)}`));
  await main.waitForPhase(reader, next);
}

async function noRevealYet(reader: Page, count: number): Promise<void> {
  const seen = await expectStage(reader, count - 1);
  expect(seen.tones.filter((tone) => !tone.includes('fan'))).toHaveLength(count);
  expect(await reader.locator('#panel button', { hasText: 'Put the fault in' }).count()).toBe(0);
  expect(await reader.locator('header nav li.ahead button').count()).toBe(0);
}

async function predict(reader: Page, count: number): Promise<string> {
  await noRevealYet(reader, count);
  await press(reader, 'Make a prediction');
  await main.waitForPhase(reader, 'predict');
  await noRevealYet(reader, count);
  const off = await press(reader, 'Lock it in');
  expect(off.off).toBe(true);
  expect(await main.phaseOf(reader)).toBe('predict');
  await tabTo(reader, ({ type, place }) => type === 'range' && place === 'panel', { back: true });
  await reader.keyboard.press('ArrowRight');
  await reader.keyboard.press('ArrowLeft');
  const { typed } = wrongGuess(count);
  await typeGuess(reader, typed);
  const sure = await focused(reader);
  expect(sure.type).toBe('radio');
  await reader.keyboard.press('Space');
  await press(reader, 'Lock it in');
  await main.waitForPhase(reader, 'locked');
  const seen = await expectStage(reader, count - 1);
  expect(seen.heading).toBe(`Locked: ${show('flow', Number(typed), defaults).text}`);
  expect(await reader.locator('#panel input').count()).toBe(0);
  return typed;
}

async function playStep(reader: Page, step: FaultStep, count: number): Promise<void> {
  const typed = await predict(reader, count);
  await press(reader, 'Put the fault in');
  await main.waitForPhase(reader, 'observe');
  const seen = await expectStage(reader, count);
  expect(flowAfter(count)).toBeLessThan(flowAfter(count - 1));
  expect(seen.heading).toBe(`You said ${typed}. It is ${shownFlow(flowAfter(count))}.`);
  expect(seen.live.words).toContain(
    `from ${shownFlow(flowAfter(count - 1))} L/s to ${shownFlow(flowAfter(count))} L/s`,
  );
  const points = seen.tables['Flows to compare'] ?? [];
  expect(points.find(([name]) => name === 'what you said')?.[1]).toBe(typed);
  const { fan, flow_L_s } = main.solved(faultsOf(count));
  expect(points.find(([name]) => name === 'where they meet now')).toEqual([
    'where they meet now',
    shownFlow(flow_L_s.fan),
    show('pressure', fan.pressure_Pa, defaults).number,
  ]);
  expectCurvesRise(seen, count);
  await answer(reader, step.observe, 'explain');
  await expectStage(reader, count);
  await answer(reader, step.explain, 'again');
  await answer(reader, step.again!, 'settled');
  await expectStage(reader, count);
  const { idea } = wrongGuess(count);
  expect(judgePrediction(Number(typed), flowAfter(count - 1), flowAfter(count))).toBe(idea);
  expect(await reader.textContent('#panel details >> nth=0')).toContain(main.titleOf(`prediction/${idea}`));
  await press(reader, count < steps.length ? 'Next fault' : 'Now put it right');
  await main.waitForPhase(reader, count < steps.length ? 'brief' : 'mending');
}

/** Answers the entry check, the last question wrongly: then there is nothing to leap to. */
async function enter(reader: Page): Promise<void> {
  await press(reader, 'Begin');
  const { questions } = main.entry;
  for (const { id, options, right } of questions) {
    const wanted = id === questions.at(-1)!.id ? options.find((option) => option !== right)! : right;
    await reader.waitForFunction(
      (words) => document.querySelector('#panel h3')?.textContent === words,
      main.titleOf(`${main.entry.id}/${id}`),
    );
    await press(reader, new RegExp(`^${'ABC'[options.indexOf(wanted)]}`));
  }
  await main.waitForPhase(reader, 'settled');
  expect(await reader.locator('#panel .act button').count()).toBe(1);
  await press(reader, 'Next step');
  await main.waitForPhase(reader, 'brief');
}

/** A case after the mending, wrong in everything that can be wrong; the number at the end is the engine's. */
async function playCase(reader: Page, step: CaseStep, last: boolean): Promise<void> {
  const { from, to } = stagesOf(main.lesson, step);
  const flow = (stage: typeof from) => shownFlow(main.flowAt(stage));
  expect((await main.read(reader)).big).toBe(flow(from));
  await press(reader, 'Make a prediction');
  await main.waitForPhase(reader, 'predict');
  if (guessesFlow(step.predict)) {
    await typeGuess(reader, '60');
  } else {
    await tabTo(reader, ({ type, place }) => type === 'radio' && place === 'panel');
    await reader.keyboard.press('Space');
  }
  await press(reader, 'Lock it in');
  await main.waitForPhase(reader, 'locked');
  await press(reader, /^Show/);
  await main.waitForPhase(reader, 'observe');
  expect((await main.read(reader)).big).toBe(flow(to));
  await answer(reader, step.observe!, 'explain');
  await answer(reader, step.explain, 'again');
  await answer(reader, step.again!, 'settled');
  await press(reader, last ? 'Finish' : 'Next step');
}

/** Mends in an odd order and takes one repair back; the account is held to the engine after each. */
async function mend(reader: Page): Promise<void> {
  const presses = ['ties', 'sag', 'extra', 'sag', 'swap', 'sag', 'crimp'];
  let mended: string[] = [];
  for (const id of presses) {
    await press(reader, 'Next step');
    expect(await main.phaseOf(reader)).toBe('mending');
    const undo = mended.includes(id);
    await press(reader, `${undo ? 'Undo' : 'Mend'} ${main.titleOf(id)}`);
    mended = undo ? mended.filter((each) => each !== id) : [...mended, id];
    await reader.waitForFunction(
      (count) => document.querySelectorAll('#panel li.mended').length === count,
      mended.length,
    );
    const left = (count: number) =>
      steps.filter((step) => !mended.slice(0, count).includes(step.id)).map((step) => step.fault);
    const seen = await main.read(reader);
    main.expectEngine(seen, [
      ...main.entriesAfter(steps.length),
      ...mended.map((each, i) => ({ label: main.titleOf(each), faults: left(i + 1) })),
    ]);
  }
}

describe('the main lesson', () => {
  test('the healthy run passes and five faults fail, by the engine alone', () => {
    expect(main.REQUIRED_L_S).toBe(25);
    expect(flowAfter(0)).toBeGreaterThan(25);
    expect(flowAfter(steps.length)).toBeLessThan(25);
  });

  test('is played to its end by keyboard alone, and every number shown is the engine’s', async () => {
    const reader = await page({ path: main.PATH, reducedMotion: 'reduce' });
    await main.alive(reader);
    await openTable(reader, 'crossing');
    await openTable(reader, 'ledger');
    await press(reader, 'Start', { back: true });
    await enter(reader);
    for (const [i, step] of steps.entries()) await playStep(reader, step, i + 1);
    await mend(reader);
    const mended = await main.read(reader);
    expect(mended.big).toBe(shownFlow(flowAfter(0)));
    expect(mended.amounts.at(-1)).toBe(mended.amounts[0]);
    const open = await press(reader, 'Next step');
    expect(open.off).toBe(false);
    const cases = main.lesson.steps.filter((step) => step.kind === 'case');
    for (const step of cases) await playCase(reader, step, step === cases.at(-1));
    await main.waitForPhase(reader, 'finished');
    const said = await reader.locator('#panel tbody tr').allTextContents();
    steps.forEach((step, i) => {
      expect(said[i]).toContain(main.titleOf(step.id));
      expect(said[i]).toContain(`${wrongGuess(i + 1).typed} L/s`);
      expect(said[i]).toContain(`${shownFlow(flowAfter(i + 1))} L/s`);
    });
    expect(problemsOf(reader)).toEqual([]);
    await reader.context().close();
  });
});
