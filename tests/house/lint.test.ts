/** The lint rules that hold the import directions, on code that breaks them. */
import { ESLint } from 'eslint';
import { describe, expect, test } from 'vitest';
import { root } from '../../src/commands/run.ts';

const eslint = new ESLint({ cwd: root });

async function rulesBroken(filePath: string, code: string): Promise<string[]> {
  const [result] = await eslint.lintText(code, { filePath });
  return (result?.messages ?? []).map((message) => message.ruleId ?? message.message);
}

const imports = '@typescript-eslint/no-restricted-imports';
const using = (name: string, from: string) =>
  `import { ${name} } from '${from}';\nexport const x = ${name};\n`;
const typing = (name: string, from: string) =>
  `import type { ${name} } from '${from}';\nexport type X = ${name};\n`;

describe('eslint', { timeout: 60_000 }, () => {
  test.each([
    ['src/physics/a.ts', using('show', '#units')],
    ['src/physics/a.ts', using('sum', 'd3')],
    ['src/physics/a.ts', using('a', '../units/show.ts')],
    ['src/physics/faults/a.ts', using('a', '../../units/show.ts')],
    ['src/scene/a.ts', using('solve', '#physics')],
    [
      'src/charts/A.svelte',
      `<script lang="ts">\n${using('solve', '#physics').split('\n')[0]}\n  solve;\n</script>`,
    ],
    ['src/ui/a.svelte.ts', using('session', '#session')],
    ['src/lesson/a.ts', typing('Scene', '#scene')],
    ['src/lesson/a.ts', using('Frame', '#charts')],
    ['src/session/a.ts', using('lessons', '#lesson-load')],
    ['src/session/a.ts', using('friction', '#physics/friction.ts')],
    ['src/catalogue/a.ts', using('x', '../../lessons/x.json')],
    ['src/routes/lessons/+page.ts', using('solve', '#physics')],
  ])('an import against the directions in %s', async (file, code) => {
    expect(await rulesBroken(file, code)).toContain(imports);
  });

  test.each([
    ['src/physics/faults/a.ts', using('a', '../air.ts')],
    ['src/scene/a.ts', typing('Rig', '#physics')],
    ['src/catalogue/a.ts', using('x', '../../seeds/x.json')],
    ['src/session/a.ts', using('solve', '#physics')],
    ['src/routes/lessons/+page.ts', "import '../../app.css';\n" + using('say', '#i18n')],
    ['src/commands/a.ts', using('solve', '#physics')],
    ['src/charts/a.ts', using('scaleLinear', 'd3')],
  ])('an import along the directions in %s', async (file, code) => {
    expect(await rulesBroken(file, code)).toEqual([]);
  });

  test.each([
    ['src/physics/a.ts', 'export const x = Math.random();', 'no-restricted-properties'],
    ['src/physics/a.ts', 'export const x = Date.now();', 'no-restricted-globals'],
    ['src/physics/a.ts', 'export const x = performance.now();', 'no-restricted-globals'],
    ['src/physics/a.ts', 'export const x = document.title;', 'no-restricted-globals'],
    ['src/charts/a.ts', "import * as d3 from 'd3';\nexport const x = d3.sum;", 'no-restricted-syntax'],
    ['src/charts/a.ts', "export * from 'd3';", 'no-restricted-syntax'],
    ['tests/a.test.ts', "export const x = await import('d3');", 'no-restricted-syntax'],
  ])('in %s: %s', async (file, code, rule) => {
    expect(await rulesBroken(file, code)).toEqual([rule]);
  });
});
