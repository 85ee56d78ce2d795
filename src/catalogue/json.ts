/**
 * JSON text to a value, or the line and column where it stops being JSON. JSON.parse alone names no place in
 * every browser, and lets a key written twice pass.
 */
import { finding, type Finding } from './problems.ts';

export type Parsed =
  { readonly ok: true; readonly value: unknown } | { readonly ok: false; readonly finding: Finding };

/** A full rig is about 5 kB. */
const LONGEST_TEXT = 1_000_000;
/** A rig needs 6 levels. */
const DEEPEST = 40;

class Refused extends Error {
  readonly finding: Finding;
  constructor(refusal: Finding) {
    super(refusal.code);
    this.finding = refusal;
  }
}

/** A file's text as a value, or what is wrong with it and where. */
export function parseJson(text: string): Parsed {
  const clean = text.replace(/^\uFEFF/, '');
  if (clean.length > LONGEST_TEXT)
    return { ok: false, finding: finding('too-large', '(whole file)', clean.length, LONGEST_TEXT) };
  try {
    new Scanner(clean).whole();
    return { ok: true, value: JSON.parse(clean) };
  } catch (error) {
    if (error instanceof Refused) return { ok: false, finding: error.finding };
    throw error;
  }
}

class Scanner {
  private at = 0;
  private readonly text: string;

  constructor(text: string) {
    this.text = text;
  }

  whole(): void {
    this.space();
    if (this.at >= this.text.length)
      throw new Refused(finding('not-json', this.place(0), 'an empty file', 'JSON text, an object { }'));
    this.value(0);
    this.space();
    if (this.at < this.text.length) this.refuse('the end of the file');
  }

  private take(pattern: RegExp): string | undefined {
    pattern.lastIndex = this.at;
    const found = pattern.exec(this.text)?.[0];
    if (found !== undefined) this.at += found.length;
    return found;
  }

  private space(): void {
    this.take(/[ \t\n\r]*/y);
  }

  private value(depth: number): void {
    if (depth > DEEPEST) throw new Refused(finding('too-deep', this.place(), DEEPEST));
    if (this.take(/\{/y)) this.members(depth);
    else if (this.take(/\[/y)) this.items(depth);
    else if (
      this.take(/(?:true|false|null)\b/y) === undefined &&
      this.number() === undefined &&
      this.string() === undefined
    ) {
      this.refuse('a value: a number, text in double quotes, true, false, a list [ ] or an object { }');
    }
  }

  private number(): string | undefined {
    return this.take(/-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?(?![\w.])/y);
  }

  private string(): string | undefined {
    // Every character from the space up, save the quote and the backslash.
    return this.take(/"(?:[ !#-[\]-\uffff]|\\(?:["\\/bfnrt]|u[0-9a-fA-F]{4}))*"/y);
  }

  private members(depth: number): void {
    const keys = new Set<string>();
    this.space();
    if (this.take(/\}/y)) return;
    do {
      this.space();
      const start = this.at;
      const key = this.string();
      if (key === undefined) this.refuse('a key in double quotes');
      const name = JSON.parse(key) as string;
      if (keys.has(name)) throw new Refused(finding('key-twice', this.place(start), name));
      keys.add(name);
      this.space();
      if (!this.take(/:/y)) this.refuse('a colon after the key');
      this.space();
      this.value(depth + 1);
      this.space();
    } while (this.take(/,/y));
    if (!this.take(/\}/y)) this.refuse('a comma or the closing }');
  }

  private items(depth: number): void {
    this.space();
    if (this.take(/\]/y)) return;
    do {
      this.space();
      this.value(depth + 1);
      this.space();
    } while (this.take(/,/y));
    if (!this.take(/\]/y)) this.refuse('a comma or the closing ]');
  }

  private refuse(allowed: string): never {
    const rest = this.text.slice(this.at);
    const word = /^[\w.+-]+/.exec(rest)?.[0] ?? /^"[^"\n]{0,20}/.exec(rest)?.[0] ?? [...rest.slice(0, 2)][0];
    // A whole key or value, or the beginning of one, where only a comma can stand.
    const next = /^(?:"(?:[^"\\\n]|\\.)*"|[[{])/.exec(rest)?.[0];
    if (next !== undefined && allowed.startsWith('a comma'))
      throw new Refused(
        finding('not-json', this.place(), next.slice(0, 40), allowed, 'put a comma before it'),
      );
    const found = word === undefined ? 'the end of the file' : JSON.stringify(word.slice(0, 40));
    throw new Refused(
      finding('not-json', this.place(), found, allowed, remedyFor(word, this.text.slice(0, this.at))),
    );
  }

  private place(at = this.at): string {
    const before = this.text.slice(0, at).split(/\r\n|\r|\n/);
    return `line ${before.length}, column ${[...before[before.length - 1]!].length + 1}`;
  }
}

function remedyFor(word: string | undefined, before: string): string | undefined {
  if (word === undefined) return undefined;
  if (/^[+-]?(?:nan|inf(?:inity)?)$/i.test(word))
    return 'JSON has no such number: write the figure, or leave the key out';
  if (word.startsWith('"'))
    return 'text ends with a double quote on its own line; a backslash goes before " and \\ inside it';
  if (/^['\u2018\u2019\u201c\u201d]/.test(word)) return 'use straight double quotes';
  if (/^\//.test(word)) return 'JSON has no comments';
  if (/^,/.test(word) && /,\s*$/.test(before)) return 'take away one comma';
  if (/^[}\]]/.test(word) && /,\s*$/.test(before)) return 'take away the comma before it';
  if (/^[+.]|^-?0\d|^-?\d+\.$/.test(word))
    return 'write numbers like 0.5, without a plus sign or a leading zero';
  return undefined;
}
