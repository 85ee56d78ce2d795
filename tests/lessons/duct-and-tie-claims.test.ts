/** What the words of "Choose the duct" and "Ties and straps" say of sizes without a number, against the engine. */
import { describe, expect, it } from 'vitest';
import { loadLesson } from '#lesson-load';
import { solve, type Duct, type Fault, type Rig } from '#physics';
import { lessonRigs, stock } from '#session';

function flowOf(rig: Rig, faults: readonly Fault[]): number {
  const solution = solve({ ...rig, faults }, stock);
  if (solution.outcome === 'failed') throw new Error(solution.code);
  return solution.flow_L_s.outdoors;
}

/** Loss coefficient that the faults add to a piece: what they cost over the velocity pressure there. */
function costOf(rig: Rig, at: string, cause: string, fault: Fault): number {
  const solution = solve({ ...rig, faults: [fault] }, stock);
  if (solution.outcome === 'failed') throw new Error(solution.code);
  const piece = solution.pieces.find(({ id }) => id === at)!;
  return piece.causes.find((each) => each.cause === cause)!.loss_Pa / piece.velocityPressure_Pa;
}

const swap = (rig: Rig, at: string, change: Partial<Duct>): Rig => ({
  ...rig,
  run: rig.run.map((piece) => (piece.id === at ? ({ ...piece, ...change } as Duct) : piece)),
});

describe('Choose the duct', () => {
  const { lesson } = loadLesson('choose-the-duct');
  const ensuite = lessonRigs(lesson).ensuite!;
  const sound = flowOf(ensuite, []);
  const slack = (amount: number): Fault => ({ kind: 'extra-length', at: 'tail', amount, manner: 'bunched' });

  it('half of the slack pulled out brings back a good part, but less than half', () => {
    const [all, half] = [flowOf(ensuite, [slack(0.1)]), flowOf(ensuite, [slack(0.05)])];
    const back = (half - all) / (sound - all);
    expect(back).toBeGreaterThan(0.3);
    expect(back).toBeLessThan(0.5);
  });

  it('a dent twice as deep costs many times as much', () => {
    const dent = (amount: number) =>
      costOf(ensuite, 'riser', 'dents', { kind: 'dented', at: 'riser', amount });
    expect(dent(0.8) / dent(0.4)).toBeGreaterThan(5);
  });

  it('a taut flexible riser stands about level with a semi-rigid one', () => {
    const taut = flowOf(swap(ensuite, 'riser', { material: 'flexible' }), []);
    expect(Math.abs(taut / sound - 1)).toBeLessThan(0.02);
    expect(taut).toBeGreaterThan(sound);
  });

  it('rigid pipe does more good along the long way than in the riser', () => {
    const long = flowOf(ensuite, [{ kind: 'flexible-swap', at: 'long', amount: 1 }]);
    expect(long).toBeLessThan(flowOf(ensuite, [{ kind: 'flexible-swap', at: 'riser', amount: 1 }]));
  });
});

describe('Ties and straps', () => {
  const { lesson } = loadLesson('ties-and-straps');
  const attic = lessonRigs(lesson)['attic-bathroom']!;
  const tied = (at: string, amount: number): Fault => ({ kind: 'tight-ties', at, amount });
  const one = (amount: number) => costOf(attic, 'near', 'ties', tied('near', amount));

  it('the shorter second pull costs more than the first', () => {
    const [none, first, second] = [[], [tied('far', 0.4)], [tied('far', 0.6)]].map((faults) =>
      flowOf(attic, faults),
    ) as [number, number, number];
    expect(first - second).toBeGreaterThan(none - first);
  });

  it('eight tenths of the width cost several times what nine tenths cost', () => {
    expect(one(0.4) / one(0.2)).toBeGreaterThan(3);
  });

  it('one tie at half the width outweighs nine at nine tenths and four at eight tenths', () => {
    expect(one(1)).toBeGreaterThan(9 * one(0.2));
    expect(one(1)).toBeGreaterThan(4 * one(0.4));
    expect(one(1) / one(0.2)).toBeGreaterThan(10);
  });

  it('the same tie costs the same before the fan and behind it', () => {
    const near = attic.run.find(({ id }) => id === 'near')!;
    const before = { ...near, id: 'before' };
    const rig = {
      ...attic,
      run: attic.run.flatMap((piece) => (piece.kind === 'fan' ? [before, piece] : [piece])),
    };
    const sides = [flowOf(rig, [tied('before', 0.6)]), flowOf(rig, [tied('near', 0.6)])];
    expect(sides[0]).toBeCloseTo(sides[1]!, 6);
  });
});
