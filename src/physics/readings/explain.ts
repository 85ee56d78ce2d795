/**
 * Given bad readings: which faults could explain them, one or two at a time, ranked by how probable each is
 * afterwards; which of the leaders cannot be told apart; and what to read next to tell them apart.
 */
import { CENTRAL, type Coefficients } from '../central.ts';
import { evidence, LEAST_AMOUNT, logPrior, logSum, type Weighed } from './evidence.ts';
import { FAULTS } from '../faults/index.ts';
import { METER_COEFFICIENTS } from '../instruments/coefficients.ts';
import { probed, type Observation, type Probe } from './probes.ts';
import { solve } from '../solve.ts';
import type { Fault, FaultKind, Rig, Solution, Stock } from '../types.ts';

/** A candidate still explains the readings when none is off by more than this many standard errors (model assumption). */
export const EXPLAINED = 2;
/**
 * Candidates less than this many times less probable than the leader are not told from it: "not worth more
 * than a bare mention" (Kass and Raftery 1995, from memory).
 */
export const TOLD_APART = 3;

export interface Candidate {
  /** One fault or two, at their most probable amounts; empty: nothing is wrong. */
  readonly faults: readonly Fault[];
  /** Chance, 0 to 1, among all candidates worked out: every single fault, and the pairs in `fullPairs`. */
  readonly weight: number;
  /** Computed less read at those amounts, in standard errors, in the order of the observations. */
  readonly off: readonly number[];
  /** The run with those faults in it. */
  readonly solution: Solution;
  readonly explains: boolean;
}

export interface Ranking {
  /** Most probable first. */
  readonly candidates: readonly Candidate[];
  /** How many leaders these readings cannot tell apart; 1 when the first stands alone. */
  readonly tied: number;
  /** Whether any candidate explains all readings. */
  readonly explained: boolean;
}

export interface ExplainOptions {
  readonly coefficients?: Coefficients;
  /** Whether two faults at once are weighed as well; true when absent. */
  readonly pairs?: boolean;
  /** How many pairs are worked out in full, the likeliest by a rough sum; 40 when absent. */
  readonly fullPairs?: number;
}

type Place = Omit<Fault, 'amount'>;

/** Amounts first tried of a fault, and of the first of two. */
const AMOUNTS = [LEAST_AMOUNT, 0.15, 0.3, 0.45, 0.6, 0.75, 0.9, 1];
const OUTER = [LEAST_AMOUNT, 0.25, 0.5, 0.75, 1];
const CUTS = { single: 24, outer: 6, inner: 5 };

/**
 * Ranks what could explain the observations of a rig (its own fault list counts as known). Bayes' rule on
 * the engine: errors normal and independent; each fault that fits somewhere is as likely as any other, and
 * small amounts are likelier (`faultsExpected`, `faultAmount` in METER_COEFFICIENTS: model assumptions).
 * The two amounts of a pair move separately. Null when an observation has no standard error above 0 or no
 * such place, or the rig without new faults has no answer.
 */
export function explain(
  rig: Rig,
  stock: Stock,
  observations: readonly Observation[],
  { coefficients = CENTRAL, pairs = true, fullPairs = 40 }: ExplainOptions = {},
): Ranking | null {
  if (observations.some(({ standard, value }) => !(standard > 0) || !Number.isFinite(value))) return null;
  const offOf = (solution: Solution) => {
    const off = observations.map(({ probe, value, standard }) => {
      const there = probed(solution, probe);
      return there === null ? NaN : (there - value) / standard;
    });
    return off.some(Number.isNaN) ? null : off;
  };
  const mean = METER_COEFFICIENTS.faultAmount.value;
  const weigh = (faults: readonly Fault[]): Weighed<Omit<Candidate, 'weight'>> | null => {
    const solution = solve({ ...rig, faults: [...(rig.faults ?? []), ...faults] }, stock, coefficients);
    const off = solution.outcome === 'solved' ? offOf(solution) : null;
    if (!off || solution.outcome === 'failed') return null;
    const prior = faults.reduce((sum, { amount }) => sum + logPrior(amount, mean), 0);
    const log = prior - off.reduce((sum, x) => sum + x * x, 0) / 2;
    const explains = off.every((x) => Math.abs(x) <= EXPLAINED);
    return { log, off, extra: { faults, off, solution, explains } };
  };

  const healthy = weigh([]);
  if (!healthy) return null;
  const singles = placesOf(rig, stock);
  const found = [{ log: healthy.log, candidate: healthy.extra }];
  const each = Math.log(METER_COEFFICIENTS.faultsExpected.value / Math.max(1, singles.length));
  for (const place of singles) {
    const one = evidence((amount) => weigh([{ ...place, amount }]), AMOUNTS, CUTS.single);
    if (one) found.push({ log: one.log + each, candidate: one.best.extra });
  }
  if (pairs) {
    for (const [a, b] of likeliestPairs(singles, healthy.off, weigh).slice(0, fullPairs)) {
      const both = evidence(
        (first) => {
          const second = evidence(
            (amount) =>
              weigh([
                { ...a, amount: first },
                { ...b, amount },
              ]),
            OUTER,
            CUTS.inner,
          );
          return second && { log: second.log, off: second.best.off, extra: second.best.extra };
        },
        OUTER,
        CUTS.outer,
      );
      if (both) found.push({ log: both.log + 2 * each, candidate: both.best.extra });
    }
  }
  const total = logSum(found.map(({ log }) => log));
  const candidates = found
    .map(({ log, candidate }) => ({ ...candidate, weight: Math.exp(log - total) }))
    .sort((a, b) => b.weight - a.weight);
  const leader = candidates[0]!.weight;
  return {
    candidates,
    tied: candidates.filter(({ weight }) => weight * TOLD_APART > leader).length,
    explained: candidates.some(({ explains }) => explains),
  };
}

