/** Changes of noise against printed decibels, and the two mechanisms told apart on a solved run. */
import { describe, expect, test } from 'vitest';
import { fanNoise, grilleNoise, NOISE, noiseChange, type Rig } from '#physics';
import baseCase from '../../seeds/rigs/base-case.json' with { type: 'json' };
import { solved } from './rigs.ts';

const rig = baseCase as unknown as Rig;

describe('fan, 50 log10 of the speed ratio', () => {
  test.each([
    [0.5, -15.05, -16.56],
    [0.8, -4.85, -5.33],
    [0.9, -2.29, -2.52],
    [1.1, 2.07, 2.28],
    [1.25, 4.85, 5.33],
  ])('speed ratio %d: %d dB', (ratio, fifty, fiftyFive) => {
    const found = fanNoise(ratio)!;
    expect(Math.abs(found.change_dB - fifty)).toBeLessThan(0.0051);
    // 55 log10 lies within the range.
    expect(found.low_dB <= fiftyFive && fiftyFive <= found.high_dB).toBe(true);
  });
  test('size 70 log10, density 20 log10, all added', () => {
    expect(fanNoise(1, 10)!.change_dB).toBeCloseTo(70, 12);
    expect(fanNoise(1, 1, 10)!.change_dB).toBeCloseTo(20, 12);
    expect(fanNoise(0.5, 2, 0.9)!.change_dB).toBeCloseTo(-15.0515 + 21.0721 - 0.9151, 3);
  });
  test('no speed, no law', () =>
    expect([fanNoise(0), fanNoise(-1), fanNoise(NaN)]).toEqual([null, null, null]));
});

describe('grille, 60 log10 of the flow ratio', () => {
  test.each([
    [0.5, -18.06],
    [0.7, -9.29],
    [0.78, -6.47],
    [0.9, -2.75],
  ])('flow ratio %d: %d dB', (ratio, printed) => {
    expect(Math.abs(grilleNoise(ratio)!.change_dB - printed)).toBeLessThan(0.0051);
  });
  // The printed formula at 5 and 3 m/s in one bore: 24.41 and 11.10 dB.
  test('3 m/s after 5 m/s: -13.31 dB', () => {
    expect(Math.abs(grilleNoise(3 / 5)!.change_dB - (11.1 - 24.41))).toBeLessThan(0.011);
  });
  test('range lies about the value either way', () => {
    for (const ratio of [0.6, 1.4]) {
      const { low_dB, change_dB, high_dB } = grilleNoise(ratio)!;
      expect(low_dB <= change_dB && change_dB <= high_dB && low_dB < high_dB).toBe(true);
    }
  });
  test('no air, nothing to compare', () => expect([grilleNoise(0), grilleNoise(-1)]).toEqual([null, null]));
});

describe('on a run', () => {
  const clean = solved(rig);
  const choked = solved({ ...rig, faults: [{ kind: 'crimp', at: 'fan', amount: 1 }] });
  // Outside figures: 46.6 of 89.4 L/s, -17 dB at the grille (45.76 with the fan's own trouble counted: -17.5).
  test('choked: the grille is 17 dB quieter while the fan works harder at its speed', () => {
    const found = noiseChange(clean, choked);
    expect(found.grille!.change_dB).toBeLessThan(-17);
    expect(found.grille!.change_dB).toBeGreaterThan(-18);
    expect(found.fan!.change_dB).toBe(0);
    expect(found.note).toBe('fan-works-harder');
    expect(found.pressureRatio).toBeGreaterThan(1.5);
  });
  test('slowed: both quieter, and no note', () => {
    const slow = solved({ ...rig, run: rig.run.map((p) => (p.kind === 'fan' ? { ...p, speed: 0.8 } : p)) });
    const found = noiseChange(clean, slow);
    expect(found.fan!.change_dB).toBeCloseTo(-4.8455, 3);
    expect(found.grille!.change_dB).toBeCloseTo(60 * Math.log10(0.79974), 3);
    expect(found.note).toBeNull();
  });
  test('nothing changed: nothing changes', () => {
    expect(noiseChange(clean, clean)).toMatchObject({
      fan: { change_dB: 0 },
      grille: { change_dB: 0 },
      note: null,
    });
  });
  test('each number has a range, a source and a mark', () => {
    for (const { value, low, high, source } of Object.values(NOISE)) {
      expect(low <= value && value <= high).toBe(true);
      expect(source.length).toBeGreaterThan(10);
    }
  });
});
