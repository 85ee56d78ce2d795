/**
 * The engine against a general pipe network solver (EPANET 2.3.5 through epanet-js), which knows nothing
 * of it: 240 seeded random rigs, healthy, faulted and leaking, to 1e-3 of each flow. Rigs with a stall dip
 * are left out because the solver refuses a rising pump curve.
 */
import { beforeAll, describe, expect, test } from 'vitest';
import { solve, type Rig } from '#physics';
import { networkSolver, type Flows, type NetworkSolver } from './support-epanet.ts';
import { cases, type Case } from './support-epanet-rigs.ts';
import { runOf } from './support-epanet-runs.ts';
import { stock } from './support.ts';
import baseCase from '../../seeds/rigs/base-case.json' with { type: 'json' };

const TOLERANCE = 1e-3;
const EACH = 80;

let network: NetworkSolver;
beforeAll(async () => {
  network = await networkSolver();
});

const SIDES = ['room', 'fan', 'outdoors'] as const;
const apart = (ours: Flows, theirs: Flows) =>
  Math.max(...SIDES.map((side) => Math.abs(ours[side] / theirs[side] - 1)));

describe('the mapping gives the values this solver was found to give', () => {
  const base = baseCase as unknown as Rig;
  const asItStands = (rig: Rig) => network(runOf(rig, { corrected: false }));
  const close = (flows: Flows, expected: readonly number[]) =>
    SIDES.forEach((side, i) => expect(Math.abs(flows[side] / expected[i]! - 1), side).toBeLessThan(1.5e-4));

  test('base case: 89.3821 L/s', () => close(asItStands(base), [89.3821, 89.3821, 89.3821]));

  test('leaks of 0.6 before and 0.4 behind the fan, static pressure: 84.7039, 93.1683, 86.3144', () => {
    const stub = (id: string, coefficient_L_s: number) => ({
      id,
      kind: 'duct' as const,
      material: 'rigid',
      diameter_mm: 150,
      path_m: 1e-4,
      jointLeak: { coefficient_L_s, exponent: 0.65 },
    });
    const at = base.run.findIndex((piece) => piece.kind === 'fan');
    const run = base.run.toSpliced(at + 1, 0, stub('behind', 0.4)).toSpliced(at, 0, stub('before', 0.6));
    close(asItStands({ ...base, run }), [84.7039, 93.1683, 86.3144]);
  });

  test('a 5 mm gap before and behind the fan, as an orifice', () => {
    const at = base.run.findIndex((piece) => piece.kind === 'fan');
    const gap = (place: number) => {
      const run = base.run.toSpliced(place, 0, {
        id: 'stub',
        kind: 'duct',
        material: 'rigid',
        diameter_mm: 150,
        path_m: 1e-4,
        condition: { joint: { gap_mm: 5 } },
      });
      return { ...base, run };
    };
    close(asItStands(gap(at)), [78.5079, 91.468, 91.468]);
    close(asItStands(gap(at + 1)), [94.2713, 94.2713, 79.6165]);
  });
});

describe.each([
  ['healthy', 20260301],
  ['faulted', 20260302],
  ['leaking', 20260303],
] as const)('%s rigs', (sort, seed) => {
  const found = cases(seed, sort, EACH);
  let results: { readonly one: Case; readonly theirs: Flows }[];
  beforeAll(() => {
    results = found.cases.map((one) => ({ one, theirs: network(runOf(one.rig)) }));
  }, 60_000);

  test(`all ${EACH} agree in room, fan and outdoors flow within ${TOLERANCE}`, () => {
    expect(results).toHaveLength(EACH);
    const worst = results
      .map(({ one, theirs }) => ({ off: apart(one.solution.flow_L_s, theirs), one, theirs }))
      .sort((a, b) => b.off - a.off)[0]!;
    expect(worst.off, JSON.stringify({ theirs: worst.theirs, rig: worst.one.rig })).toBeLessThan(TOLERANCE);
  });

  test('with the friction formula of the solver left as it stands, within 1 % still', () => {
    for (const { one } of results.slice(0, 20)) {
      expect(apart(one.solution.flow_L_s, network(runOf(one.rig, { corrected: false })))).toBeLessThan(0.01);
    }
  });

  test('and are worth comparing', () => {
    const faults = new Set(results.flatMap(({ one }) => (one.rig.faults ?? []).map((fault) => fault.kind)));
    if (sort === 'healthy') expect(faults.size).toBe(0);
    else
      for (const kind of ['sag', 'crimp', 'flexible-swap', 'tight-ties', 'extra-length'])
        expect(faults).toContain(kind);
    const lost = results.map(({ one: { solution } }) => 1 - solution.flow_L_s.room / solution.flow_L_s.fan);
    if (sort === 'leaking') expect(lost.filter((share) => share > 0.01).length).toBeGreaterThan(EACH / 3);
    else for (const share of lost) expect(Math.abs(share)).toBeLessThan(1e-9);
  });

  test('a loss of a tenth of a velocity pressure more would be noticed', () => {
    const noticed = results.slice(0, 10).filter(({ one, theirs }) => {
      const at = one.rig.run.findIndex((piece) => piece.kind === 'fan');
      const bore = one.rig.run[0]!.diameter_mm!;
      const extra = { id: 'extra', kind: 'fitting', diameter_mm: bore, lossCoefficient: 0.1 } as const;
      const changed = solve({ ...one.rig, run: one.rig.run.toSpliced(at, 0, extra) }, stock);
      return changed.outcome === 'solved' && apart(changed.flow_L_s, theirs) > TOLERANCE;
    });
    expect(noticed.length).toBeGreaterThan(1);
  });
});
