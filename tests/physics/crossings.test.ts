/**
 * Fans whose curve dips and recovers, on leaky runs: every flow at which fan and run agree is found, though
 * only the stretches where the curve rises are searched closely. Held against both curves, cut densely.
 */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { fanCurveOf, systemCurve, type Rig } from '#physics';
import { leakyRigs, SEEDED, solved, stock } from './rigs.ts';

const CUTS = 800;

/** Flows through the fan, L/s, between which the sign of fan less run changes, up to one and a half times free delivery. */
function agreements(rig: Rig): [number, number][] {
  const free = freeDelivery(rig);
  const flows = Array.from({ length: CUTS + 1 }, (_, i) => (1.5 * free * i) / CUTS);
  const fan = fanCurveOf(rig, stock, flows)!;
  const run = systemCurve(rig, stock, flows)!;
  const over = flows.map((_, i) => fan[i]!.pressure_Pa > run[i]!.pressure_Pa);
  return flows
    .slice(1)
    .flatMap((flow, i): [number, number][] => (over[i] === over[i + 1] ? [] : [[flows[i]!, flow]]));
}

/** Where the fan's total pressure has come to nothing, L/s. */
function freeDelivery(rig: Rig): number {
  let flow = 1;
  while (fanCurveOf(rig, stock, [flow])![0]!.pressure_Pa > 0) flow *= 1.1;
  return flow;
}

const dipping = leakyRigs().filter(({ run }) =>
  run.some((piece) => piece.kind === 'fan' && typeof piece.fan !== 'string' && piece.fan.saddle === true),
);

/** Wind enough that the run passes through the middle of the rise, where it can cross the fan's curve three times. */
const throughTheRise = dipping.map((dips): Rig => {
  const rig: Rig = { ...dips, faults: [], outdoors: { wind_Pa: 0 } };
  const free = freeDelivery(rig);
  const fan = fanCurveOf(
    rig,
    stock,
    Array.from({ length: 200 }, (_, i) => (free * i) / 200),
  )!;
  const rising = fan.filter((point, i) => i > 0 && point.pressure_Pa > fan[i - 1]!.pressure_Pa);
  const middle = rising[rising.length >> 1];
  if (!middle) return rig;
  const asked = systemCurve(rig, stock, [middle.flow_L_s])![0]!.pressure_Pa;
  return { ...rig, outdoors: { wind_Pa: Math.max(-100, middle.pressure_Pa - asked) } };
});

describe('a dipping fan on a leaky run', () => {
  test('every crossing of the two curves is reported, and no other', () => {
    let leaking = 0;
    let several = 0;
    fc.assert(
      fc.property(throughTheRise, (rig) => {
        const { operatingPoints, leaks } = solved(rig);
        const found = operatingPoints.map((point) => point.flow_L_s).filter((flow) => flow >= 0);
        const dense = agreements(rig);
        expect(found.length).toBe(dense.length);
        dense.forEach(([from, to], i) => {
          expect(found[i]!).toBeGreaterThan(from - 1e-6);
          expect(found[i]!).toBeLessThan(to + 1e-6);
        });
        if (leaks.length > 0) leaking++;
        if (leaks.length > 0 && found.length > 1) several++;
      }),
      { ...SEEDED, numRuns: 120, endOnFailure: true },
    );
    expect(leaking).toBeGreaterThan(60);
    expect(several).toBeGreaterThan(3);
  }, 120_000);
});
