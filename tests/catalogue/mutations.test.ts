/**
 * Any one thing in a good rig changed at random: reading never throws, and whatever is refused is refused
 * with a place, with what was found and with what is allowed.
 */
import fc from 'fast-check';
import { expect, it, vi } from 'vitest';
import { readRig, seedRig, seedRigIds, stock, tell, type Problem } from '#catalogue';
import { solve } from '#physics';
import type { Loose } from './changed.ts';

// The same walk every time, so that a failure can be walked again.
fc.configureGlobal({ seed: 2026 });
// Hundreds of runs a test, on a machine that may be busy.
vi.setConfig({ testTimeout: 60_000 });

type Path = readonly (string | number)[];

/** Every place in a value, the value itself included. */
function places(value: unknown, path: Path = []): Path[] {
  if (typeof value !== 'object' || value === null) return [path];
  const inner = Object.entries(value).flatMap(([key, held]) =>
    places(held, [...path, Array.isArray(value) ? Number(key) : key]),
  );
  return [path, ...inner];
}

const at = (value: Loose, path: Path): Loose => path.reduce((held, key) => held[key], value);

/** The path as messages write it. */
const written = (path: Path) =>
  path
    .map((key) => (typeof key === 'number' ? `[${key}]` : `.${key}`))
    .join('')
    .replace(/^\./, '') || '(whole file)';

const everyPlace = seedRigIds.flatMap((id) => {
  const rig = seedRig(id);
  return places(rig).map((path) => ({ id, path, held: at(rig, path) as unknown }));
});

const anyPlace = fc.constantFrom(...everyPlace);

/** The places that hold a certain sort of value. */
const placeOf = (wanted: (held: unknown, path: Path) => boolean) =>
  fc.constantFrom(...everyPlace.filter(({ held, path }) => wanted(held, path)));

function put(rig: Loose, path: Path, value: unknown): Loose {
  if (path.length === 0) return value;
  at(rig, path.slice(0, -1))[path.at(-1)!] = value;
  return rig;
}

/** Reads, checks what holds for every outcome, and gives the problems. */
function problemsOf(value: unknown): readonly Problem[] {
  const before = typeof value === 'object' ? structuredClone(value) : value;
  const read = readRig(value, 'any.json');
  expect(value, 'the value read is left as it was').toEqual(before);
  if (read.ok) {
    expect(read.rig).toEqual(value);
    // What is accepted can be handed to the engine: a solution or a reasoned failure, never a throw.
    expect(['solved', 'failed']).toContain(solve(read.rig, stock).outcome);
    return [];
  }
  expect(read.problems.length).toBeGreaterThan(0);
  for (const problem of read.problems) {
    for (const part of [problem.path, problem.found, problem.allowed]) expect(part).not.toBe('');
    expect(tell(problem)).toContain(
      `any.json: ${problem.path}: found ${problem.found}; allowed: ${problem.allowed}`,
    );
    expect(tell(problem)).not.toMatch(/undefined|\[object|\n/);
  }
  return read.problems;
}

const paths = (problems: readonly Problem[]) => problems.map(({ path }) => path);

it('a thing taken away', () => {
  const inside = placeOf((_, path) => path.length > 0);
  fc.assert(
    fc.property(inside, ({ id, path }) => {
      const rig: Loose = seedRig(id);
      const holder = at(rig, path.slice(0, -1));
      if (Array.isArray(holder)) holder.splice(Number(path.at(-1)), 1);
      else delete holder[path.at(-1)!];
      problemsOf(rig);
    }),
    { numRuns: 400 },
  );
});

it('a key put in is always refused by name', () => {
  const objects = placeOf((held) => typeof held === 'object' && held !== null && !Array.isArray(held));
  const key = fc.oneof(
    fc.constantFrom(
      '__proto__',
      'constructor',
      'toString',
      'hasOwnProperty',
      '',
      'length',
      '0',
      'a.b',
      'x y',
    ),
    fc.string({ maxLength: 12 }),
  );
  const legal =
    /^(id|kind|name|about|air|room|required|run|faults|at|manner|origin|motor|saddle|bends|supports|speed|freeArea|.*_.*|lossCoefficient)$/;
  fc.assert(
    fc.property(objects, key, ({ id, path }, added) => {
      fc.pre(added === '__proto__' || !legal.test(added));
      const rig: Loose = seedRig(id);
      const holder = at(rig, path);
      fc.pre(!Object.hasOwn(holder, added));
      Object.defineProperty(holder, added, {
        value: 1,
        enumerable: true,
        configurable: true,
        writable: true,
      });
      const unknown = problemsOf(rig).filter(({ code }) => code === 'unknown-key');
      expect(unknown.map(({ found }) => found)).toContain(`the unknown key ${JSON.stringify(added)}`);
    }),
    { numRuns: 600 },
  );
});

it('a value of another type is always refused, there or at what holds it', () => {
  const stranger = fc.constantFrom<unknown>(
    null,
    true,
    7,
    'seven',
    [],
    {},
    [7],
    { seven: 7 },
    Number.NaN,
    -Infinity,
    undefined,
    7n,
  );
  const kindOf = (value: unknown) => (value === null ? 'null' : Array.isArray(value) ? 'list' : typeof value);
  fc.assert(
    fc.property(anyPlace, stranger, ({ id, path }, value) => {
      const rig = seedRig(id);
      const was = at(rig, path);
      const odd = typeof value === 'number' && !Number.isFinite(value);
      fc.pre((odd && typeof was !== 'object') || kindOf(value) !== kindOf(was));
      // A key given as undefined is the same as a key left out.
      const found = paths(problemsOf(put(rig, path, value)));
      if (value !== undefined) expect(found.some((each) => each.startsWith(written(path)))).toBe(true);
    }),
    { numRuns: 1000 },
  );
});

it('a number turned negative is always refused where it stands', () => {
  // Wind and the pressure of the roof space may stand on either side of nothing.
  const numbers = placeOf(
    (held, path) =>
      typeof held === 'number' && held !== 0 && path[0] !== 'outdoors' && path[0] !== 'roofSpace',
  );
  fc.assert(
    fc.property(numbers, ({ id, path }) => {
      const rig = seedRig(id);
      expect(paths(problemsOf(put(rig, path, -at(rig, path))))).toContain(written(path));
    }),
    { numRuns: 300 },
  );
});

it('a number scaled by a slip of unit never throws', () => {
  const numbers = placeOf((held) => typeof held === 'number');
  fc.assert(
    fc.property(
      numbers,
      fc.constantFrom(1e-9, 1e-3, 0.01, 0.1, 10, 25.4, 100, 1000, 1e12),
      ({ id, path }, factor) => {
        const rig = seedRig(id);
        problemsOf(put(rig, path, at(rig, path) * factor));
      },
    ),
    { numRuns: 500 },
  );
});

it('anything at all in place of a rig never throws', () => {
  fc.assert(
    fc.property(fc.anything(), (value) => void readRig(value, 'any.json')),
    { numRuns: 1000 },
  );
});
