/**
 * From readings back to causes: coefficients fitted to a user's own measured flows, within their published
 * ranges; and which faults could explain one bad reading.
 */
import {
  CENTRAL,
  COEFFICIENTS,
  type Coefficient,
  type CoefficientName,
  type Coefficients,
} from './coefficients.ts';
import { FAULTS } from './faults/index.ts';
import { leastSquares } from './least-squares.ts';
import { bracketedRoot } from './root.ts';
import { solve } from './solve.ts';
import type { Fault, FaultKind, Rig, Solution, Stock } from './types.ts';

export type FlowAt = keyof Solution['flow_L_s'];

export interface Stage {
  /** Faults present when it was measured, in place of the rig's own list. */
  readonly faults: readonly Fault[];
  readonly flow_L_s: number;
  /** Standard error (one sigma) of the instrument, L/s, above 0. */
  readonly standard_L_s: number;
}

export interface FittedCoefficient {
  readonly name: CoefficientName;
  readonly prior: number;
  readonly value: number;
  /** Standard error; near the prior's own where the readings say little. */
  readonly standard: number;
  /** Held at an end of its published range. */
  readonly atLimit: boolean;
}

export interface StageResidual {
  readonly measured_L_s: number;
  readonly before_L_s: number;
  readonly fitted_L_s: number;
  /** Measured less fitted: what remains unexplained. */
  readonly residual_L_s: number;
  /** The same in standard errors of the instrument. */
  readonly standardised: number;
}

export interface Fit {
  readonly coefficients: Coefficients;
  readonly fitted: readonly FittedCoefficient[];
  readonly stages: readonly StageResidual[];
  /** Root mean square of what remains, L/s. */
  readonly unexplained_L_s: number;
  /** Whether some reading is off by more than 2 standard errors, so the ranges cannot explain them all. */
  readonly unexplained: boolean;
  readonly settled: boolean;
}

const LIMIT = 1.959964;
/** Of a reading that still counts as explained, in standard errors. */
export const EXPLAINED = 2;

function flowOf(rig: Rig, stock: Stock, coefficients: Coefficients, at: FlowAt): number | null {
  const solution = solve(rig, stock, coefficients);
  return solution.outcome === 'solved' ? solution.flow_L_s[at] : null;
}

/**
 * Coefficients that move a flow in these stages are found on log scale, priors lognormal about the central
 * value with the published range as 95 % limits and as bounds. Null when a stage has no answer, there are no
 * stages, or a standard error is not above 0.
 */
export function fromReadings(
  rig: Rig,
  stock: Stock,
  stages: readonly Stage[],
  at: FlowAt = 'room',
): Fit | null {
  if (
    stages.length === 0 ||
    stages.some(({ standard_L_s: s, flow_L_s: q }) => !(s > 0) || !Number.isFinite(q))
  )
    return null;
  const rigs = stages.map(({ faults }) => ({ ...rig, faults }));
  const flows = (coefficients: Coefficients) => {
    const found = rigs.map((each) => flowOf(each, stock, coefficients, at));
    return found.every((flow) => flow !== null) ? found : null;
  };
  const before = flows(CENTRAL);
  if (!before) return null;
  const table: Readonly<Record<string, Coefficient>> = COEFFICIENTS;
  const names = (Object.keys(table) as CoefficientName[]).filter((name) => {
    const { value, low, high } = table[name]!;
    if (!(low > 0) || !(high > low)) return false;
    const moved = flows({ ...CENTRAL, [name]: high > value ? high : low });
    return moved?.some((flow, i) => Math.abs(flow - before[i]!) > 1e-6) ?? false;
  });
  const unknowns = names.map((name) => {
    const { value, low, high } = table[name]!;
    const prior = Math.log(value);
    return {
      start: prior,
      prior,
      standard: Math.log(high / low) / 2 / LIMIT,
      low: Math.log(low),
      high: Math.log(high),
    };
  });
  const withValues = (values: readonly number[]): Coefficients => ({
    ...CENTRAL,
    ...Object.fromEntries(names.map((name, i) => [name, Math.exp(values[i]!)])),
  });
  const found = leastSquares(
    unknowns,
    (values) =>
      flows(withValues(values))?.map((flow, i) => (flow - stages[i]!.flow_L_s) / stages[i]!.standard_L_s) ??
      null,
  );
  const coefficients = found && withValues(found.values);
  const after = coefficients && flows(coefficients);
  if (!found || !coefficients || !after) return null;
  const residuals = stages.map((stage, i) => ({
    measured_L_s: stage.flow_L_s,
    before_L_s: before[i]!,
    fitted_L_s: after[i]!,
    residual_L_s: stage.flow_L_s - after[i]!,
    standardised: (stage.flow_L_s - after[i]!) / stage.standard_L_s,
  }));
  return {
    coefficients,
    fitted: names.map((name, i) => ({
      name,
      prior: table[name]!.value,
      value: coefficients[name],
      standard: coefficients[name] * found.standard[i]!,
      atLimit: Math.min(found.values[i]! - unknowns[i]!.low, unknowns[i]!.high - found.values[i]!) < 1e-9,
    })),
    stages: residuals,
    unexplained_L_s: Math.sqrt(residuals.reduce((sum, r) => sum + r.residual_L_s ** 2, 0) / residuals.length),
    unexplained: residuals.some(({ standardised }) => Math.abs(standardised) > EXPLAINED),
    settled: found.settled,
  };
}

