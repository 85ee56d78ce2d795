/** Rigs at the far ends of what a file may hold: an answer that balances, or a Failure that says where. */
import { describe, expect, test } from 'vitest';
import {
  FAULTS,
  rigBands,
  solve,
  type Duct,
  type Failure,
  type Fault,
  type Piece,
  type Rig,
  type Solution,
} from '#physics';
import { KINDS, stock } from './rigs.ts';

/** Every number in a value, however deep. */
function numbersIn(value: unknown): number[] {
  if (typeof value === 'number') return [value];
  return typeof value === 'object' && value !== null ? Object.values(value).flatMap(numbersIn) : [];
}

interface Setting {
  bore?: number;
  duct?: Partial<Duct>;
  fan?: Partial<Extract<Piece, { kind: 'fan' }>>;
  faults?: Fault[];
  more?: Partial<Rig>;
}

function rig({ bore = 150, duct = {}, fan = {}, faults = [], more = {} }: Setting): Rig {
  const length = (id: string): Piece => ({
    id,
    kind: 'duct',
    material: 'flexible',
    diameter_mm: bore,
    path_m: 3,
    ...duct,
  });
  return {
    name: 'degenerate',
    run: [
      { id: 'grille', kind: 'grille', diameter_mm: bore },
      length('in'),
      { id: 'fan', kind: 'fan', fan: 'mixed-150', ...fan },
      length('out'),
      { id: 'flap', kind: 'damper', diameter_mm: bore },
      { id: 'end', kind: 'terminal', form: 'wall-cowl', diameter_mm: bore },
    ],
    faults,
    ...more,
  };
}

/** Every kind at its worst wherever it fits, but for those named. */
function allAtOnce(base: Rig, but: readonly string[] = []): Rig {
  const faults = KINDS.filter((kind) => !but.includes(kind)).flatMap((kind) =>
    base.run
      .filter((piece) => FAULTS[kind].fits(piece, stock))
      .map((piece): Fault => ({ kind, at: piece.id, amount: 1, ...(kind === 'sag' ? { span_m: 50 } : {}) })),
  );
  return { ...base, faults };
}

const leaks: Partial<Duct> = { leakClass: 'A', jointLeak: { coefficient_L_s: 1, exponent: 0.5 } };
const sag = (at: string): Fault => ({ kind: 'sag', at, amount: 1, span_m: 50 });
const room = (makeUpFreeArea_mm2: number) => ({ room: { volume_m3: 12, makeUpFreeArea_mm2 } });
const wind = (wind_Pa: number) => ({ outdoors: { wind_Pa } });
const unflapped = (base: Rig): Rig => ({ ...base, run: base.run.filter(({ kind }) => kind !== 'damper') });
const endless = { path_m: 50, leakCoefficient_L_s_m2: 0 };

type Direction = Solution['direction'];
const ANSWERED: [string, Rig, Direction][] = [
  ['no length of duct at all', rig({ duct: { path_m: 0 } }), 'forward'],
  ['no length, leaky joints', rig({ duct: { ...leaks, path_m: 0 } }), 'forward'],
  ['no length with every fault', allAtOnce(rig({ duct: { path_m: 0 } })), 'forward'],
  ['a bore of 5 mm', rig({ bore: 5 }), 'forward'],
  ['a bore of 5 mm, leaky: the fan draws on the leaks', rig({ bore: 5, duct: leaks }), 'forward'],
  ['a bore of 2 m', rig({ bore: 2000, duct: leaks }), 'forward'],
  ['a sag over 50 m spans', rig({ duct: endless, faults: [sag('in'), sag('out')] }), 'forward'],
  ['a sag over 50 m spans, leaky', rig({ duct: { ...endless, ...leaks }, faults: [sag('in')] }), 'forward'],
  ['every fault at its worst', allAtOnce(rig({})), 'forward'],
  ['every fault at its worst but ducts off', allAtOnce(rig({}), ['joint-off']), 'forward'],
  ['every fault at its worst, leaky, windy', allAtOnce(rig({ duct: leaks, more: wind(200) })), 'forward'],
  ['a make-up opening of 0.001 mm2', rig({ more: room(0.001) }), 'stopped'],
  ['a make-up opening of 0.001 mm2, leaky', rig({ duct: leaks, more: room(0.001) }), 'forward'],
  ['no make-up opening, duct off in the loft', rig({ more: room(0), faults: [off('in')] }), 'forward'],
  ['a grille open by a millionth', opened(rig({}), 1e-6), 'stopped'],
  ['wind that shuts the flap', rig({ more: wind(2000) }), 'stopped'],
  ['wind that reverses', unflapped(rig({ more: wind(2000) })), 'reversed'],
  ['wind that reverses, leaky', unflapped(rig({ duct: leaks, more: wind(2000) })), 'reversed'],
  ['wind that sucks', rig({ duct: leaks, more: wind(-2000) }), 'forward'],
  ['a fan at a thousandth of its speed, leaky', rig({ duct: leaks, fan: { speed: 1e-3 } }), 'forward'],
];

function off(at: string): Fault {
  return { kind: 'joint-off', at, amount: 1 };
}

function opened(base: Rig, freeArea: number): Rig {
  const run = base.run.map((piece) => (piece.kind === 'grille' ? { ...piece, freeArea } : piece));
  return { ...base, run };
}

describe('an answer that balances', () => {
  test.each(ANSWERED)('%s', (_name, wrong, direction) => {
    const solution = solve(wrong, stock);
    if (solution.outcome === 'failed') throw new Error(`${solution.path}: ${solution.found}`);
    expect(numbersIn(solution).every(Number.isFinite)).toBe(true);
    expect(Math.abs(solution.residual_Pa)).toBeLessThan(1e-6);
    expect(solution.direction).toBe(direction);
    const bands = rigBands(wrong, stock, { draws: 20 });
    expect(numbersIn(bands).every(Number.isFinite)).toBe(true);
  });
});

describe('a Failure that says where', () => {
  test.each<[string, Rig, string, RegExp]>([
    ['no make-up opening', rig({ more: room(0) }), 'room.makeUpFreeArea_mm2', /no way into the room/],
    ['no make-up opening, leaky', rig({ duct: leaks, more: room(0) }), 'room.makeUpFreeArea_mm2', /no way/],
    ['a fan that stands', rig({ fan: { speed: 0 } }), 'run', /do not meet/],
  ])('%s', (_name, wrong, path, found) => {
    const failure = solve(wrong, stock) as Failure;
    expect(failure).toMatchObject({ outcome: 'failed', code: 'no-crossing', path });
    expect(failure.found).toMatch(found);
    expect(rigBands(wrong, stock, { draws: 5 })).toEqual(failure);
  });
});
