/**
 * The likely band: against one worked apart with stated input uncertainties (GUM by hand, Monte Carlo in
 * NumPy with 200 000 draws), against cases that can be done by hand, and on rigs.
 */
import { describe, expect, test } from 'vitest';
import {
  band,
  bands,
  bracketedRoot,
  COEFFICIENTS,
  drawer,
  dropBands,
  moments,
  monotoneCubic,
  randomFrom,
  rigBands,
  swameeJain,
  uncertainInputs,
  type FanTable,
  type Input,
  type Rig,
  type Values,
} from '#physics';
import baseCase from '../../seeds/rigs/base-case.json' with { type: 'json' };
import laundry from '../../seeds/rigs/long-laundry-run.json' with { type: 'json' };
import { stock } from './rigs.ts';

const LIMIT = 1.959964;
/** Normal about 1 with a relative standard uncertainty, held within 0.2 to 2 as in the outside run. */
const scale = (name: string, u: number): Input => ({
  name,
  value: 1,
  low: 1 - LIMIT * u,
  high: 1 + LIMIT * u,
  least: 0.2,
  most: 2,
});

/** The base case with Swamee-Jain friction and a scale on each loss, L/s. */
const points = (baseCase.run.find((piece) => piece.id === 'fan') as unknown as { fan: FanTable }).fan.points;
const fan = monotoneCubic(
  points.map((p) => p.flow_L_s),
  points.map((p) => p.pressure_Pa),
);
function baseFlow(x: Values): number {
  const area = (Math.PI / 4) * 0.15 ** 2;
  return bracketedRoot(
    (q) => {
      const velocity = q / 1000 / area;
      const re = (velocity * 0.15) / 1.51e-5;
      const friction =
        (x.inletFriction! * swameeJain(re, 0.006) * 2 + x.outFriction! * swameeJain(re, 0.02) * 6) / 0.15;
      const local = 2.5 * x.grille! + (0.3 + 0.7) * x.bends! + 4 * x.termination!;
      return x.fan! * fan.value(q) - (friction + local) * 0.6 * velocity * velocity;
    },
    20,
    128,
    1e-9,
  );
}
const INPUTS = [
  scale('fan', 0.04),
  scale('grille', 0.15),
  scale('bends', 0.2),
  scale('termination', 0.2),
  scale('inletFriction', 0.1),
  scale('outFriction', 0.15),
];

describe('base case with stated uncertainties', () => {
  const found = band(INPUTS, baseFlow, { draws: 120_000, seed: 12345 })!;

  test('central value 89.3813 L/s', () => expect(found.value).toBeCloseTo(89.3813, 3));

  test.each([
    ['fan', 23.465, 0.9386],
    ['grille', -5.8979, -0.8847],
    ['bends', -2.3592, -0.4718],
    ['termination', -9.4367, -1.8873],
    ['inletFriction', -1.0724, -0.1072],
    ['outFriction', -4.698, -0.7047],
  ])('sensitivity to %s: %d, part %d', (name, slope, part) => {
    const one = found.sensitivities.find((entry) => entry.name === name)!;
    expect(Math.abs(one.slope / slope - 1)).toBeLessThan(1e-3);
    expect(Math.abs(one.part / part - 1)).toBeLessThan(1e-3);
  });

  test('linear: u 2.4406, U 4.881', () => {
    expect(Math.abs(found.linear.standard - 2.4406)).toBeLessThan(0.002);
    expect(Math.abs((found.linear.high - found.linear.low) / 2 - 4.881)).toBeLessThan(0.004);
    expect(found.sensitivities[0]!.name).toBe('termination');
  });

  test('drawn: standard deviation 2.451, 95 % from 84.81 to 94.43', () => {
    expect(Math.abs(found.monteCarlo.standard / 2.451 - 1)).toBeLessThan(0.02);
    expect(Math.abs(found.monteCarlo.low - 84.81)).toBeLessThan(0.15);
    expect(Math.abs(found.monteCarlo.high - 94.43)).toBeLessThan(0.15);
    expect(found.unanswered).toBe(0);
  });

  test('the straight line holds here', () => expect(found.linearHolds).toBe(true));
});

