/** What a rig may leave out or hold without being refused. */
import { describe, expect, it } from 'vitest';
import { readRig, tell } from '#catalogue';
import { changed, type Loose } from './changed.ts';

describe('a good rig', () => {
  it('comes back equal, and as a copy', () => {
    const rig = changed(() => {});
    const read = readRig(rig, 'f.json');
    if (!read.ok) throw new Error(read.problems.map(tell).join('\n'));
    expect(read.rig).toEqual(rig);
    expect(read.rig).not.toBe(rig);
  });

  it.each<[string, (rig: Loose) => unknown]>([
    [
      'no air, room, required or faults',
      (r) => ['air', 'room', 'required', 'faults'].forEach((key) => delete r[key]),
    ],
    ['a duct first', (r) => r.run.shift()],
    ['no replacement air at all', (r) => (r.room.makeUpFreeArea_mm2 = 0)],
    ['a smooth wall', (r) => (r.run[1].roughness_mm = 0)],
    [
      'a change of bore across a fitting',
      (r) =>
        r.run.splice(
          3,
          1,
          { id: 'step', kind: 'fitting', diameter_mm: 100, lossCoefficient: 0.3 },
          { ...r.run[3], diameter_mm: 125 },
          { id: 'back', kind: 'fitting', diameter_mm: 100, lossCoefficient: 0.3 },
        ),
    ],
    [
      'a fault of every kind',
      (r) =>
        (r.faults = [
          { kind: 'sag', at: 'out', amount: 1, span_m: 2.4 },
          { kind: 'crimp', at: 'fan', amount: 0 },
          { kind: 'flexible-swap', at: 'inlet', amount: 1 },
          { kind: 'tight-ties', at: 'out', amount: 0.5 },
          { kind: 'tight-ties', at: 'inlet', amount: 0.5 },
          { kind: 'extra-length', at: 'out', amount: 0.5, manner: 'draped' },
        ]),
    ],
  ])('may have %s', (_, change) => {
    const read = readRig(changed(change), 'f.json');
    expect(read.ok ? [] : read.problems.map(tell)).toEqual([]);
  });
});
