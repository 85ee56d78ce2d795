/** Missing, unknown and misspelt keys, and keys in another unit. */
import { expect, it } from 'vitest';
import { readRig } from '#catalogue';
import { changed, type Loose } from './changed.ts';
import { refuses, type Case } from './refused.ts';

const moved = (rig: Loose, from: string, to: string) => {
  rig[to] = rig[from];
  delete rig[from];
};

const keys: Case[] = [
  ['a missing name', (r) => delete r.name, 'missing-key', 'name', 'nothing', 'the key name'],
  [
    'a missing length',
    (r) => delete r.run[1].path_m,
    'missing-key',
    'run[1].path_m',
    'nothing',
    'path_m, in metres',
  ],
  ['a missing run', (r) => delete r.run, 'missing-key', 'run', 'nothing', 'the key run'],
  ['an unknown key', (r) => (r.colour = 'blue'), 'unknown-key', 'colour', '"colour"', 'name, about, air'],
  [
    'a misspelt key',
    (r) => moved(r.run[1], 'material', 'materal'),
    'unknown-key',
    'run[1].materal',
    '"materal"',
    'did you mean material',
  ],
  [
    'metres in the key',
    (r) => moved(r.run[1], 'diameter_mm', 'diameter_m'),
    'unknown-key',
    'run[1].diameter_m',
    'diameter_mm, in millimetres',
  ],
  [
    'millimetres in the key',
    (r) => moved(r.run[1], 'path_m', 'path_mm'),
    'unknown-key',
    'run[1].path_mm',
    'path_m, in metres',
  ],
  [
    'no unit in the key',
    (r) => moved(r.run[1], 'diameter_mm', 'diameter'),
    'unknown-key',
    'run[1].diameter',
    'diameter_mm, in millimetres',
  ],
  [
    'a key every object inherits',
    (r) => (r.constructor = 1),
    'unknown-key',
    'constructor',
    '"constructor"',
    'name, about',
  ],
  [
    'what faults leave behind',
    (r) => (r.run[3].condition = { sagRatio: 0.1 }),
    'unknown-key',
    'run[3].condition',
    '"condition"',
  ],
  [
    'a span on the wrong fault',
    (r) => (r.faults = [{ kind: 'crimp', at: 'fan', amount: 1, span_m: 2 }]),
    'unknown-key',
    'faults[0].span_m',
    'kind, at, amount',
  ],
  [
    'a manner on the wrong fault',
    (r) => (r.faults = [{ kind: 'sag', at: 'out', amount: 1, manner: 'draped' }]),
    'unknown-key',
    'faults[0].manner',
    'span_m',
  ],
];

refuses('keys', keys);

it('tells a misspelt key once, not also as a missing one', () => {
  const read = readRig(
    changed((r) => moved(r.run[1], 'diameter_mm', 'diameter_cm')),
    'f.json',
  );
  expect(read.ok ? [] : read.problems.map(({ code }) => code)).toEqual(['unknown-key']);
});

it('tells every problem of a file with several', () => {
  const read = readRig(
    changed((r) => {
      r.name = 1;
      r.run[1].path_m = -1;
      r.run[3].colour = 'silver';
      r.run[3].shape = 'round';
    }),
    'f.json',
  );
  expect(read.ok ? [] : read.problems.map(({ path }) => path)).toEqual([
    'name',
    'run[1].path_m',
    'run[3].colour',
    'run[3].shape',
  ]);
});
