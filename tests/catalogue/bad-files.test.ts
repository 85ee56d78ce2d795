/** Whole files with one mistake each, as they may lie on a disk. */
import { readdirSync, readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { readRigText, tell } from '#catalogue';

const folder = new URL('../fixtures/bad-files/', import.meta.url);

/** File, the place blamed, and words of the message. */
const refusals: readonly (readonly [file: string, place: string, ...words: string[]])[] = [
  ['wrong-type.json', 'run[1].path_m', '"one and a half"', 'a number from 0.01 to 100, metres'],
  ['missing-key.json', 'run[3].diameter_mm', 'found nothing', 'diameter_mm, in millimetres'],
  ['unknown-key.json', 'run[1].length_m', '"length_m"', 'path_m, fullLength_m'],
  ['unit-slip-in-key.json', 'run[1].diameter_m', '"diameter_m"', 'did you mean diameter_mm, in millimetres?'],
  ['unit-slip-in-value.json', 'run[3].path_m', 'found 5000', 'millimetres, which would be 5'],
  ['negative-length.json', 'run[3].path_m', 'found -5', 'from 0.01'],
  ['shorter-than-its-path.json', 'run[3].fullLength_m', '4.5 m', '5 m'],
  ['fan-table-rises.json', 'run[2].fan.points[2].pressure_Pa', '160 Pa after 150 Pa', 'at most 150 Pa'],
  [
    'fan-table-repeats-a-flow.json',
    'run[2].fan.points[2].flow_L_s',
    '20 L/s after 20 L/s',
    'more than 20 L/s',
  ],
  ['fault-on-wrong-piece.json', 'faults[0].at', '"inlet"', 'for sag: "out"'],
  ['not-a-number.txt', 'line 49, column 17', 'found "NaN"', 'JSON has no such number'],
  ['cut-short.txt', 'line 15, column 15', '25 L/s is the bathro', 'ends with a double quote'],
  ['empty.txt', 'line 1, column 1', 'an empty file'],
];

/** A rig that reads well and has no answer, and bytes that are no text: the command's to refuse. */
const forTheCommand = ['no-answer.json', 'sixteen-bit.txt'];

it('tries every file kept', () => {
  expect(readdirSync(folder).sort()).toEqual([...refusals.map(([file]) => file), ...forTheCommand].sort());
});

it.each(refusals)('%s is refused at %s', (file, place, ...words) => {
  const read = readRigText(readFileSync(new URL(file, folder), 'utf8'), file);
  if (read.ok) throw new Error('accepted');
  expect(read.problems).toHaveLength(1);
  const message = tell(read.problems[0]!);
  expect(message).toContain(`${file}: ${place}: found `);
  for (const word of ['; allowed: ', ...words]) expect(message).toContain(word);
});
