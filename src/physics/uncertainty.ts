/**
 * The likely band of any model with uncertain inputs, twice over: by drawing (JCGM 101) and by linear
 * propagation (GUM), compared, because a straight line through a curved model can mislead.
 */
import { drawer, moments, type Input } from './distribution.ts';
import { randomFrom, seedFor } from './random.ts';

/** Values of the inputs by name. One object is used again for every draw: read it, do not keep it. */
export type Values = Record<string, number>;
/** Results by name at some values of the inputs, or null where there is no answer. */
export type Model<Name extends string> = (values: Values) => Readonly<Record<Name, number>> | null;

export interface Estimate {
  /** Median of the draws, or the linear estimate at the inputs' means. */
  readonly central: number;
  readonly standard: number;
  /** Ends of the 95 % band. */
  readonly low: number;
  readonly high: number;
}

export interface Sensitivity {
  readonly name: string;
  /** Change of the result per unit of the input. */
  readonly slope: number;
  /** Slope times the input's standard uncertainty, in the result's unit. */
  readonly part: number;
}

export interface Band {
  /** The model at the inputs' central values: what is shown as the flow itself. */
  readonly value: number;
  readonly monteCarlo: Estimate;
  readonly linear: Estimate;
  /** Largest part first. */
  readonly sensitivities: readonly Sensitivity[];
  /** Whether both bands agree; where they do not, only the drawn one counts. */
  readonly linearHolds: boolean;
  readonly draws: number;
  /** Draws the model had no answer for; they are left out of the band. */
  readonly unanswered: number;
}

export interface BandOptions {
  readonly draws?: number;
  readonly seed?: number;
}

export const DRAWS = 1000;
export const SEED = 1;
/** Step of the central difference, in standard uncertainties: small, so that the slope is the tangent's. */
const STEP = 0.05;
/** GUM 6.2: expanded uncertainty for about 95 %. */
const COVERAGE = 2;
/** Standard error of a 2.5 % limit from n draws of a normal: this over sqrt(n), in standard deviations. */
const LIMIT_ERROR = Math.sqrt(0.025 * 0.975) / 0.05845;

/**
 * Bands of all results of a model. Inputs are independent; each has a stream of its own (seed and name),
 * so that models that share an input see the same draws of it. Null when there is no answer at the
 * central values.
 */
export function bands<Name extends string>(
  inputs: readonly Input[],
  model: Model<Name>,
  { draws = DRAWS, seed = SEED }: BandOptions = {},
): Readonly<Record<Name, Band>> | null {
  const central: Values = Object.fromEntries(inputs.map((input) => [input.name, input.value]));
  const values: Values = { ...central };
  const found = model(values);
  if (!found) return null;
  const middle = { ...found };
  const names = Object.keys(middle) as Name[];
  const slopes = tangents(inputs, model, central, names);
  const drawn = drawAll(inputs, model, names, draws, seed);
  const banded = names.map((name, i) => {
    const parts = inputs.map((input, k): Sensitivity => {
      const slope = slopes.of[k]![i]!;
      return { name: input.name, slope, part: slope * moments(input).standard };
    });
    const standard = Math.sqrt(parts.reduce((sum, { part }) => sum + part * part, 0));
    const shift = inputs.reduce(
      (sum, input, k) => sum + slopes.of[k]![i]! * (moments(input).mean - input.value),
      0,
    );
    const best = middle[name] + shift;
    const linear = {
      central: best,
      standard,
      low: best - COVERAGE * standard,
      high: best + COVERAGE * standard,
    };
    const monteCarlo = estimate(drawn.results[i]!, middle[name]);
    return [
      name,
      {
        value: middle[name],
        monteCarlo,
        linear,
        sensitivities: parts.sort((a, b) => Math.abs(b.part) - Math.abs(a.part)),
        linearHolds: slopes.whole && agree(linear, monteCarlo, drawn.results[i]!.length),
        draws,
        unanswered: drawn.unanswered,
      } satisfies Band,
    ] as const;
  });
  return Object.fromEntries(banded) as unknown as Record<Name, Band>;
}

/** The band of a model with one result. */
export function band(
  inputs: readonly Input[],
  model: (values: Values) => number | null,
  options?: BandOptions,
): Band | null {
  const found = bands(
    inputs,
    (values) => {
      const result = model(values);
      return result === null ? null : { result };
    },
    options,
  );
  return found && found.result;
}

/** Central differences, one row an input; `whole` says whether every one of them could be taken. */
function tangents<Name extends string>(
  inputs: readonly Input[],
  model: Model<Name>,
  central: Values,
  names: readonly Name[],
) {
  let whole = true;
  const of = inputs.map((input) => {
    const step = STEP * moments(input).standard;
    if (!(step > 0)) return names.map(() => 0);
    const up = Math.min(input.most ?? Infinity, input.value + step);
    const down = Math.max(input.least ?? -Infinity, input.value - step);
    const above = model({ ...central, [input.name]: up });
    const high = above && { ...above };
    const low = model({ ...central, [input.name]: down });
    if (!high || !low || !(up > down)) {
      whole = false;
      return names.map(() => 0);
    }
    return names.map((name) => (high[name] - low[name]) / (up - down));
  });
  return { of, whole };
}

function drawAll<Name extends string>(
  inputs: readonly Input[],
  model: Model<Name>,
  names: readonly Name[],
  draws: number,
  seed: number,
) {
  const drawers = inputs.map((input) => drawer(input, randomFrom(seedFor(seed, input.name))));
  const results = names.map(() => new Float64Array(draws));
  const values: Values = {};
  let answered = 0;
  for (let n = 0; n < draws; n++) {
    for (let k = 0; k < inputs.length; k++) values[inputs[k]!.name] = drawers[k]!();
    const found = model(values);
    if (!found) continue;
    for (let i = 0; i < names.length; i++) results[i]![answered] = found[names[i]!];
    answered++;
  }
  return { results: results.map((list) => list.subarray(0, answered)), unanswered: draws - answered };
}

/** From unsorted draws, which are sorted in place. */
function estimate(list: Float64Array, otherwise: number): Estimate {
  if (list.length === 0) return { central: otherwise, standard: 0, low: otherwise, high: otherwise };
  let sum = 0;
  for (const x of list) sum += x;
  const mean = sum / list.length;
  let squares = 0;
  for (const x of list) squares += (x - mean) ** 2;
  list.sort();
  return {
    central: quantile(list, 0.5),
    standard: Math.sqrt(squares / Math.max(1, list.length - 1)),
    low: quantile(list, 0.025),
    high: quantile(list, 0.975),
  };
}

function quantile(sorted: Float64Array, share: number): number {
  const place = share * (sorted.length - 1);
  const below = Math.floor(place);
  const left = sorted[below]!;
  const right = sorted[Math.min(sorted.length - 1, below + 1)]!;
  return left + (right - left) * (place - below);
}

/**
 * JCGM 101 clause 8 (from memory): the limits may differ by half a unit of the standard uncertainty's first
 * digit; and by what chance alone makes of this many draws, three standard errors of a limit.
 */
function agree(linear: Estimate, drawn: Estimate, draws: number): boolean {
  if (draws === 0) return false;
  if (!(linear.standard > 0)) return !(drawn.standard > 0);
  const digit = 0.5 * 10 ** Math.floor(Math.log10(linear.standard));
  const chance = (3 * LIMIT_ERROR * linear.standard) / Math.sqrt(draws);
  const allowed = Math.max(digit, chance);
  return Math.abs(linear.low - drawn.low) <= allowed && Math.abs(linear.high - drawn.high) <= allowed;
}