describe('by hand', () => {
  const even: Input = { name: 'x', value: 3, low: 3 - LIMIT, high: 3 + LIMIT };

  test('a straight model: both ways give its own standard deviation', () => {
    const found = band([even], (v) => 2 * v.x! + 1, { draws: 50_000 })!;
    expect(found.value).toBe(7);
    expect(found.linear.standard).toBeCloseTo(2, 6);
    expect(found.monteCarlo.standard).toBeCloseTo(2, 1);
    expect(found.linearHolds).toBe(true);
  });

  test('a bowl at its bottom: the straight line sees nothing, and says it does not hold', () => {
    const found = band([even], (v) => (v.x! - 3) ** 2, { draws: 2000 })!;
    expect(found.linear.standard).toBeLessThan(1e-9);
    expect(found.monteCarlo.high).toBeGreaterThan(4);
    expect(found.linearHolds).toBe(false);
  });

  test('a cliff is flagged even at few draws', () => {
    expect(band([even], (v) => Math.exp(2 * v.x!), { draws: 1000 })!.linearHolds).toBe(false);
  });

  test('nothing uncertain: no width, and the line holds', () => {
    const sure = band([{ name: 'x', value: 2, low: 2, high: 2 }], (v) => v.x!, { draws: 100 })!;
    expect(sure.monteCarlo).toEqual({ central: 2, standard: 0, low: 2, high: 2 });
    expect(sure.linear.low).toBe(2);
    expect(sure.linearHolds).toBe(true);
  });

  test('draws without an answer are counted and left out; none at the centre is null', () => {
    const found = band([even], (v) => (v.x! > 3.5 ? null : v.x!), { draws: 2000 })!;
    expect(Math.abs(found.unanswered / 2000 - 0.3085)).toBeLessThan(0.04);
    expect(found.monteCarlo.high).toBeLessThanOrEqual(3.5);
    expect(band([even], () => null)).toBeNull();
  });

  test('a difference on the same draws is surer than either level', () => {
    const found = bands([even, { ...even, name: 'y' }], (v) => ({
      before: 10 * v.x!,
      after: 10 * v.x! - v.y!,
      drop: v.y!,
    }))!;
    expect(found.before.monteCarlo.standard).toBeGreaterThan(9);
    expect(found.drop.monteCarlo.standard).toBeLessThan(1.1);
  });

  test('an input draws the same whichever others stand beside it', () => {
    const alone = band([even], (v) => v.x!, { draws: 200 })!;
    const beside = band([{ ...even, name: 'other' }, even], (v) => v.x!, { draws: 200 })!;
    expect(beside.monteCarlo).toEqual(alone.monteCarlo);
  });
});

describe.each(['split normal', 'triangular'] as const)('%s, 1 (0.7 to 2)', (spread) => {
  const input: Input = { name: 'x', value: 1, low: 0.7, high: 2, spread };
  const next = drawer(input, randomFrom(5));
  const list = Array.from({ length: 100_000 }, next);
  const share = (test: (x: number) => boolean) => list.filter(test).length / list.length;

  test('95 % lie within the limits, the rest shared as the widths are', () => {
    expect(Math.abs(share((x) => x < 0.7 || x > 2) - 0.05)).toBeLessThan(0.003);
    expect(Math.abs(share((x) => x < 0.7) - (0.05 * 0.3) / 1.3)).toBeLessThan(0.0015);
    expect(Math.abs(share((x) => x < 1) - 0.3 / 1.3)).toBeLessThan(0.006);
  });

  test('mean and standard deviation as worked out', () => {
    const mean = list.reduce((sum, x) => sum + x, 0) / list.length;
    const standard = Math.sqrt(list.reduce((sum, x) => sum + (x - mean) ** 2, 0) / list.length);
    expect(Math.abs(mean - moments(input).mean)).toBeLessThan(0.006);
    expect(Math.abs(standard - moments(input).standard)).toBeLessThan(0.006);
  });

  test('held at its ends', () => {
    const held = drawer({ ...input, least: 0.9, most: 1.2 }, randomFrom(5));
    const drawn = Array.from({ length: 1000 }, held);
    expect(Math.min(...drawn)).toBe(0.9);
    expect(Math.max(...drawn)).toBe(1.2);
  });
});

