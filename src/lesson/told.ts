/** What the schema finds wrong with a lesson's file, in words its author can act on. */
import * as v from 'valibot';
import { say } from '#i18n';
import { pathOf, shown, type Problem } from './problems.ts';
import { lessonSchema } from './schema.ts';

type Issue = v.BaseIssue<unknown>;
type Keys = readonly unknown[];
/** The parts of a schema that lead on to those inside it. */
type Node = v.GenericSchema & {
  readonly entries?: Readonly<Record<string, Node>>;
  readonly item?: Node;
  readonly value?: Node;
  readonly wrapped?: Node;
  readonly options?: readonly unknown[];
  readonly literal?: unknown;
};

const isObject = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

/** How much of a value is what a form asks for: its keys, and above all its kind. */
function likeness({ entries = {} }: Node, value: Readonly<Record<string, unknown>>): number {
  return Object.keys(value).reduce((sum, key) => {
    const entry = entries[key];
    return (
      sum + (entry === undefined ? 0 : entry.literal !== undefined && entry.literal === value[key] ? 100 : 1)
    );
  }, 0);
}

/** Of several forms the one a value comes nearest to: the form its author had in mind. */
function meant(node: Node, value: unknown): Node {
  if (node.wrapped) return meant(node.wrapped, value);
  const forms = (node.options ?? []).filter((each) => isObject(each)) as unknown as Node[];
  if (forms.length === 0 || !isObject(value)) return node;
  return forms.reduce((best, each) => (likeness(each, value) > likeness(best, value) ? each : best));
}

type Path = readonly { readonly input: unknown; readonly key: unknown }[];

/** The schema a path leads to; undefined where it leads out of it. */
function schemaAt(path: Path): Node | undefined {
  let node: Node | undefined = lessonSchema as unknown as Node;
  for (const { input, key } of path) {
    const form: Node | undefined = node && meant(node, input);
    node = form?.entries ? form.entries[String(key)] : (form?.item ?? form?.value);
  }
  return node;
}

/** An issue as problems, one or more: of a value that fits none of several forms, what the nearest one misses. */
export function told(issue: Issue, file: string): Problem[] {
  const path = issue.path ?? [];
  const node = issue.type === 'union' && isObject(issue.input) ? schemaAt(path) : undefined;
  const form = node && meant(node, issue.input);
  const keys = path.map(({ key }) => key);
  if (!form?.entries) return [problem(issue, keys, schemaAt(path.slice(0, -1)), path.at(-1)?.input, file)];
  return (v.safeParse(form, issue.input).issues ?? []).map((inner) => {
    const inside = inner.path ?? [];
    const whole = [...keys, ...inside.map(({ key }) => key)];
    return problem(inner, whole, form, inside.length === 1 ? inside[0].input : undefined, file);
  });
}

/** `around`: what the last key of the path stands in. */
function problem(issue: Issue, keys: Keys, around: Node | undefined, value: unknown, file: string): Problem {
  const path = keys.length ? pathOf(keys) : 'lesson';
  if (issue.expected === 'never') {
    const known = Object.keys((around && meant(around, value).entries) ?? {});
    const found = say('lesson.problem.unknown-key', { key: shown(keys.at(-1)) });
    return { file, path, found, allowed: known.join(', ') };
  }
  const { type, input, received } = issue;
  const counted = Array.isArray(input) && (type === 'min_length' || type === 'max_length');
  const found = counted
    ? say('lesson.problem.list-of', { count: input.length })
    : received.startsWith('"')
      ? received
      : shown(input);
  return { file, path, found, allowed: wanted(issue) };
}

const BOUNDS: Readonly<Record<string, 'lesson.problem.at-least' | 'lesson.problem.at-most'>> = {
  '>=': 'lesson.problem.at-least',
  '<=': 'lesson.problem.at-most',
};

function wanted({ type, expected, message, input, requirement }: Issue): string {
  // Words of the schema's own go before the library's.
  if (!message.startsWith('Invalid ')) return message;
  if (type === 'integer') return say('lesson.problem.whole-number');
  if (expected === null) return message;
  if (input === undefined && expected.startsWith('"')) return say('lesson.problem.key', { key: expected });
  if (expected === 'number') return bareNumber(input);
  if (expected === 'string')
    return say(Array.isArray(input) ? 'lesson.problem.one-id' : 'lesson.problem.an-id');
  if (expected === 'Array') return say('lesson.problem.a-list');
  if (expected === 'Object') return say('lesson.problem.an-object');
  const bound = BOUNDS[expected.slice(0, 2)];
  if (bound) return say(bound, { number: String(requirement) });
  return expected.replace(/^\((.*)\)$/, '$1').replaceAll(' | ', ', ');
}

/** Often a number is there, with its unit or between quotes. */
function bareNumber(input: unknown): string {
  const digits = typeof input === 'string' ? /^\s*(\d+(?:[.,]\d+)?)\s*(%?)/.exec(input) : null;
  if (!digits) return say('lesson.problem.a-number');
  const number = Number(digits[1]!.replace(',', '.'));
  return say('lesson.problem.bare-number', { number: String(digits[2] ? number / 100 : number) });
}
