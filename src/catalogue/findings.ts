/** Runs a schema over a value and turns what it objects to into findings with a path and words. */
import * as v from 'valibot';
import { meant } from './keys.ts';
import { finding, type Finding } from './problems.ts';
import type { RangeName } from './ranges.ts';

type Key = string | number;

/** `run[3].diameter_mm`; a key that is no plain word is quoted. */
export function pathText(keys: readonly Key[]): string {
  const parts = keys.map((key) => {
    if (typeof key === 'number') return `[${key}]`;
    return /^[\p{L}_$][\p{L}\p{N}_$-]*$/u.test(key) ? `.${key}` : `[${JSON.stringify(key)}]`;
  });
  return parts.join('').replace(/^\./, '') || '(whole file)';
}

const isPlainObject = (value: unknown): value is Record<string, unknown> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

/** Something is wrong with the keys of an object, or it is no object at all. */
function keyFindings(issue: v.BaseIssue<unknown>, keys: readonly Key[], legal: readonly string[]): Finding[] {
  const last = issue.path?.at(-1);
  const aboutKey = last !== undefined && 'origin' in last && last.origin === 'key';
  const holder = aboutKey ? last.input : issue.input;
  const parent = aboutKey ? keys.slice(0, -1) : keys;
  if (!isPlainObject(holder))
    return [finding('wrong-type', pathText(parent), holder, `an object { } with ${legal.join(', ')}`)];

  const strangers = Object.keys(holder).filter((key) => !legal.includes(key));
  const key = String(keys.at(-1));
  const meantByStranger = strangers.some((stranger) => meant(stranger, legal) === key);
  // A key missing because it was misspelt is told once, as the misspelling.
  const missing =
    issue.expected !== 'never' && !meantByStranger ? [finding('missing-key', pathText(keys), key)] : [];
  return [
    ...missing,
    ...strangers.map((stranger) => finding('unknown-key', pathText([...parent, stranger]), stranger, legal)),
  ];
}

function fromIssue(issue: v.BaseIssue<unknown>): Finding[] {
  const keys = (issue.path ?? []).map((item) => item.key as Key);
  const path = pathText(keys);
  const [code, ...rest] = issue.message.split(':');
  const words = rest.join(':');
  switch (code) {
    case 'keys':
      return keyFindings(issue, keys, words.split('|'));
    case 'range':
      return [finding('out-of-range', path, words as RangeName, issue.input)];
    case 'choice':
      return choiceFindings(issue, keys, words.split('|'));
    default:
      return [finding('wrong-type', path, issue.input, words || 'another type')];
  }
}

/** A value outside a short list; where the list tells kinds apart, perhaps there was no object to hold it. */
function choiceFindings(
  issue: v.BaseIssue<unknown>,
  keys: readonly Key[],
  legal: readonly string[],
): Finding[] {
  const last = issue.path?.at(-1);
  const notAnObject = (at: readonly Key[], value: unknown) => [
    finding('wrong-type', pathText(at), value, 'an object { }'),
  ];
  // Pieces and faults stand in lists, so a path that ends in a number points at the piece itself.
  if (issue.type === 'variant' && typeof last?.key !== 'string') return notAnObject(keys, issue.input);
  if (issue.type === 'variant' && Array.isArray(last?.input))
    return notAnObject(keys.slice(0, -1), last.input);
  return [finding('not-one-of', pathText(keys), issue.input, legal)];
}

/** Same place and same complaint: the first stands for all. */
function once(findings: readonly Finding[]): Finding[] {
  const seen = new Set<string>();
  return findings.filter(({ code, path }) => {
    const key = `${code} ${path}`;
    return seen.has(key) ? false : seen.add(key) !== undefined;
  });
}

export type Checked<Output> =
  { readonly ok: true; readonly value: Output } | { readonly ok: false; readonly findings: Finding[] };

export function check<Output>(schema: v.GenericSchema<unknown, Output>, value: unknown): Checked<Output> {
  const result = v.safeParse(schema, value);
  if (result.success) return { ok: true, value: result.output };
  return { ok: false, findings: once(result.issues.flatMap(fromIssue)) };
}