describe('rigs', () => {
  const faulty = laundry as unknown as Rig;
  const clean: Rig = { ...faulty, faults: [] };
  const options = { draws: 300, seed: 4 };

  test('every coefficient, the fan and every wall is an input with its central value inside its limits', () => {
    const inputs = uncertainInputs(stock);
    const names = inputs.map((input) => input.name);
    for (const name of [...Object.keys(COEFFICIENTS), 'fan pressure', 'roughness of flexible'])
      expect(names).toContain(name);
    for (const { value, low, high } of inputs) expect(low <= value && value <= high).toBe(true);
  });

  test('flow and pressure have a band about the central answer; the same seed gives the same band', () => {
    const found = rigBands(faulty, stock, options);
    if ('outcome' in found) throw new Error(found.found);
    for (const one of [found.room_L_s, found.pressure_Pa]) {
      expect(one.monteCarlo.low).toBeLessThan(one.value);
      expect(one.monteCarlo.high).toBeGreaterThan(one.value);
      expect(one.monteCarlo.standard).toBeGreaterThan(0);
      expect(one.linear.standard).toBeGreaterThan(0);
    }
    expect(rigBands(faulty, stock, options)).toEqual(found);
    expect(rigBands(faulty, stock, { ...options, seed: 5 })).not.toEqual(found);
  });

  test('a rig that states every loss is uncertain in its fan alone', () => {
    const found = rigBands(baseCase as unknown as Rig, stock, options);
    if ('outcome' in found) throw new Error(found.found);
    const parts = found.room_L_s.sensitivities.filter(({ part }) => Math.abs(part) > 1e-9);
    expect(parts.map(({ name }) => name)).toEqual(['fan pressure']);
    // The outside run's part for its fan, 4 %: 0.9386 L/s.
    expect(Math.abs(parts[0]!.part - 0.9386)).toBeLessThan(0.01);
  });

  test('the same rig twice: nothing dropped, and that is certain', () => {
    const found = dropBands(faulty, faulty, stock, options);
    if ('outcome' in found) throw new Error(found.found);
    expect(found.drop_L_s.monteCarlo).toEqual({ central: 0, standard: 0, low: 0, high: 0 });
    expect(found.before_L_s.monteCarlo.standard).toBeGreaterThan(0.5);
  });

  test('a small fault: the drop is surer than the level it is dropped from', () => {
    const crimped: Rig = { ...clean, faults: [{ kind: 'crimp', at: 'fan', amount: 0.6 }] };
    const found = dropBands(clean, crimped, stock, options);
    if ('outcome' in found) throw new Error(found.found);
    expect(found.drop_L_s.value).toBeGreaterThan(0);
    expect(found.drop_L_s.monteCarlo.standard).toBeLessThan(0.5 * found.before_L_s.monteCarlo.standard);
    expect(found.dropShare.value).toBeCloseTo(found.drop_L_s.value / found.before_L_s.value, 12);
  });

  test('a rig that cannot be solved gives its Failure', () => {
    const nowhere: Rig = { ...clean, run: clean.run.filter((piece) => piece.kind !== 'fan') };
    expect(rigBands(nowhere, stock, options)).toMatchObject({ outcome: 'failed', code: 'no-fan' });
    expect(dropBands(clean, nowhere, stock, options)).toMatchObject({ outcome: 'failed', code: 'no-fan' });
  });
});