/** Every fault at every place it fits. */
function placesOf(rig: Rig, stock: Stock): Place[] {
  return rig.run.flatMap((piece) =>
    (Object.keys(FAULTS) as FaultKind[])
      .filter((kind) => FAULTS[kind].fits(piece, stock))
      .map((kind) => ({ kind, at: piece.id })),
  );
}

/**
 * Pairs in the order of a rough score: what two faults do is taken to be the sum of what each does alone.
 * It only chooses which pairs are worked out; none is ranked by it.
 */
function likeliestPairs(
  singles: readonly Place[],
  healthy: readonly number[],
  weigh: (faults: readonly Fault[]) => Weighed<unknown> | null,
): (readonly [Place, Place])[] {
  const effects = singles.map((place) =>
    AMOUNTS.map((amount) => ({
      prior: logPrior(amount, METER_COEFFICIENTS.faultAmount.value),
      off: weigh([{ ...place, amount }])?.off ?? null,
    })),
  );
  const scored = singles.flatMap((a, i) =>
    singles.slice(i + 1).map((b, k) => {
      const j = i + 1 + k;
      let score = -Infinity;
      for (const first of effects[i]!)
        for (const second of effects[j]!) {
          if (!first.off || !second.off) continue;
          let square = 0;
          for (let n = 0; n < healthy.length; n++)
            square += (first.off[n]! + second.off[n]! - healthy[n]!) ** 2;
          score = Math.max(score, first.prior + second.prior - square / 2);
        }
      return { pair: [a, b] as const, score };
    }),
  );
  return scored.sort((a, b) => b.score - a.score).map(({ pair }) => pair);
}

/** A reading that could be taken, and how finely (standard error in L/s or Pa, above 0). */
export interface PossibleReading {
  readonly probe: Probe;
  readonly standard: number;
}

export interface NextReading extends PossibleReading {
  /** How far the leaders are expected to differ there, in standard errors, by their weights. */
  readonly separation: number;
  /** Pairs of leaders that differ there by more than EXPLAINED standard errors. */
  readonly told: number;
  /** Pairs of leaders in all. */
  readonly outOf: number;
}

/**
 * Which reading tells the leaders of a ranking apart best, best first, leaders being the tied ones or, when
 * one stands alone, those with a chance above 1 in 50. Readings that are missing from a leader's run are
 * left out. Empty with fewer than two leaders. A best `separation` below 1 says that no reading on offer
 * will do: look inside instead.
 */
export function nextReadings(ranking: Ranking, possible: readonly PossibleReading[]): NextReading[] {
  const leaders = ranking.candidates.filter(
    ({ weight }, i) => i < ranking.tied || (ranking.tied < 2 && weight > 0.02),
  );
  return possible
    .flatMap(({ probe, standard }) => {
      const there = leaders.map(({ solution }) => probed(solution, probe));
      if (there.some((value) => value === null) || !(standard > 0)) return [];
      let weights = 0;
      let apart = 0;
      let told = 0;
      let outOf = 0;
      for (let i = 0; i < leaders.length; i++)
        for (let j = i + 1; j < leaders.length; j++) {
          const weight = leaders[i]!.weight * leaders[j]!.weight;
          const gap = Math.abs(there[i]! - there[j]!) / standard;
          weights += weight;
          apart += weight * gap;
          outOf++;
          if (gap > EXPLAINED) told++;
        }
      return outOf === 0 ? [] : [{ probe, standard, separation: apart / weights, told, outOf }];
    })
    .sort((a, b) => b.separation - a.separation);
}
