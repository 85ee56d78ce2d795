/** Wrong types and numbers that are none. */
import { refuses, type Case } from './refused.ts';

const wrongTypes: Case[] = [
  [
    'text for a number',
    (r) => (r.run[1].path_m = '1.5'),
    'out-of-range',
    'run[1].path_m',
    '"1.5"',
    'a number',
  ],
  ['a number for text', (r) => (r.name = 5), 'wrong-type', 'name', 'found 5', 'text'],
  ['text that is empty', (r) => (r.run[0].id = ' '), 'wrong-type', 'run[0].id', '" "', 'not empty'],
  ['null for an object', (r) => (r.air = null), 'wrong-type', 'air', 'null', 'an object'],
  [
    'a list for an object of optional keys',
    (r) => (r.air = []),
    'wrong-type',
    'air',
    'a list of 0',
    'an object',
  ],
  ['a list for an object', (r) => (r.room = []), 'wrong-type', 'room', 'a list of 0', 'an object'],
  ['an object for a list', (r) => (r.run = {}), 'wrong-type', 'run', 'an object', 'a list'],
  ['a number for a piece', (r) => (r.run[1] = 7), 'wrong-type', 'run[1]', 'found 7', 'an object'],
  ['a list for a piece', (r) => (r.run[1] = [1, 2]), 'wrong-type', 'run[1]', 'a list of 2', 'an object'],
  [
    'an unknown kind of piece',
    (r) => (r.run[1].kind = 'Duct'),
    'not-one-of',
    'run[1].kind',
    '"Duct"',
    '"duct"',
    'did you mean duct',
  ],
  ['a piece without a kind', (r) => delete r.run[1].kind, 'not-one-of', 'run[1].kind', 'nothing', '"duct"'],
  [
    'an unknown form',
    (r) => (r.run[4].form = 'chimney'),
    'not-one-of',
    'run[4].form',
    '"chimney"',
    '"wall-cowl"',
  ],
  [
    'an unknown fault',
    (r) => (r.faults = [{ kind: 'rust', at: 'out', amount: 1 }]),
    'not-one-of',
    'faults[0].kind',
    '"rust"',
    '"sag"',
  ],
  ['a number for a fan', (r) => (r.run[2].fan = 5), 'wrong-type', 'run[2].fan', 'found 5', 'an object'],
  ['not a number', (r) => (r.run[1].path_m = Number.NaN), 'out-of-range', 'run[1].path_m', 'NaN', 'a number'],
  ['no end', (r) => (r.run[1].path_m = Infinity), 'out-of-range', 'run[1].path_m', 'Infinity', 'a number'],
];

refuses('types', wrongTypes);
