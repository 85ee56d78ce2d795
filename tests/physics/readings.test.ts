/** Known coefficients are found again from made-up readings; a secret fault is found among those that could explain it. */
import { describe, expect, test } from 'vitest';
import { CENTRAL, COEFFICIENTS, explain, fromReadings, randomFrom, type Fault, type Rig } from '#physics';
import { solve } from '#physics';
import upstairs from '../../seeds/rigs/upstairs-bathroom.json' with { type: 'json' };
import { stock } from './rigs.ts';

const rig = { ...(upstairs as unknown as Rig), faults: [] };
const ducts = rig.run.filter((piece) => piece.kind === 'duct');
const duct = ducts.find(({ material }) => stock.materials[material]?.behaviour === 'flexible') ?? ducts[0]!;
const LISTS: readonly (readonly Fault[])[] = [
  [],
  [{ kind: 'sag', at: duct.id, amount: 0.6 }],
  [{ kind: 'sag', at: duct.id, amount: 1 }],
  [{ kind: 'extra-length', at: duct.id, amount: 0.5 }],
  [{ kind: 'extra-length', at: duct.id, amount: 1 }],
];

function flow(faults: readonly Fault[], coefficients = CENTRAL) {
  const solution = solve({ ...rig, faults }, stock, coefficients);
  if (solution.outcome === 'failed') throw new Error(solution.found);
  return solution;
}

const truth = { ...CENTRAL, compression: 1.5, sagTurning: 1.5, wallCowl: 3 };

describe('fitting coefficients', () => {
  const readings = (standard_L_s: number, seed: number | null, coefficients = truth) => {
    const random = seed === null ? null : randomFrom(seed);
    return LISTS.map((faults) => ({
      faults,
      flow_L_s: flow(faults, coefficients).flow_L_s.room + (random?.normal() ?? 0) * standard_L_s,
      standard_L_s,
    }));
  };

  test('readings of the central values leave them where they are', () => {
    const fit = fromReadings(rig, stock, readings(0.1, null, CENTRAL))!;
    for (const { value, prior } of fit.fitted) expect(value).toBeCloseTo(prior, 6);
    expect(fit.unexplained).toBe(false);
  });

  test('sharp readings of other values: flows come back, values within two and a half errors', () => {
    const fit = fromReadings(rig, stock, readings(0.05, null))!;
    expect(fit.settled).toBe(true);
    expect(fit.unexplained_L_s).toBeLessThan(0.05);
    for (const { name, value, standard } of fit.fitted)
      expect(Math.abs(value - truth[name]) / standard, name).toBeLessThan(2.5);
  });

  test('noisy readings: errors cover the truth about as often as they say', () => {
    let inside = 0;
    let all = 0;
    for (let seed = 1; seed <= 12; seed++)
      for (const { name, value, standard } of fromReadings(rig, stock, readings(0.5, seed))!.fitted) {
        all++;
        if (Math.abs(value - truth[name]) <= 2 * standard) inside++;
      }
    expect(inside / all).toBeGreaterThan(0.85);
  }, 60_000);

  test('what no published value explains is said to remain, and no bound is passed', () => {
    const fit = fromReadings(rig, stock, [{ faults: [], flow_L_s: 10, standard_L_s: 0.5 }])!;
    expect(fit.unexplained).toBe(true);
    for (const { name, value } of fit.fitted) {
      expect(value).toBeGreaterThanOrEqual(COEFFICIENTS[name].low * (1 - 1e-9));
      expect(value).toBeLessThanOrEqual(COEFFICIENTS[name].high * (1 + 1e-9));
    }
  });

  test('no readings, or one without an error, is no fit', () => {
    expect(fromReadings(rig, stock, [])).toBeNull();
    expect(fromReadings(rig, stock, [{ faults: [], flow_L_s: 50, standard_L_s: 0 }])).toBeNull();
  });
});

describe('explaining a bad reading', () => {
  test.each(['sag', 'extra-length'] as const)('a secret %s, by flow and pressures, comes first', (kind) => {
    const secret = flow([{ kind, at: duct.id, amount: 0.73 }]);
    const found = explain(rig, stock, {
      flow_L_s: secret.flow_L_s.room,
      standard_L_s: 0.5,
      pressures: secret.stations
        .filter(({ after }) => rig.run.some(({ id }) => id === after))
        .map(({ after, staticPressure_Pa }) => ({ after, static_Pa: staticPressure_Pa, standard_Pa: 0.1 })),
    });
    expect(found[0]!.explains).toBe(true);
    const same = found.find(({ faults }) => faults[0]!.kind === kind && faults[0]!.at === duct.id)!;
    expect(same.faults[0]!.amount).toBeCloseTo(0.73, 3);
    // Another fault on the same duct may cost exactly as much: none fits better.
    expect(Math.abs(same.standardised)).toBeLessThanOrEqual(Math.abs(found[0]!.standardised) + 0.005);
  });

  test('by flow alone the secret is among those that explain it, and others cannot be told from it', () => {
    const secret = flow([{ kind: 'sag', at: duct.id, amount: 0.73 }]).flow_L_s.room;
    const able = explain(rig, stock, { flow_L_s: secret, standard_L_s: 0.5 }).filter((e) => e.explains);
    expect(able.some(({ faults }) => faults[0]!.kind === 'sag')).toBe(true);
    expect(able.length).toBeGreaterThan(1);
  });

  test('pairs are asked for and reach what singles may not', () => {
    const singles = explain(rig, stock, { flow_L_s: 40, standard_L_s: 0.5 });
    const both = explain(rig, stock, { flow_L_s: 40, standard_L_s: 0.5 }, CENTRAL, true);
    expect(singles.every(({ faults }) => faults.length === 1)).toBe(true);
    expect(both.some(({ faults }) => faults.length === 2)).toBe(true);
  }, 60_000);
});
