/** Every state of the gallery, drawn as text, against the one that is stored. */
import { existsSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { render } from 'svelte/server';
import { describe, expect, test } from 'vitest';
import { defaults } from '#units';
import State from '../../src/routes/gallery/State.svelte';
import { groups } from '../../src/routes/gallery/states.ts';
import { ACCEPT, compared, difference, storing } from './stored.ts';
import { pretty, rounded, storedText, onlyNew } from './text.ts';

const folder = join(import.meta.dirname, 'stored');
const states = groups.flatMap((group) => group.states);
const seen = new Map<string, string>();
/** All files together, so that nobody has to wait for them. */
const MOST_BYTES = 3_000_000;

describe('the stored pictures', () => {
  test('no two states share a name', () => {
    expect(new Set(states.map(({ id }) => id)).size).toBe(states.length);
  });

  for (const { id, title, body } of states)
    test(`${id}: ${title}`, () => {
      const { body: html } = render(State, { props: { body, choice: defaults, id } });
      const now = storedText(html, title, body.kind === 'scene', (svg) => onlyNew(svg, id, seen));
      expect(now).not.toMatch(/NaN|undefined|Infinity/);
      const complaint = compared(join(folder, `${id}.svg`), `"${title}" (${id})`, now);
      if (complaint) throw new Error(complaint);
    });

  test('are of states there are, and not too heavy', () => {
    const known = new Set(states.map(({ id }) => `${id}.svg`));
    const files = existsSync(folder) ? readdirSync(folder) : [];
    const gone = files.filter((file) => !known.has(file));
    if (storing) gone.forEach((file) => rmSync(join(folder, file)));
    else expect(gone, `stored for no state; ${ACCEPT} takes them away`).toEqual([]);
    const bytes = files.reduce(
      (sum, file) => sum + (known.has(file) ? readFileSync(join(folder, file)).length : 0),
      0,
    );
    expect(bytes).toBeLessThan(MOST_BYTES);
  });
});

describe('a picture as text', () => {
  test('has three decimals, and no minus before a nought', () => {
    expect(rounded('M1.23456,-0.00001L7.5 0.1')).toBe('M1.235,0L7.5 0.1');
  });

  test('stands one element a line, and ids do not depend on what was drawn before', () => {
    const one =
      '<svg class="svelte-1abc"><!--[--><g><path d="M0,0L1,1"/></g><text id="s12-lost">a</text></svg>';
    const text = storedText(one, 'One', true);
    expect(text.split('\n').slice(1)).toEqual([
      '  <title>One</title>',
      '  <g>',
      '    <path d="M0,0L1,1"/>',
      '  </g>',
      '  <text id="id1-lost">a</text>',
      '</svg>',
      '',
    ]);
    expect(storedText(one.replace('s12', 's40'), 'One', true)).toBe(text);
    expect(pretty('<p>a</p><p></p>')).toBe('<p>a</p>\n<p></p>\n');
  });

  test('shows a long path once, and names the state that shows it from then on', () => {
    const long = 'M0,0L1,1'.repeat(30);
    const drawing = `<path d="${long}"/><path d="M1,1"/>`;
    const before = new Map<string, string>();
    expect(onlyNew(drawing, 'first', before)).toBe(drawing);
    expect(onlyNew(drawing, 'second', before)).toBe('<path d="as in first.svg"/><path d="M1,1"/>');
    const moved = drawing.replace('0,0', '0,1');
    expect(onlyNew(moved, 'third', before)).toBe(moved);
  });

  test('a difference is told by its lines', () => {
    expect(difference('a\nb\nc', 'a\nx\ny\nc')).toEqual([
      'from line 2, - stored, + now',
      '- b',
      '+ x',
      '+ y',
    ]);
    expect(difference('1\n2\n3', '4\n5\n6', 1)).toEqual([
      'from line 1, - stored, + now',
      ...['- 1', '- and 2 lines more', '+ 4', '+ and 2 lines more'],
    ]);
    expect(compared('/nowhere/a.svg', 'The fan', 'text', false)).toContain('not stored yet');
    expect(compared(import.meta.filename, 'This file', 'text', false)).toContain(ACCEPT);
  });
});
