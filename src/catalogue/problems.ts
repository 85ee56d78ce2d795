/**
 * What is said about a file that cannot be used. Every English sentence of the catalogue stands here, by
 * code, so that a translation can be put beside it; the catalogue itself may not import the messages.
 */
import { meant, withUnit } from './keys.ts';
import { likelySlips, ranges, type Range, type RangeName } from './ranges.ts';

export interface Problem {
  readonly file: string;
  /** Where in the file: `run[3].diameter_mm`, or a line and column when the text is not JSON. */
  readonly path: string;
  readonly code: ProblemCode;
  readonly found: string;
  readonly allowed: string;
  readonly remedy?: string;
}

/** A problem before it is known which file it is in. */
export type Finding = Omit<Problem, 'file'>;

interface Words {
  readonly found: string;
  readonly allowed: string;
  readonly remedy?: string;
}

/** Longest stretch of a reader's own text that is repeated to them. */
const LONGEST_QUOTE = 60;

function quote(text: string): string {
  return JSON.stringify(text.length > LONGEST_QUOTE ? `${text.slice(0, LONGEST_QUOTE)}...` : text);
}

const list = (words: readonly string[]): string => words.map(quote).join(', ');

/** A value in the reader's terms. */
export function describe(value: unknown): string {
  if (value === undefined) return 'nothing';
  if (value === null) return 'null';
  if (Array.isArray(value)) return `a list of ${value.length}`;
  if (typeof value === 'string') return quote(value);
  if (typeof value === 'number' || typeof value === 'boolean') return String(value);
  return typeof value === 'object' ? 'an object { }' : `a ${typeof value}`;
}

export function rangeText(name: RangeName): string {
  const { least, most, unit, orZero }: Range = ranges[name];
  return `a number ${orZero ? '0, or ' : ''}from ${least} to ${most}, ${unit}`;
}

function slipRemedy(name: RangeName, value: unknown): string | undefined {
  const slips = typeof value === 'number' ? likelySlips(name, value) : [];
  if (slips.length === 0) return undefined;
  const guesses = slips.map(({ from, value: right }) => `${from}, which would be ${right}`);
  return `it looks like ${guesses.join(' or ')}`;
}

const range = (name: RangeName, value: unknown): Words => ({
  found: describe(value),
  allowed: rangeText(name),
  remedy: slipRemedy(name, value),
});

function didYouMean(word: string, legal: readonly string[]): string | undefined {
  const key = meant(word, legal);
  return key === undefined ? undefined : `did you mean ${withUnit(key)}`;
}

const oneOf = (value: unknown, legal: readonly string[]): Words => ({
  found: describe(value),
  allowed: `one of ${list(legal)}`,
  remedy: typeof value === 'string' ? didYouMean(value, legal) : undefined,
});

