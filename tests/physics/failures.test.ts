/** A rig that cannot be solved gives a value that says where, what was found and what is allowed. */
import { expect, test } from 'vitest';
import { fanCurveOf, solve, systemCurve, type Failure, type Fault, type Piece, type Rig } from '#physics';
import { stock } from './rigs.ts';

const grille: Piece = { id: 'grille', kind: 'grille', diameter_mm: 150 };
const duct: Piece = { id: 'duct', kind: 'duct', material: 'semi-rigid', diameter_mm: 150, path_m: 3 };
const fan: Piece = { id: 'fan', kind: 'fan', fan: 'mixed-150' };
const end: Piece = { id: 'end', kind: 'terminal', form: 'open-end', diameter_mm: 150 };

const rig = (run: Piece[], faults: Fault[] = []): Rig => ({ name: 'wrong', run, faults });
const lame = {
  pressure: 'total',
  points: [
    { flow_L_s: 0, pressure_Pa: 0 },
    { flow_L_s: 50, pressure_Pa: 0 },
  ],
} as const;

const CASES: [Failure['code'], Rig, string, RegExp, RegExp][] = [
  ['no-fan', rig([grille, duct, end]), 'run', /no fan/, /exactly one/],
  ['no-fan', rig([]), 'run', /no fan/, /exactly one/],
  ['unknown-fan', rig([grille, { ...fan, fan: 'mixed-151' }, end]), 'run[1].fan', /mixed-151/, /mixed-150/],
  [
    'unknown-material',
    rig([grille, { ...duct, material: 'paper' }, fan, end]),
    'run[1].material',
    /paper/,
    /semi-rigid/,
  ],
  [
    'does-not-reach',
    rig([grille, { ...duct, fullLength_m: 2.5 }, fan, end]),
    'run[1].fullLength_m',
    /2\.5 m/,
    /at least the path, 3 m/,
  ],
  [
    'unknown-place',
    rig([grille, duct, fan, end], [{ kind: 'crimp', at: 'fam', amount: 0.5 }]),
    'faults[0].at',
    /fam/,
    /grille, duct, fan, end/,
  ],
  [
    'wrong-place',
    rig([grille, duct, fan, end], [{ kind: 'crimp', at: 'duct', amount: 0.5 }]),
    'faults[0].at',
    /duct/,
    /^fan$/,
  ],
  [
    'wrong-place',
    rig([grille, duct, fan, end], [{ kind: 'sag', at: 'duct', amount: 0.5 }]),
    'faults[0].at',
    /duct/,
    /no piece of this run can have "sag"/,
  ],
  ['no-crossing', rig([grille, { ...fan, fan: lame }, end]), 'run', /do not meet/, /pressure/],
  [
    'no-crossing',
    rig(
      [
        grille,
        fan,
        { ...duct, material: 'flexible', path_m: 12, leakCoefficient_L_s_m2: 0.5, leakExponent: 1 },
        end,
      ].map((piece) => ({ ...piece, ...(piece.kind === 'fan' ? {} : { diameter_mm: 70 }) }) as Piece),
    ),
    'run',
    /leaks so large/,
    /leakage/,
  ],
  ['not-a-number', rig([grille, { ...duct, path_m: NaN }, fan, end]), 'run[1].path_m', /NaN/, /finite/],
  [
    'not-a-number',
    rig([grille, duct, fan, end], [{ kind: 'crimp', at: 'fan', amount: Infinity }]),
    'faults[0].amount',
    /Infinity/,
    /finite/,
  ],
];

test.each(CASES)('%s', (code, wrong, path, found, allowed) => {
  const failure = solve(wrong, stock);
  expect(failure).toMatchObject({ outcome: 'failed', code, path });
  expect((failure as Failure).found).toMatch(found);
  expect((failure as Failure).allowed).toMatch(allowed);
});

test('curves of a rig that cannot be built are null', () => {
  expect(systemCurve(rig([grille, end]), stock, [10])).toBeNull();
  expect(fanCurveOf(rig([grille, end]), stock, [10])).toBeNull();
});

test('each code there is was met', () => {
  const codes: Record<Failure['code'], true> = {
    'no-crossing': true,
    'does-not-reach': true,
    'unknown-fan': true,
    'unknown-material': true,
    'unknown-place': true,
    'wrong-place': true,
    'no-fan': true,
    'not-a-number': true,
  };
  expect([...new Set(CASES.map(([code]) => code))].sort()).toEqual(Object.keys(codes).sort());
});
