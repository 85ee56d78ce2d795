/** Recommended rules, and the import directions of tests/house/directions.json, folder by folder. */
import { readFileSync } from 'node:fs';
import js from '@eslint/js';
import svelte from 'eslint-plugin-svelte';
import globals from 'globals';
import ts from 'typescript-eslint';
import svelteConfig from './svelte.config.js';

const read = (path) => JSON.parse(readFileSync(new URL(path, import.meta.url), 'utf8'));

/** Per folder of src: doors it may import, doors it may import types from, folders its paths may reach. */
const directions = read('tests/house/directions.json');
const doors = Object.keys(read('package.json').imports).map((door) => door.slice(1));

/** How deep folders go below src/<module>; the house test reads every depth. */
const DEPTHS = [0, 1, 2, 3];

const wholeD3 = {
  selector:
    ':matches(ImportDeclaration[source.value=/^d3/] > ImportNamespaceSpecifier, ExportAllDeclaration[source.value=/^d3/], ImportExpression[source.value=/^d3/])',
  message: 'Import what you use from d3 by name: the whole namespace does not shake.',
};

const deep = { regex: '^#[^/]+/', message: 'Import a module through its one door, such as #physics.' };

function patternsFor(name, depth) {
  const { imports, types, folders } = directions[name];
  const out = '\\.\\./'.repeat(depth + 1);
  // From src/<module>/..., one step out is src and two are the project's top.
  const reach = folders.map((folder) =>
    folder.startsWith('src/') ? folder.slice('src/'.length) : `\\.\\./${folder}/`,
  );
  const closed = doors.filter((door) => !imports.includes(door) && !types.includes(door));
  return [
    deep,
    {
      regex: reach.length ? `^${out}(?!${reach.join('|')})` : `^${out}`,
      message: `A path may not leave src/${name}; import another module through its door.`,
    },
    ...(closed.length
      ? [{ regex: `^#(${closed.join('|')})$`, message: `src/${name} may not import this module.` }]
      : []),
    ...(types.length
      ? [
          {
            regex: `^#(${types.join('|')})$`,
            allowTypeImports: true,
            message: `src/${name} may import only types from this module.`,
          },
        ]
      : []),
    ...(name === 'physics'
      ? [{ regex: '^[^.]', message: 'The engine imports nothing outside itself.' }]
      : []),
  ];
}

const directionRules = Object.keys(directions).flatMap((name) =>
  DEPTHS.map((depth) => ({
    files: [`src/${name}/${'*/'.repeat(depth)}*.{ts,js,svelte}`],
    rules: {
      '@typescript-eslint/no-restricted-imports': ['error', { patterns: patternsFor(name, depth) }],
    },
  })),
);

/** The engine has no clock, no page and no chance that is not handed to it. */
const engine = {
  files: ['src/physics/**/*.ts'],
  rules: {
    'no-restricted-globals': [
      'error',
      ...['Date', 'performance', 'document', 'window', 'globalThis', 'process', 'console', 'crypto'],
      ...['setTimeout', 'setInterval', 'requestAnimationFrame', 'localStorage', 'fetch'],
    ],
    'no-restricted-properties': ['error', { object: 'Math', property: 'random', message: 'Take a random.' }],
  },
};

export default ts.config(
  { ignores: ['build/', '.svelte-kit/', 'node_modules/'] },
  js.configs.recommended,
  ...ts.configs.recommended,
  ...svelte.configs.recommended,
  {
    languageOptions: { globals: { ...globals.browser, ...globals.node } },
    linterOptions: { reportUnusedDisableDirectives: 'error' },
    rules: {
      // TypeScript knows every name already, ambient ones included.
      'no-undef': 'off',
      'no-restricted-syntax': ['error', wholeD3],
      '@typescript-eslint/consistent-type-imports': 'error',
      // A leading underscore says "not used" to TypeScript as well.
      '@typescript-eslint/no-unused-vars': ['error', { argsIgnorePattern: '^_', varsIgnorePattern: '^_' }],
    },
  },
  {
    files: ['**/*.svelte', '**/*.svelte.ts'],
    languageOptions: { parserOptions: { parser: ts.parser, svelteConfig } },
  },
  ...directionRules,
  engine,
);
