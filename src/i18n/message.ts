/**
 * For the build alone: stands in for `intl-messageformat` in what a reader is sent. A parsed message needs
 * only its values set in; the library's numbers, dates and rich text are used by none. Held against the
 * library, message by message, in `tests/i18n/message.test.ts`.
 */
interface Part {
  /** The parser's own numbers: 0 words, 1 a value, 2 a number, 5 a choice, 6 a plural, 7 the plural's number. */
  readonly type: number;
  readonly value?: string;
  readonly options?: Readonly<Record<string, { readonly value: readonly Part[] }>>;
}
type Values = Readonly<Record<string, string | number>>;

export class IntlMessageFormat {
  readonly #parts: readonly Part[] | string;
  readonly #language: string;

  constructor(parts: readonly Part[] | string, language: string) {
    this.#parts = parts;
    this.#language = language;
  }

  format(values: Values = {}): string {
    return typeof this.#parts === 'string' ? this.#parts : this.#said(this.#parts, values);
  }

  #said(parts: readonly Part[], values: Values, counted = 0): string {
    return parts.map((part) => this.#one(part, values, counted)).join('');
  }

  #one({ type, value: name = '', options = {} }: Part, values: Values, counted: number): string {
    const number = (value: number) => new Intl.NumberFormat(this.#language).format(value);
    if (type === 0) return name;
    if (type === 7) return number(counted);
    const value = values[name];
    if (value === undefined) throw new Error(`no value for "${name}"`);
    if (type === 2) return number(Number(value));
    if (type === 1) return String(value);
    const count = type === 6 ? Number(value) : counted;
    const key = type === 6 ? new Intl.PluralRules(this.#language).select(count) : String(value);
    const chosen = (type === 6 && options[`=${count}`]) || (options[key] ?? options['other']);
    return this.#said(chosen?.value ?? [], values, count);
  }
}