const wording = {
  'not-json': (found: string, allowed: string, remedy?: string): Words => ({ found, allowed, remedy }),
  'key-twice': (key: string): Words => ({
    found: `the key ${quote(key)} written a second time`,
    allowed: 'each key once',
  }),
  'too-large': (length: number, most: number): Words => ({
    found: `${length} characters`,
    allowed: `at most ${most}`,
  }),
  'too-deep': (most: number): Words => ({
    found: `more than ${most} levels of brackets`,
    allowed: `at most ${most}`,
  }),
  'not-readable': (found: string, allowed: string): Words => ({ found, allowed }),
  'wrong-type': (value: unknown, allowed: string): Words => ({ found: describe(value), allowed }),
  'missing-key': (key: string): Words => ({
    found: 'nothing',
    allowed: `the key ${withUnit(key)}, must be given`,
  }),
  'unknown-key': (key: string, legal: readonly string[]): Words => ({
    found: `the unknown key ${quote(key)}`,
    allowed: legal.join(', '),
    remedy: didYouMean(key, legal),
  }),
  'not-one-of': oneOf,
  'out-of-range': range,
  'too-few': (count: number, least: number, of: string): Words => ({
    found: `${count} ${of}`,
    allowed: `at least ${least}`,
  }),
  'too-many': (count: number, most: number, of: string): Words => ({
    found: `${count} ${of}`,
    allowed: `at most ${most}`,
  }),
  'range-backwards': (value: readonly number[]): Words => ({
    found: `from ${value[0]} to ${value[1]}`,
    allowed: 'the smaller number first',
  }),
  'outside-own-range': (value: number, [least, most]: readonly [number, number]): Words => ({
    found: String(value),
    allowed: `from ${least} to ${most}, the range stated beside it`,
  }),

  'flow-does-not-rise': (flow: number, before: number): Words => ({
    found: `a flow of ${flow} L/s after ${before} L/s`,
    allowed: `more than ${before} L/s: flows rise from point to point and none stands twice`,
  }),
  'pressure-rises': (pressure: number, before: number): Words => ({
    found: `a pressure of ${pressure} Pa after ${before} Pa`,
    allowed: `at most ${before} Pa: a fan gives less pressure at more flow`,
    remedy: 'an honest stall dip is stated with "saddle": true in the table',
  }),
  'pressure-rises-twice': (pressure: number, before: number): Words => ({
    found: `a second rise, ${pressure} Pa after ${before} Pa`,
    allowed: `at most ${before} Pa: a curve with a saddle has one dip`,
  }),
  'saddle-too-high': (pressure: number, first: number): Words => ({
    found: `${pressure} Pa past the dip`,
    allowed: `at most the ${first} Pa at the first point`,
  }),
  'power-in-part': (): Words => ({
    found: 'no power_W here, though other points have one',
    allowed: 'power_W at every point or at none',
  }),

  'id-twice': (id: string, first: string): Words => ({
    found: `the id ${quote(id)} again, as in ${first}`,
    allowed: 'each id once in a run',
  }),
  'reserved-id': (id: string): Words => ({
    found: `the id ${quote(id)}`,
    allowed: 'any other: the solution uses this one for a place of its own',
  }),
  'fan-count': (count: number): Words => ({
    found: count === 0 ? 'no fan' : `${count} fans`,
    allowed: 'one fan in the run',
  }),
  'wrong-start': (kind: string): Words => ({
    found: `a run that starts with a ${kind}`,
    allowed: 'a grille or a duct first',
  }),
  'wrong-end': (kind: string): Words => ({
    found: `a run that ends with a ${kind}`,
    allowed: 'a terminal last',
  }),
  'wrong-middle': (kind: string): Words => ({
    found: `a ${kind} in the middle of the run`,
    allowed: kind === 'grille' ? 'a grille only as the first piece' : 'a terminal only as the last piece',
  }),
  'shorter-than-path': (full: number, path: number): Words => ({
    found: `${full} m of duct`,
    allowed: `at least its path_m, ${path} m: a piece cannot be shorter than the path it covers`,
  }),
  'bores-differ': (bore: number, before: number, id: string): Words => ({
    found: `${bore} mm beside the ${before} mm of ${quote(id)}`,
    allowed: `${before} mm: nothing between the two changes the bore`,
    remedy: 'put a "reducer" between them, or a "fitting" with its own lossCoefficient',
  }),
  'reducer-keeps-bore': (bore: number): Words => ({
    found: `${bore} mm at both ends`,
    allowed: 'another bore than diameter_mm: a reducer changes it',
  }),
  'leakage-twice': (): Words => ({
    found: 'a leakClass beside it',
    allowed: 'one of the two: a class, or the leakage stated outright',
  }),
  'unknown-fan': oneOf,
  'unknown-material': oneOf,
  'unknown-place': (at: string, ids: readonly string[]): Words => ({
    found: `${quote(at)}, which is no id in the run`,
    allowed: `one of ${list(ids)}`,
    remedy: didYouMean(at, ids),
  }),
  'wrong-place': (fault: string, at: string, what: string, fitting: readonly string[]): Words => ({
    found: `${quote(at)}, which is ${what}`,
    allowed:
      fitting.length > 0 ? `for ${fault}: ${list(fitting)}` : `no piece of this run can have ${quote(fault)}`,
  }),
};

export type ProblemCode = keyof typeof wording;

/** One thing wrong: where, what was found, what is allowed. */
export function finding<C extends ProblemCode>(
  code: C,
  path: string,
  ...values: Parameters<(typeof wording)[C]>
): Finding {
  const words = wording[code] as (...given: typeof values) => Words;
  const { found, allowed, remedy } = words(...values);
  return { path, code, found, allowed, ...(remedy === undefined ? {} : { remedy }) };
}

/** One line: file, place, what was found, what is allowed, and the likely mend. Also fits the engine's Failure. */
export function tell(problem: Pick<Problem, 'file' | 'path' | 'found' | 'allowed' | 'remedy'>): string {
  const { file, path, found, allowed, remedy } = problem;
  return `${file}: ${path}: found ${found}; allowed: ${allowed}${remedy ? ` (${remedy}${/^(did|is)\b/.test(remedy) ? '?' : ''})` : ''}`;
}
