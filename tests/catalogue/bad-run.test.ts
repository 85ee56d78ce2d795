/** Runs and faults whose pieces are right one by one and wrong together. */
import type { Loose } from './changed.ts';
import { refuses, type Case } from './refused.ts';

const run: Case[] = [
  [
    'flexible shorter than its path',
    (r) => (r.run[3].fullLength_m = 4.9),
    'shorter-than-path',
    'run[3].fullLength_m',
    '4.9 m',
    '5 m',
  ],
  [
    'any duct shorter than its path',
    (r) => (r.run[1].fullLength_m = 1),
    'shorter-than-path',
    'run[1].fullLength_m',
    '1 m',
    '1.5 m',
  ],
  ['an id twice', (r) => (r.run[3].id = 'inlet'), 'id-twice', 'run[3].id', '"inlet"', 'run[1]', 'once'],
  [
    'an id the solution needs',
    (r) => (r.run[0].id = 'room'),
    'reserved-id',
    'run[0].id',
    '"room"',
    'any other',
  ],
  ['no fan', (r) => r.run.splice(2, 1), 'fan-count', 'run', 'no fan', 'one fan'],
  [
    'two fans',
    (r) => r.run.splice(3, 0, { ...r.run[2], id: 'second' }),
    'fan-count',
    'run[3].kind',
    '2 fans',
    'one fan',
  ],
  ['an empty run', (r) => (r.run = []), 'too-few', 'run', '0 pieces', 'at least 3'],
  [
    'an endless run',
    (r) => (r.run = Array.from({ length: 101 }, () => r.run[1])),
    'too-many',
    'run',
    '101 pieces',
    'at most 100',
  ],
  [
    'an unknown fan',
    (r) => (r.run[2].fan = 'mixed-1000'),
    'unknown-fan',
    'run[2].fan',
    '"mixed-1000"',
    '"axial-100"',
    'did you mean mixed-100?',
  ],
  [
    'a fan every object inherits',
    (r) => (r.run[2].fan = 'toString'),
    'unknown-fan',
    'run[2].fan',
    '"toString"',
  ],
  [
    'an unknown material',
    (r) => (r.run[1].material = 'semirigid'),
    'unknown-material',
    'run[1].material',
    '"semirigid"',
    '"spiral"',
    'did you mean semi-rigid?',
  ],
  [
    'neighbours of two bores',
    (r) => (r.run[3].diameter_mm = 125),
    'bores-differ',
    'run[3].diameter_mm',
    '125 mm',
    '100 mm of "inlet"',
    'changes the bore',
    '"reducer"',
    '"fitting"',
  ],
  [
    'a fan of another bore',
    (r) => (r.run[2].diameter_mm = 150),
    'bores-differ',
    'run[2].diameter_mm',
    '150 mm',
    '100 mm',
  ],
  [
    'a run that starts with an elbow',
    (r) => (r.run[0] = { id: 'e', kind: 'elbow', form: 'gored', angle_deg: 90, diameter_mm: 100 }),
    'wrong-start',
    'run[0].kind',
    'elbow',
    'a grille or a duct',
  ],
  [
    'a run that starts with the fan',
    (r) => r.run.splice(0, 2),
    'wrong-start',
    'run[0].kind',
    'fan',
    'a grille or a duct',
  ],
  ['a run that ends inside', (r) => r.run.pop(), 'wrong-end', 'run[3].kind', 'duct', 'a terminal last'],
  [
    'a grille half way',
    (r) => r.run.splice(1, 0, { ...r.run[0], id: 'second' }),
    'wrong-middle',
    'run[1].kind',
    'grille',
    'first',
  ],
  [
    'a cowl half way',
    (r) => r.run.splice(3, 0, { ...r.run[4], id: 'second' }),
    'wrong-middle',
    'run[3].kind',
    'terminal',
    'last',
  ],
];

refuses('the run as a whole', run);

const fault = (kind: string, at: string) => (r: Loose) => (r.faults = [{ kind, at, amount: 0.5 }]);
const rigidOut = (kind: string) => (r: Loose) => {
  r.run[3].material = 'rigid';
  r.faults = [{ kind, at: 'out', amount: 0.5 }];
};

const faults: Case[] = [
  [
    'a place that is not there',
    fault('crimp', 'fann'),
    'unknown-place',
    'faults[0].at',
    '"fann"',
    '"grille", "inlet", "fan"',
    'did you mean fan?',
  ],
  [
    'sag on semi-rigid',
    fault('sag', 'inlet'),
    'wrong-place',
    'faults[0].at',
    'a semi-rigid duct',
    'for sag: "out"',
  ],
  ['sag on the fan', fault('sag', 'fan'), 'wrong-place', 'faults[0].at', 'a fan', '"out"'],
  [
    'crimp on a duct',
    fault('crimp', 'out'),
    'wrong-place',
    'faults[0].at',
    'a flexible duct',
    'for crimp: "fan"',
  ],
  [
    'flexible swapped for flexible',
    fault('flexible-swap', 'out'),
    'wrong-place',
    'faults[0].at',
    'a flexible duct',
    '"inlet"',
  ],
  [
    'ties on a grille',
    fault('tight-ties', 'grille'),
    'wrong-place',
    'faults[0].at',
    'a grille',
    '"inlet", "out"',
  ],
  ['ties on rigid', rigidOut('tight-ties'), 'wrong-place', 'faults[0].at', 'a rigid duct', '"inlet"'],
  ['extra length on rigid', rigidOut('extra-length'), 'wrong-place', 'faults[0].at', 'a rigid duct'],
  [
    'sag where nothing can sag',
    rigidOut('sag'),
    'wrong-place',
    'faults[0].at',
    'a rigid duct',
    'no piece of this run',
  ],
  [
    'endless faults',
    (r) => (r.faults = Array.from({ length: 101 }, () => ({ kind: 'sag', at: 'out', amount: 0 }))),
    'too-many',
    'faults',
    '101 faults',
  ],
];

refuses('faults', faults);