export interface Explanation {
  readonly faults: readonly Fault[];
  readonly flow_L_s: number;
  /** Computed less measured, in standard errors; 0 fits outright. */
  readonly standardised: number;
  readonly explains: boolean;
}

export interface Suspicion {
  readonly flow_L_s: number;
  readonly standard_L_s: number;
  readonly at?: FlowAt;
  /** Pressures read besides it: static pressure just behind a piece. They tell faults apart that cost one flow alike. */
  readonly pressures?: readonly {
    readonly after: string;
    readonly static_Pa: number;
    readonly standard_Pa: number;
  }[];
}

/**
 * Single faults at every place they fit, and pairs of equal amount, each at the amount that comes nearest the
 * readings, best first; of equals, the smaller count and then the smaller amount (model assumption: small
 * mistakes are commoner). One flow alone cannot tell faults apart that cost the same.
 */
export function explain(
  rig: Rig,
  stock: Stock,
  suspicion: Suspicion,
  coefficients: Coefficients = CENTRAL,
  pairs = false,
): Explanation[] {
  const kinds = Object.keys(FAULTS) as FaultKind[];
  const singles = rig.run.flatMap((piece) =>
    kinds.filter((kind) => FAULTS[kind].fits(piece, stock)).map((kind) => [{ kind, at: piece.id }]),
  );
  const twos = pairs ? singles.flatMap(([a], i) => singles.slice(i + 1).map(([b]) => [a!, b!])) : [];
  return [...singles, ...twos]
    .map((set) => nearest(rig, stock, suspicion, coefficients, set))
    .filter((found) => found !== null)
    .sort(
      (a, b) =>
        // To a hundredth of a standard error they are equal.
        Math.round(100 * Math.abs(a.standardised)) - Math.round(100 * Math.abs(b.standardised)) ||
        a.faults.length - b.faults.length ||
        a.faults[0]!.amount - b.faults[0]!.amount,
    );
}

const GRID = [0, 0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9, 1];

function nearest(
  rig: Rig,
  stock: Stock,
  suspicion: Suspicion,
  coefficients: Coefficients,
  set: readonly Omit<Fault, 'amount'>[],
): Explanation | null {
  const at = suspicion.at ?? 'room';
  const faultsAt = (amount: number) => set.map((fault) => ({ ...fault, amount }));
  const off = (amount: number) => {
    const faults = [...(rig.faults ?? []), ...faultsAt(amount)];
    const solution = solve({ ...rig, faults }, stock, coefficients);
    if (solution.outcome === 'failed') return null;
    const flow = solution.flow_L_s[at];
    const signed = (flow - suspicion.flow_L_s) / suspicion.standard_L_s;
    const others = (suspicion.pressures ?? []).map(({ after, static_Pa, standard_Pa }) => {
      const station = solution.stations.find((each) => each.after === after);
      return station ? (station.staticPressure_Pa - static_Pa) / standard_Pa : 0;
    });
    return { amount, flow, signed, size: Math.hypot(signed, ...others) };
  };
  const tried = GRID.map(off).filter((each) => each !== null);
  for (let i = 1; i < tried.length; i++) {
    const [a, b] = [tried[i - 1]!, tried[i]!];
    if (a.signed * b.signed >= 0) continue;
    const amount = bracketedRoot((x) => off(x)?.signed ?? b.signed, a.amount, b.amount, 1e-6);
    const between = off(amount);
    if (between) tried.push(between);
  }
  const best = tried.filter(({ amount }) => amount > 0).sort((a, b) => a.size - b.size)[0];
  if (!best) return null;
  const standardised = best.size * (Math.sign(best.signed) || 1);
  const explains = best.size <= EXPLAINED;
  return { faults: faultsAt(best.amount), flow_L_s: best.flow, standardised, explains };
}
