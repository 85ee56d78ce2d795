/** The main lesson from outside: what the engine says of each stage, and what the page shows of it. */
import { expect } from 'vitest';
import type { Page } from 'playwright-core';
import { seedRig, stock } from '#catalogue';
import { everyStage, faultSteps, type EntryStep, type Stage } from '#lesson';
import { loadLesson } from '#lesson-load';
import { solve, type Fault, type Rig, type Solution } from '#physics';
import { lessonRigs } from '#session';
import { defaults, rounded, show, type UnitChoice } from '#units';

export const PATH = '/lessons/five-small-faults';
export const SLUG = 'five-small-faults';
export const SAVED = `lost-litres.progress.${SLUG}`;
export const { lesson, text } = loadLesson(SLUG);
export const steps = faultSteps(lesson);
export const indexOf = (id: string): number => lesson.steps.findIndex((step) => step.id === id);
export const entry = lesson.steps[0] as EntryStep;
export const rig: Rig = { ...seedRig('upstairs-bathroom'), faults: [] };
export const REQUIRED_L_S = rig.required?.flow_L_s ?? Number.NaN;

/** The engine's own answer for the lesson's rig with these faults. */
export function solved(faults: readonly Fault[]): Solution {
  const solution = solve({ ...rig, faults }, stock);
  if (solution.outcome === 'failed') throw new Error(`${solution.path}: ${solution.found}`);
  return solution;
}

/** The flow out of the wall at a stage of the lesson, in whichever of its houses, L/s. */
export function flowAt({ rig: id, faults }: Stage): number {
  const solution = solve({ ...lessonRigs(lesson)[id]!, faults }, stock);
  if (solution.outcome === 'failed') throw new Error(`${solution.path}: ${solution.found}`);
  return solution.flow_L_s.outdoors;
}

export const flowWith = (faults: readonly Fault[]): number => solved(faults).flow_L_s.outdoors;
/** Flow out of the wall once the first `count` faults are in, L/s. */
export const flowAfter = (count: number): number => flowWith(steps.slice(0, count).map((step) => step.fault));
export const shownFlow = (flow_L_s: number, choice: UnitChoice = defaults) =>
  show('flow', flow_L_s, choice).number;
export const titleOf = (id: string): string => text.sections[id]?.title ?? id;

/** Waits until the page has come alive, holds the reader's own place and has told the browser's history of it. */
export async function alive(page: Page): Promise<void> {
  await page.waitForFunction(() => {
    const states = (history.state as Record<string, { step?: number }> | null)?.['sveltekit:states'];
    return states?.step !== undefined && document.querySelector('main[data-alive]') !== null;
  });
}

export async function phaseOf(page: Page): Promise<string> {
  return page.evaluate(() => /phase-(\w+)/.exec(document.querySelector('main')?.className ?? '')?.[1] ?? '');
}

export async function waitForPhase(page: Page, phase: string): Promise<void> {
  await page.waitForSelector(`main.phase-${phase}`);
}

export interface Shown {
  phase: string;
  /** Digits of the big number. */
  big: string;
  /** The live region: the flow it stands for, and its words. */
  live: { flow: string; words: string };
  heading: string;
  /** Amounts at the bars of the account, the closing balance last. */
  amounts: string[];
  /** Tables that are open: caption, then rows with the head first. */
  tables: Record<string, string[][]>;
  /** Tones of the lines drawn in the crossing. */
  tones: string[];
}

/** Everything the page shows that the engine has a word in, read without touching anything. */
export function read(page: Page): Promise<Shown> {
  return page.evaluate(() => {
    const words = (element: Element | null) => (element?.textContent ?? '').replace(/\s+/g, ' ').trim();
    const all = (selector: string, within: ParentNode = document) => [...within.querySelectorAll(selector)];
    const live = document.querySelector<HTMLElement>('[aria-live][data-flow]');
    const tables = all('figure table').map((table) => [
      words(table.querySelector('caption')),
      all('tr', table).map((row) => all('th, td', row).map(words)),
    ]);
    return {
      phase: /phase-(\w+)/.exec(document.querySelector('main')?.className ?? '')?.[1] ?? '',
      big: words(document.querySelector('[data-testid=flow]')),
      live: { flow: live?.dataset.flow ?? '', words: words(live) },
      heading: words(document.querySelector('#panel h2')),
      amounts: all('.ledger text.amount').map(words),
      tables: Object.fromEntries(tables) as Record<string, string[][]>,
      tones: all('.crossing path.curve').map((path) => path.getAttribute('class') ?? ''),
    };
  });
}

/** A number as shown, with a true minus sign. */
export const numberOf = (shown: string): number => Number(shown.replace('−', '-').replace('+', ''));

/** Opening, debits and credits as shown add up to the closing balance as shown, to the last digit. */
export function expectBalance({ amounts }: Pick<Shown, 'amounts'>): void {
  const numbers = amounts.map(numberOf);
  expect(
    numbers.every((value) => Number.isFinite(value)),
    amounts.join(' '),
  ).toBe(true);
  const sum = numbers.slice(0, -1).reduce((total, value) => total + value, 0);
  expect(Number(sum.toFixed(1)), amounts.join(' ')).toBe(numbers.at(-1));
}

export interface Entry {
  readonly label: string;
  readonly faults: readonly Fault[];
}

/** Big number, live region and account against the engine's own solutions, one for each line of the account. */
export function expectEngine(page: Shown, entries: readonly Entry[], choice: UnitChoice = defaults): void {
  const flows = entries.map(({ faults }) => flowWith(faults));
  const now = flows.at(-1)!;
  expect(page.big).toBe(shownFlow(now, choice));
  expect(Number(page.live.flow)).toBe(rounded('flow', now, choice));
  const amounts = flows.map((flow, i) => {
    if (i === 0) return shownFlow(flow, choice);
    const change = rounded('flow', flow, choice) - rounded('flow', flows[i - 1]!, choice);
    return show('flow', change, choice, { already: true, signed: true }).number;
  });
  expect(page.amounts).toEqual([...amounts, shownFlow(now, choice)]);
  expectBalance(page);
  const table = page.tables['The account, line by line'];
  if (!table) return;
  const lines = table.slice(1, entries.length + 1);
  expect(lines.map(([label, , balance]) => [label, balance])).toEqual(
    entries.map(({ label }, i) => [label, shownFlow(flows[i]!, choice)]),
  );
  expect(lines.map(([, change]) => change)).toEqual(['–', ...amounts.slice(1)]);
  expect(table.find(([label]) => label === 'left at the outlet')?.[2]).toBe(shownFlow(now, choice));
}

/** The account while the first `count` faults are in. */
export function entriesAfter(count: number): Entry[] {
  return Array.from({ length: count + 1 }, (_, i) => ({
    label: i === 0 ? 'Healthy run' : titleOf(steps[i - 1]!.id),
    faults: steps.slice(0, i).map((step) => step.fault),
  }));
}

/** The flow at every stage the lesson can rest at, L/s. */
export const stages = (): number[] => everyStage(lesson).map(flowAt);
