/** Fair shares against the mean over every order, a published game, and what the division must obey. */
import { describe, expect, test } from 'vitest';
import fc from 'fast-check';
import {
  fairShares,
  putRight,
  rigBands,
  shapley,
  solve,
  type Fault,
  type FairShares,
  type Rig,
} from '#physics';
import { five, orders, ten } from './orders.ts';
import { flowOf, rigs, SEEDED, stock } from './rigs.ts';

function shared(rig: Rig): FairShares {
  const found = fairShares(rig, stock);
  if (found.outcome !== 'solved') throw new Error(JSON.stringify(found));
  return found;
}

const total = ({ shares }: FairShares) => shares.reduce((sum, { share_L_s }) => sum + share_L_s, 0);

/** Each fault's loss averaged over every order of putting them in, each rig solved anew. */
function byOrders(rig: Rig): number[] {
  const faults = rig.faults!;
  const known = new Map<string, number>();
  const flow = (present: readonly number[]) => {
    const key = [...present].sort().join();
    if (!known.has(key)) known.set(key, flowOf({ ...rig, faults: present.map((i) => faults[i]!) }));
    return known.get(key)!;
  };
  const sums = faults.map(() => 0);
  const all = orders(faults.length);
  for (const order of all)
    order.forEach((fault, place) => {
      sums[fault]! += flow(order.slice(0, place)) - flow(order.slice(0, place + 1));
    });
  return sums.map((sum) => sum / all.length);
}

describe('shapley', () => {
  // Two left gloves and one right: the right-hand owner gets 2/3, each other 1/6 (a textbook game, from memory).
  test('the glove game: 1/6, 1/6, 2/3', () => {
    const worth = Array.from({ length: 8 }, (_, s) => (s & 4 && s & 3 ? 1 : 0));
    [1 / 6, 1 / 6, 2 / 3].forEach((value, i) => expect(shapley(3, worth)[i]).toBeCloseTo(value, 12));
  });

  test('worths that add: each gets its own', () => {
    const own = [3, 0, -2, 7];
    const worth = Array.from({ length: 16 }, (_, s) =>
      own.reduce((sum, x, i) => sum + (s & (1 << i) ? x : 0), 0),
    );
    shapley(4, worth).forEach((value, i) => expect(value).toBeCloseTo(own[i]!, 12));
    expect(shapley(0, [0])).toEqual([]);
    expect(shapley(1, [0, 5])).toEqual([5]);
  });
});

