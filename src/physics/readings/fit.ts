/**
 * From a user's own flows, measured at stages of a real rig, back to the coefficients: each within its
 * published range, by weighted least squares with that range as what is believed beforehand.
 */
import { isFailure } from '../build.ts';
import { LIMIT_95, type Input } from '../distribution.ts';
import { leastSquares } from '../least-squares.ts';
import { drawable, uncertainInputs } from '../rig-band.ts';
import type { Fault, Rig, Stock } from '../types.ts';
import type { Values } from '../uncertainty.ts';
import type { FlowAt } from './probes.ts';

export interface Stage {
  /** Faults present when it was measured, in place of the rig's own list. */
  readonly faults: readonly Fault[];
  readonly flow_L_s: number;
  /** Standard error (one sigma) of the instrument, L/s, above 0. */
  readonly standard_L_s: number;
}

export interface FittedInput {
  /** A coefficient, `fan pressure` (a factor), or `roughness of ...` (mm). */
  readonly name: string;
  readonly prior: number;
  readonly value: number;
  /** Standard error in its own unit; near half the range over 1.96 where the readings say little. */
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
  /** Everything uncertain at its fitted value, for `drawable`. */
  readonly values: Values;
  /** Those the readings could say something of. */
  readonly fitted: readonly FittedInput[];
  readonly stages: readonly StageResidual[];
  /** Root mean square of what remains, L/s. */
  readonly unexplained_L_s: number;
  /** Standard errors past which the worst of so many readings would lie once in twenty by chance. */
  readonly limit: number;
  /** Whether some reading lies past that, so that the ranges cannot explain them all. */
  readonly unexplained: boolean;
  readonly settled: boolean;
}

/** Less than this, in L/s, over its whole range is no effect. */
const NOTHING_L_S = 1e-6;

/**
 * Two-sided 5 % limit of the worst of `count` normal errors, by Bonferroni: the normal quantile at
 * 1 - 0.025 / count after Abramowitz and Stegun 26.2.23 (from memory; error below 4.5e-4).
 */
export function worstOf(count: number): number {
  const t = Math.sqrt(-2 * Math.log(0.025 / Math.max(1, count)));
  const below = 2.515517 + t * (0.802853 + t * 0.010328);
  const above = 1 + t * (1.432788 + t * (0.189269 + t * 0.001308));
  return t - below / above;
}

/**
 * An input at `z` standard deviations from its central value, each side with its own, so that a range that
 * is wider one way, or that begins at 0, is believed as it is published. `z` runs to the ends of the range.
 */
const valueAt = ({ value, low, high }: Input, z: number): number =>
  value + (z * (z < 0 ? value - low : high - value)) / LIMIT_95;

/**
 * Fits everything `uncertainInputs` holds that moves a flow of these stages: coefficients, the fan's
 * pressure, roughness of walls. Believed beforehand: split normal, the published range its 95 % limits and
 * its bounds (model assumption). `at` says which flow was measured. Null when a stage has no answer, there
 * are no stages, or a standard error is not above 0.
 */
export function fromReadings(
  rig: Rig,
  stock: Stock,
  stages: readonly Stage[],
  at: FlowAt = 'room',
): Fit | null {
  const usable = ({ standard_L_s, flow_L_s }: Stage) => standard_L_s > 0 && Number.isFinite(flow_L_s);
  if (stages.length === 0 || !stages.every(usable)) return null;
  const runs = stages.map(({ faults }) => drawable({ ...rig, faults }, stock));
  const flows = (values: Values): number[] | null => {
    const found = runs.flatMap((run) => {
      const operation = run(values);
      return isFailure(operation) ? [] : [operation.flow_L_s[at]];
    });
    return found.length === runs.length ? found : null;
  };
  const inputs = uncertainInputs(stock);
  const central: Values = Object.fromEntries(inputs.map(({ name, value }) => [name, value]));
  const before = flows(central);
  if (!before) return null;
  const moving = inputs.filter((input) =>
    [input.low, input.high].some((end) =>
      flows({ ...central, [input.name]: end })?.some((flow, i) => Math.abs(flow - before[i]!) > NOTHING_L_S),
    ),
  );
  const withZ = (z: readonly number[]): Values => ({
    ...central,
    ...Object.fromEntries(moving.map((input, i) => [input.name, valueAt(input, z[i]!)])),
  });
  const found = leastSquares(
    moving.map(({ value, low, high }) => ({
      start: 0,
      prior: 0,
      standard: 1,
      low: low < value ? -LIMIT_95 : 0,
      high: high > value ? LIMIT_95 : 0,
    })),
    (z) => flows(withZ(z))?.map((flow, i) => (flow - stages[i]!.flow_L_s) / stages[i]!.standard_L_s) ?? null,
  );
  const values = found && withZ(found.values);
  const after = values && flows(values);
  if (!found || !values || !after) return null;
  const residuals = stages.map((stage, i) => ({
    measured_L_s: stage.flow_L_s,
    before_L_s: before[i]!,
    fitted_L_s: after[i]!,
    residual_L_s: stage.flow_L_s - after[i]!,
    standardised: (stage.flow_L_s - after[i]!) / stage.standard_L_s,
  }));
  const limit = worstOf(stages.length);
  return {
    values,
    fitted: moving.map(({ name, value, low, high }, i) => {
      const z = found.values[i]!;
      const side = z < 0 || high === value ? value - low : high - value;
      return {
        name,
        prior: value,
        value: values[name]!,
        standard: (found.standard[i]! * side) / LIMIT_95,
        atLimit: Math.abs(z) > LIMIT_95 - 1e-9,
      };
    }),
    stages: residuals,
    unexplained_L_s: Math.sqrt(residuals.reduce((sum, r) => sum + r.residual_L_s ** 2, 0) / residuals.length),
    limit,
    unexplained: residuals.some(({ standardised }) => Math.abs(standardised) > limit),
    settled: found.settled,
  };
}
