import { sveltekit } from '@sveltejs/kit/vite';
import { svelteTesting } from '@testing-library/svelte/vite';
import { messageCompiler } from './src/i18n/compile.ts';
import { defaultClientConditions, defaultServerConditions, type Plugin } from 'vite';
import { configDefaults, defineConfig } from 'vitest/config';

const component = 'tests/**/*.svelte.test.ts';
const browser = 'tests/browser/**/*.browser.test.ts';

/** Which messages `#language` stands for. */
const language = process.env.LOST_LITRES_LANGUAGE ?? 'en';

/** The curve makers d3-shape calls as it loads are marked as doing nothing else, so that unused ones are left out. */
const unusedCurves: Plugin = {
  name: 'unused-curves',
  apply: 'build',
  transform(code, id) {
    if (!/\/d3-shape\/dist\/d3-shape\.mjs$/.test(id)) return null;
    return { code: code.replaceAll('= (function custom(', '= /* @__PURE__ */ (function custom('), map: null };
  },
};

/** Svelte's runtime in one piece packs 5 kB better than in the thirty its sharing would make, and is fetched in one. */
const inOnePiece = (id: string) => (/node_modules\/(svelte|esm-env|clsx)\//.test(id) ? 'svelte' : undefined);

/** Three kinds of test, told apart by file name; `src/commands/test.ts` fails when a kind ran nothing. */
export default defineConfig({
  plugins: [messageCompiler(language), unusedCurves, sveltekit()],
  build: { rollupOptions: { output: { manualChunks: inOnePiece } } },
  ...(language === 'en'
    ? {}
    : {
        resolve: { conditions: [language, ...defaultClientConditions] },
        ssr: { resolve: { conditions: [language, ...defaultServerConditions] } },
      }),
  test: {
    globals: true,
    projects: [
      {
        extends: true,
        test: {
          name: 'unit',
          environment: 'node',
          include: ['tests/**/*.test.ts'],
          exclude: [...configDefaults.exclude, component, browser],
        },
      },
      {
        // The browser half of Svelte in jsdom: components, and runes in `.svelte.ts` files.
        extends: true,
        plugins: [svelteTesting()],
        test: { name: 'component', environment: 'jsdom', include: [component] },
      },
      {
        // A real Chromium on the built pages, last and one file at a time so that timings mean something.
        extends: true,
        test: {
          name: 'browser',
          environment: 'node',
          include: [browser],
          globalSetup: ['tests/browser/support/site.ts'],
          fileParallelism: false,
          sequence: { groupOrder: 1 },
          testTimeout: 120_000,
          hookTimeout: 120_000,
        },
      },
    ],
  },
});
