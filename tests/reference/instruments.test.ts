/** Meters against figures worked elsewhere: what a hood takes, traverse depths, and their stated error over many readings. */
import { describe, expect, test } from 'vitest';
import {
  bagFlow_L_s,
  figuresOf,
  hoodCorrection_L_s,
  INSTRUMENTS,
  powerProfile,
  powerProfileMean,
  randomFrom,
  solve,
  solveWithHood,
  traverseMean,
  type InstrumentKind,
  type Reading,
  type Rig,
} from '#physics';
import baseCase from '../../seeds/rigs/base-case.json' with { type: 'json' };
import data from '../../seeds/instruments.json' with { type: 'json' };
import { expectPrinted, stock } from './support.ts';

const rig = baseCase as unknown as Rig;
const bench = { rig, stock };
/** Slowed down, because the base case blows past the range of the bag. */
const slowed = {
  rig: { ...rig, run: rig.run.map((piece) => (piece.kind === 'fan' ? { ...piece, speed: 0.3 } : piece)) },
  stock,
};
const benchOf = (kind: InstrumentKind) => (kind === 'bag' ? slowed : bench);
const KINDS = Object.keys(data) as InstrumentKind[];
const placeOf = (kind: InstrumentKind) =>
  kind === 'pitot-traverse' || kind === 'manometer' ? 'discharge' : 'grille';

function read(kind: InstrumentKind, random: () => number, on = bench): Reading {
  const reading = INSTRUMENTS[kind].read(on, placeOf(kind), figuresOf(data[kind]), random);
  if ('outcome' in reading) throw new Error(reading.found);
  return reading;
}

describe('a hood on the base case', () => {
  test.each([
    [0.2, 88.96, 3.073, '88.9563'],
    [0.5, 88.2704, 7.683, '88.2477'],
  ])('K %s leaves %s L/s; by straight lines %s Pa gives %s', (k, exact, pressure, linear) => {
    const free = solve(rig, stock);
    const held = solveWithHood(bench, 'grille', k);
    if (free.outcome === 'failed' || held.outcome === 'failed') throw new Error('no flow');
    expect(held.flow_L_s.room).toBeLessThan(free.flow_L_s.room);
    // Worked with another friction formula, so the drop is what is held.
    expect(Math.abs(held.flow_L_s.room - free.flow_L_s.room - (exact - 89.4285))).toBeLessThan(0.03);
    expectPrinted(89.4287 - hoodCorrection_L_s(pressure, 3.40235, -3.10292), linear);
  });
});

test('traverses of a 1/7-power profile', () => {
  expectPrinted(powerProfileMean(), '0.816667');
  expectPrinted(traverseMean('log-linear', 6, powerProfile), '0.814430');
  expectPrinted(traverseMean('log-Tchebycheff', 6, powerProfile), '0.813743');
});

test('a bag of 74 L in 2 s is 37 L/s', () => {
  expect(bagFlow_L_s(74, 2)).toBe(37);
  expect(bagFlow_L_s(74, 0)).toBeNull();
});

test.each(KINDS)('%s: the same seed, the same reading; another seed, another', (kind) => {
  const at = (seed: number) => read(kind, randomFrom(seed).even, benchOf(kind));
  expect(at(7)).toEqual(at(7));
  expect(new Set(Array.from({ length: 20 }, (_, seed) => at(seed).shown)).size).toBeGreaterThan(2);
});

test.each(KINDS)(
  '%s: about 95 %% of readings within its error',
  (kind) => {
    const figures = figuresOf(data[kind]);
    const random = randomFrom(42).even;
    const readings = Array.from({ length: 2000 }, () => read(kind, random, benchOf(kind)));
    const inside = readings.filter(({ shown, present }) => {
      const allowed = Math.hypot((figures.errorShare ?? 0) * Math.abs(present), figures.error ?? 0);
      return shown !== null && Math.abs(shown - present) <= allowed + figures.resolution / 2;
    });
    expect(inside.length / readings.length).toBeGreaterThan(0.93);
    expect(inside.length / readings.length).toBeLessThan(0.98);
  },
  30_000,
);

test('a flow past the range of the bag is not shown', () => {
  const reading = read('bag', () => 0.5);
  expect(reading).toMatchObject({ shown: null, outOfRange: 'high', flow_L_s: null });
});

test('a powered hood leaves the flow alone, a passive one does not', () => {
  expect(read('powered-hood', () => 0.5).present).toBe(read('powered-hood', () => 0.5).undisturbed);
  const passive = read('passive-hood', () => 0.5);
  expect(passive.present).toBeLessThan(passive.undisturbed);
});

test('a meter in the wrong place is a failure, not an exception', () => {
  for (const kind of KINDS)
    expect(INSTRUMENTS[kind].read(bench, 'nowhere', figuresOf(data[kind]), () => 0.5)).toMatchObject({
      outcome: 'failed',
      code: 'wrong-place',
    });
});
