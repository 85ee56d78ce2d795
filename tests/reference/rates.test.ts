/** Required rates and how a reading is judged by them. */
import { expect, test } from 'vitest';
import { rateOf, rates, readRates, rule, seedRig, seedRigIds } from '#catalogue';
import { judge } from '#physics';
import messages from '../../src/i18n/messages/en.json' with { type: 'json' };

test('each rate says where it is from, once', () => {
  expect(new Set(rates.map(({ id }) => id)).size).toBe(rates.length);
  for (const rate of rates) {
    for (const key of ['document', 'edition', 'clause', 'room', 'source'] as const)
      expect(rate[key], rate.id).not.toBe('');
    expect(rate.intermittent_L_s ?? rate.continuous_L_s, rate.id).toBeGreaterThan(0);
  }
});

test.each([
  ['au-2022-bathroom', 'intermittent', 25],
  ['uk-bathroom', 'intermittent', 15],
  ['uk-hood', 'continuous', 13],
  ['nz-4303-kitchen', 'continuous', 12],
  ['us-irc-bathroom', 'continuous', 9.4],
] as const)('%s, %s: %s L/s', (id, running, flow) => {
  expect(rule(id, running)!.required_L_s).toBe(flow);
});

const published = { required_L_s: 25, mark: 'published' } as const;

test.each([
  [27, 1.35, 'pass'],
  [26, 1.3, 'marginal'],
  [25, 0, 'pass'],
  [24, 1.2, 'marginal'],
  [23, 1.15, 'fail'],
] as const)('%s give or take %s is a %s of 25', (flow, error, verdict) => {
  expect(judge(flow, error, published).verdict).toBe(verdict);
});

test('a rate from memory, or none, judges nothing at any flow', () => {
  const all = rates.flatMap(({ id, intermittentMark, continuousMark }) => [
    { id, running: 'intermittent' as const, mark: intermittentMark },
    { id, running: 'continuous' as const, mark: continuousMark },
  ]);
  const remembered = all.filter(({ mark }) => mark === 'memory');
  expect(new Set(remembered.map(({ running }) => running)).size).toBe(2);
  for (const { id, running } of remembered)
    for (const flow of [0, 1000])
      expect(judge(flow, 1, rule(id, running)!).verdict, `${id}, ${running}`).toBe('not judged');
  const named = remembered.find(({ id, running }) => rule(id, running)!.required_L_s !== null)!;
  expect(judge(30, 1, rule(named.id, named.running)!).reason).toBe('verdict.unchecked-rate');
  expect(judge(30, 1, rule('au-2022-bathroom', 'continuous')!).reason).toBe('verdict.no-rate');
  expect(judge(NaN, 1, published).reason).toBe('verdict.no-reading');
});

test('the file reads, and one that is spoilt is told of by path', () => {
  expect(readRates(rates)).toMatchObject({ ok: true });
  const spoilt = rates.map((rate, i) => (i === 3 ? { ...rate, intermittentMark: 'hearsay' } : rate));
  const read = readRates(spoilt);
  expect(read.ok ? [] : read.problems).toEqual([
    expect.stringContaining('rates.json: 3.intermittentMark: found "hearsay"; allowed: '),
  ]);
  expect(readRates([{ ...rates[0], flow: 3 }]).ok).toBe(false);
});

test('a requirement that names a rate has its figure, and the rate has been checked', () => {
  const named = seedRigIds.map(seedRig).flatMap(({ required }) => (required?.rate ? [required] : []));
  expect(named.length).toBeGreaterThan(0);
  for (const required of named) {
    expect(rateOf(required)?.id).toBe(required.rate);
    expect(rateOf(required)!.intermittentMark).not.toBe('memory');
  }
  expect(rateOf({ ...named[0]!, flow_L_s: 99 })).toBeNull();
});

test('each verdict carries the local code, and its words exist', () => {
  for (const flow of [10, 25, 40, NaN]) {
    const { caution, reason } = judge(flow, 1, published);
    expect(caution).toBe('verdict.local-code');
    expect(messages).toHaveProperty([caution]);
    expect(messages).toHaveProperty([reason]);
  }
});