describe('fair shares', () => {
  test('five faults: the mean over all 120 orders', () => {
    expect(orders(5)).toHaveLength(120);
    const found = shared(five);
    byOrders(five).forEach((value, i) => expect(found.shares[i]!.share_L_s).toBeCloseTo(value, 9));
  });

  test.each([
    ['five', five],
    ['ten', ten],
  ])('%s faults: shares add up to the loss', (_name, rig) => {
    const found = shared(rig);
    expect(found.loss_L_s).toBeGreaterThan(10);
    expect(Math.abs(total(found) - found.loss_L_s)).toBeLessThan(1e-10);
    // A subset starts from a guess and a solve does not: they may end some roundings apart.
    expect(found.clean_L_s).toBeCloseTo(flowOf({ ...rig, faults: [] }), 10);
    expect(found.faulty_L_s).toBeCloseTo(flowOf(rig), 10);
  });

  test('alone and last are one solve each', () => {
    const found = shared(five);
    five.faults!.forEach((fault, i) => {
      const { alone_L_s, last_L_s } = found.shares[i]!;
      expect(alone_L_s).toBeCloseTo(found.clean_L_s - flowOf({ ...five, faults: [fault] }), 12);
      const others = five.faults!.filter((other) => other !== fault);
      expect(last_L_s).toBeCloseTo(flowOf({ ...five, faults: others }) - found.faulty_L_s, 12);
    });
  });

  test('the same fault on two like pieces: equal shares', () => {
    const out = five.run.find((piece) => piece.id === 'out')!;
    const twin: Rig = { ...five, run: [...five.run.slice(0, -1), { ...out, id: 'twin' }, five.run.at(-1)!] };
    const faults: Fault[] = [
      { kind: 'sag', at: 'out', amount: 0.7 },
      { kind: 'crimp', at: 'fan', amount: 0.8 },
      { kind: 'sag', at: 'twin', amount: 0.7 },
    ];
    const found = shared({ ...twin, faults });
    expect(found.shares[0]!.share_L_s).toBeGreaterThan(0);
    expect(found.shares[2]!.share_L_s).toBeCloseTo(found.shares[0]!.share_L_s, 9);
  });

  test('a fault of amount 0 is charged nothing; one fault alone is charged all of it', () => {
    const nothing: Fault = { kind: 'crimp', at: 'fan', amount: 0 };
    const found = shared({
      ...five,
      faults: [...five.faults!.filter(({ kind }) => kind !== 'crimp'), nothing],
    });
    expect(Math.abs(found.shares.at(-1)!.share_L_s)).toBeLessThan(1e-12);
    const one = shared({ ...five, faults: [five.faults![1]!] });
    expect(one.shares[0]!.share_L_s).toBeCloseTo(one.loss_L_s, 12);
    expect(shared({ ...five, faults: [] })).toMatchObject({ loss_L_s: 0, shares: [] });
  });

  test('too many faults are refused; a fault in a wrong place gives the Failure of solving it', () => {
    const many: Rig = { ...five, faults: Array.from({ length: 13 }, () => five.faults![0]!) };
    expect(fairShares(many, stock)).toEqual({
      outcome: 'refused',
      code: 'too-many-faults',
      found: 13,
      allowed: [0, 12],
      unit: 'faults',
    });
    const wrong: Rig = { ...five, faults: [...five.faults!, { kind: 'crimp', at: 'out', amount: 1 }] };
    expect(fairShares(wrong, stock)).toEqual(solve(wrong, stock));
    expect(solve(wrong, stock).outcome).toBe('failed');
  });

  test('a joint open on the discharge side: charged with air outdoors, credited with air from the room', () => {
    const leaking: Rig = {
      ...five,
      faults: [...five.faults!, { kind: 'joint-open', at: 'straight', amount: 0.5 }],
    };
    const found = shared(leaking);
    expect(Math.abs(total(found) - found.loss_L_s)).toBeLessThan(1e-9);
    expect(found.shares.at(-1)!.share_L_s).toBeGreaterThan(1);
    const room = fairShares(leaking, stock, { flow: 'room' });
    if (room.outcome !== 'solved') throw new Error(room.code);
    expect(room.shares.at(-1)!.share_L_s).toBeLessThan(0);
    expect(Math.abs(total(room) - room.loss_L_s)).toBeLessThan(1e-9);
  });
});

describe('any rig', () => {
  const few = (rig: Rig): Rig => ({ ...rig, faults: rig.faults!.slice(0, 4) });
  test('shares add up to the loss, or the rig has no answer', () => {
    let answered = 0;
    fc.assert(
      fc.property(rigs(), (rig) => {
        const found = fairShares(few(rig), stock);
        if (found.outcome === 'failed') return expect(found.code).toBe('no-crossing');
        if (found.outcome === 'refused') throw new Error(found.code);
        answered++;
        const scale = Math.max(1, Math.abs(found.clean_L_s));
        expect(Math.abs(total(found) - found.loss_L_s) / scale).toBeLessThan(1e-9);
      }),
      { ...SEEDED, numRuns: 60 },
    );
    expect(answered).toBeGreaterThan(30);
  });

  test('the list ends clean, and its steps add up to all that can be won', () => {
    fc.assert(
      fc.property(rigs(), (rig) => {
        const found = putRight(few(rig), stock);
        if (found.outcome !== 'solved') return;
        const won = found.repairs.reduce((sum, { gain_L_s }) => sum + gain_L_s, 0);
        const scale = Math.max(1, Math.abs(found.after_L_s));
        expect(Math.abs(won - (found.after_L_s - found.before_L_s)) / scale).toBeLessThan(1e-9);
      }),
      { ...SEEDED, numRuns: 60 },
    );
  });

  test('every number of its band is one, low to high', () => {
    fc.assert(
      fc.property(rigs(), (rig) => {
        const found = rigBands(rig, stock, { draws: 25 });
        if ('outcome' in found) return;
        for (const { value, monteCarlo, linear, sensitivities } of Object.values(found)) {
          const numbers = [value, ...Object.values(monteCarlo), ...Object.values(linear)];
          expect([...numbers, ...sensitivities.map(({ part }) => part)].every(Number.isFinite)).toBe(true);
          expect(monteCarlo.low <= monteCarlo.central && monteCarlo.central <= monteCarlo.high).toBe(true);
        }
      }),
      { ...SEEDED, numRuns: 30 },
    );
  });
});
