/** Every house rule on small good and bad examples: a rule that cannot fail holds nothing. */
import { describe, expect, test } from 'vitest';
import directions from './directions.json' with { type: 'json' };
import * as rules from './rules.ts';

const wrong = (path: string, text: string) => rules.wrongImports(path, text, directions).length;

describe('house rules', () => {
  test('a stray top-level name', () => {
    expect(rules.strays(['src/app.css', 'notes.txt', 'docs/a.md', '.ci/run'])).toEqual(['notes.txt', 'docs']);
  });

  test('a file one line too long', () => {
    expect(rules.tooLong('a.ts', 'x\n'.repeat(400))).toEqual([]);
    expect(rules.tooLong('a.ts', 'x\n'.repeat(401))).toEqual(['a.ts: 401 lines, at most 400']);
  });

  test('a version that may move', () => {
    const moving = {
      a: '^1.0.0',
      b: '~1.0.0',
      c: '1',
      d: 'latest',
      e: 'file:../e',
      f: '>=1.0.0',
      g: '1.0.x',
    };
    expect(rules.notPinned({ fine: '1.2.3', next: '1.2.3-rc.1' })).toEqual([]);
    expect(rules.notPinned(moving)).toHaveLength(7);
  });

  test('a dependency nobody explains', () => {
    const text = 'We use `svelte-check`, `@sveltejs/kit` and `@types/d3`.';
    expect(rules.notMentioned(['svelte-check', '@sveltejs/kit', 'svelte', 'd3', 'kit'], text)).toEqual([
      'svelte',
      'd3',
      'kit',
    ]);
  });

  test('an address of another origin', () => {
    const other = (text: string) => rules.otherOrigins('a', text).length;
    expect(other('xmlns="http://www.w3.org/2000/svg" http://localhost:4173/ // a comment')).toBe(0);
    expect(other('fetch("https://example.com/x")')).toBe(1);
    expect(other('new WebSocket("wss://example.com")')).toBe(1);
    expect(other('<script src="//example.com/x.js">')).toBe(1);
    expect(other('@import url(//example.com/x.css)')).toBe(1);
    expect(other('http://www.w3.org.example.com/')).toBe(1);
  });

  test('an import against the directions', () => {
    expect(wrong('src/physics/solve.ts', "import { a } from './a.ts';\nimport { b } from '../b.ts';")).toBe(
      1,
    );
    expect(wrong('src/physics/faults/a.ts', "import type { Rig } from '../types.ts';")).toBe(0);
    expect(wrong('src/physics/faults/a.ts', "import type { Quantity } from '#units';")).toBe(1);
    expect(wrong('src/physics/solve.ts', "import { sum } from 'd3';")).toBe(1);
    expect(wrong('src/charts/A.svelte', "<script>import { solve } from '#physics';</script>")).toBe(1);
    expect(wrong('src/charts/A.svelte', "<script>import type { Rig } from '#physics';</script>")).toBe(0);
    expect(wrong('src/charts/a.ts', "import {\n  type Rig,\n  type Piece,\n} from '#physics';")).toBe(0);
    expect(wrong('src/charts/a.ts', "import { type Rig, solve } from '#physics';")).toBe(1);
    expect(wrong('src/charts/a.ts', "export { solve } from '#physics';")).toBe(1);
    expect(wrong('src/charts/a.ts', "const engine = await import('#physics');")).toBe(1);
    expect(wrong('src/lesson/machine.ts', "import { session } from '#session';")).toBe(1);
    expect(wrong('src/lesson/machine.ts', "import type { Scene } from '#scene';")).toBe(1);
    expect(wrong('src/routes/+page.server.ts', "import { lessons } from '#lesson-load';")).toBe(0);
    expect(wrong('src/ui/a.ts', "import { lessons } from '#lesson-load';")).toBe(1);
    expect(wrong('src/session/a.ts', "import { friction } from '#physics/friction.ts';")).toBe(1);
    expect(wrong('src/ui/a.ts', "import { show } from '../units/show.ts';")).toBe(1);
    expect(wrong('src/catalogue/a.ts', "import.meta.glob('../../seeds/**/*.json');")).toBe(0);
    expect(wrong('src/catalogue/a.ts', "import.meta.glob<Raw>(['../../lessons/*.json']);")).toBe(1);
    expect(wrong('src/routes/a/+page.svelte', "<script>\n  import '../../app.css';\n</script>")).toBe(0);
    expect(wrong('src/commands/solve.ts', "import { solve } from '#physics';")).toBe(0);
    expect(wrong('src/newcomer/a.ts', "import { solve } from '#physics';")).toBe(1);
  });

  test('an import that is only talked about', () => {
    expect(rules.importsOf("// import { a } from '#scene';\n/* import '#ui'; */ const from = 'x';")).toEqual(
      [],
    );
  });

  test('d3 taken whole', () => {
    const whole = (text: string) => rules.wholeD3('a', text).length;
    expect(whole("import { scaleLinear } from 'd3';")).toBe(0);
    expect(whole("import * as d3 from 'd3';")).toBe(1);
    expect(whole("export * from 'd3-shape';")).toBe(1);
    expect(whole("const d3 = await import('d3');")).toBe(1);
  });

  test('a clock, a page or chance in the engine', () => {
    const unfit = (text: string) => rules.unfitForEngine('a', text).length;
    expect(unfit('const air = { temperature_C: 20 }; // not Math.random()')).toBe(0);
    for (const bad of ['Math.random()', 'new Date()', 'Date.now()', 'performance.now()', 'document.title']) {
      expect(unfit(bad), bad).toBe(1);
    }
  });
});
