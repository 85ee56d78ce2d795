/** What a reader is sent instead of the message library says every message as the library does. */
import type { parse } from '@formatjs/icu-messageformat-parser';
import { IntlMessageFormat } from 'intl-messageformat';
import { describe, expect, test } from 'vitest';
import { compiled, SAID_WITH } from '../../src/i18n/compile.ts';
import { IntlMessageFormat as Sent } from '../../src/i18n/message.ts';
import messages from '../../src/i18n/messages/en.json' with { type: 'json' };

type Parts = ReturnType<typeof parse>;
/** Said by a component whose own code brings the words in, or while pages are built. */
const HELD = ['/src/charts/SteamClock.svelte', '/src/routes/+page.svelte'];
/** Kinds of part, by the parser's numbers. */
const KNOWN = [0, 1, 2, 5, 6, 7];

/** Every value a message asks for, with what it may be: each way of a choice, and counts on both sides of one. */
function asked(parts: Parts, found = new Map<string, Set<string | number>>()) {
  for (const part of parts) {
    expect(KNOWN).toContain(part.type);
    if (part.type === 0 || part.type === 7) continue;
    const name = (part as { value: string }).value;
    const kind = found.get(name) ?? new Set();
    found.set(name, kind);
    if (part.type === 2) {
      expect(part.style ?? null).toBeNull();
      for (const value of [7, 1234.5]) kind.add(value);
    }
    if (part.type === 1) kind.add('some words');
    if (part.type === 5 || part.type === 6) {
      if (part.type === 6) {
        expect([part.offset, part.pluralType]).toEqual([0, 'cardinal']);
        for (const value of [0, 1, 2, 1234]) kind.add(value);
      } else for (const option of [...Object.keys(part.options), 'none of them']) kind.add(option);
      for (const option of Object.values(part.options)) asked(option.value, found);
    }
  }
  return found;
}

/** One value changed at a time, from each value's first. */
function tries(found: Map<string, Set<string | number>>): Record<string, string | number>[] {
  const first = Object.fromEntries([...found].map(([name, values]) => [name, [...values][0]!]));
  return [...found].flatMap(([name, values]) => [...values].map((value) => ({ ...first, [name]: value })));
}

describe('each message', () => {
  test('is said alike', () => {
    let said = 0;
    for (const [key, message] of Object.entries(messages)) {
      const parts = compiled(message);
      if (typeof parts === 'string') continue;
      for (const values of tries(asked(parts))) {
        const own = new Sent(parts as never, 'en').format(values);
        expect(own, key).toBe(String(new IntlMessageFormat(message, 'en').format(values)));
        said += 1;
      }
    }
    expect(said).toBeGreaterThan(400);
  });

  test('that lacks a value is refused, not said with a hole', () => {
    expect(() => new Sent(compiled('{flow} left') as never, 'en').format({})).toThrow(/flow/);
  });
});

describe('messages sent with a part of the app', () => {
  const sources = import.meta.glob<string>('/src/**/*.{ts,svelte}', {
    query: '?raw',
    import: 'default',
    eager: true,
  });

  test.each(SAID_WITH)('$keys are said there alone', ({ keys, by }) => {
    expect(Object.keys(messages).some((key) => keys.test(key))).toBe(true);
    const named = Object.entries(sources).filter(([path, text]) => {
      const calls = [...text.matchAll(/\bsay\(\s*(?:[^'"`()]*\?\s*)?['"`]([a-z-]+\.[^'"`]*)/g)];
      return !path.startsWith('/src/i18n/') && calls.some(([, key]) => keys.test(key!));
    });
    expect(named.length).toBeGreaterThan(0);
    const elsewhere = named.map(([path]) => path).filter((path) => !by.test(path));
    expect(elsewhere.filter((path) => !HELD.includes(path))).toEqual([]);
  });
});
