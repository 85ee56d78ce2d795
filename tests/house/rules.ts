/** The house rules as functions of text, so that each can be shown to fail. Each returns what is wrong. */
import { posix } from 'node:path';

export interface Direction {
  /** Modules whose door may be imported. */
  imports: string[];
  /** Modules of which only types may be imported. */
  types: string[];
  /** Places outside the module that a relative path may reach. */
  folders: string[];
}
export type Directions = Record<string, Direction>;

const TOP_LEVEL = new Set([
  ...['package.json', 'package-lock.json', 'tsconfig.json', 'svelte.config.js', 'vite.config.ts'],
  ...['eslint.config.js', 'README.md', 'DEVELOPERS.md', 'LICENSE'],
  ...['src', 'static', 'lessons', 'tests', 'seeds', '.ci', '.gitignore', '.prettierignore', '.npmrc'],
]);

export function strays(paths: readonly string[]): string[] {
  return [...new Set(paths.map((path) => path.split('/')[0] ?? ''))].filter((name) => !TOP_LEVEL.has(name));
}

export const MOST_LINES = 400;

export function tooLong(path: string, text: string): string[] {
  const lines = text.replace(/\n$/, '').split('\n').length;
  return lines > MOST_LINES ? [`${path}: ${lines} lines, at most ${MOST_LINES}`] : [];
}

export function notPinned(dependencies: Record<string, string>): string[] {
  return Object.entries(dependencies)
    .filter(([, version]) => !/^\d+\.\d+\.\d+(-[0-9A-Za-z.-]+)?$/.test(version))
    .map(([name, version]) => `${name}: ${version} is not one exact version`);
}

/** A name counts as mentioned when it stands by itself, not inside a longer package name. */
export function notMentioned(names: readonly string[], text: string): string[] {
  return names.filter((name) => {
    const plain = name.replace(/[.*+?^${}()|[\]\\/]/g, '\\$&');
    return !new RegExp(`(?<![\\w@/-])${plain}(?![\\w/-])`).test(text);
  });
}

const OWN_HOSTS = /^(www\.w3\.org|localhost|127\.0\.0\.1)$/;

/** Addresses of other origins, those that leave the protocol to the page included. */
export function otherOrigins(path: string, text: string): string[] {
  const full = [...text.matchAll(/\b(?:https?|wss?):\/\/([A-Za-z0-9.-]+)/g)];
  const bare = [...text.matchAll(/(?:\b(?:src|href)=|url\(|import\s*\(?|from)\s*["']?\/\/([A-Za-z0-9.-]+)/g)];
  return [...full, ...bare]
    .filter((match) => !OWN_HOSTS.test(match[1] ?? ''))
    .map((match) => `${path}: ${match[0]}`);
}

export interface Import {
  from: string;
  /** Whether nothing of it is left once types are gone. */
  typesOnly: boolean;
  /** What is taken: `{ a, b }`, `* as d3`, ... */
  what: string;
}

/** Comments may quote an import; a string, such as a glob, may look like a comment and is kept. */
const withoutComments = (text: string) =>
  text.replace(
    /('(?:\\.|[^'\\\n])*'|"(?:\\.|[^"\\\n])*"|`(?:\\.|[^`\\])*`)|\/\*[\s\S]*?\*\/|\/\/.*$/gm,
    '$1',
  );

/** Static imports, `export ... from`, `import()` and `import.meta.glob`, in TypeScript and Svelte alike. */
export function importsOf(text: string): Import[] {
  const source = withoutComments(text);
  const found: Import[] = [];
  const statement = /(?:^|[\n;>])\s*(?:import|export)\b([^;'"`()]*?)\bfrom\s*['"]([^'"]+)['"]/g;
  for (const [, what = '', from = ''] of source.matchAll(statement)) {
    const inner = /^\s*\{([^}]*)\}\s*$/.exec(what)?.[1];
    const names = inner
      ?.split(',')
      .map((name) => name.trim())
      .filter(Boolean);
    const typesOnly =
      /^\s*type\s+(?!from\b)/.test(what) || (names?.every((name) => /^type\s/.test(name)) ?? false);
    found.push({ from, what: what.trim(), typesOnly });
  }
  for (const [, from = ''] of source.matchAll(/(?:^|[\n;>])\s*import\s*['"]([^'"]+)['"]/g)) {
    found.push({ from, what: '', typesOnly: false });
  }
  // A type such as `import('#physics').Rig` is not told apart from a call: neither is a house habit.
  for (const [, from = ''] of source.matchAll(/\bimport\s*\(\s*['"`]([^'"`]+)['"`]/g)) {
    found.push({ from, what: 'import()', typesOnly: false });
  }
  for (const [, inside = ''] of source.matchAll(
    /\bimport\.meta\.glob\s*(?:<[^(]*>)?\(\s*(\[[^\]]*\]|['"`][^'"`]+['"`])/g,
  )) {
    for (const [, from = ''] of inside.matchAll(/['"`]!?([^'"`]+)['"`]/g)) {
      found.push({ from, what: 'glob', typesOnly: false });
    }
  }
  return found;
}

function crossing(path: string, { from, typesOnly }: Import, directions: Directions): string | undefined {
  const name = /^src\/([^/]+)\//.exec(path)?.[1];
  const direction = name === undefined ? undefined : directions[name];
  if (name === undefined || !direction) return 'is in no module of the directions';
  if (from.startsWith('.') || from.startsWith('/')) {
    const target = from.startsWith('/') ? from.slice(1) : posix.join(posix.dirname(path), from);
    const inside = (folder: string) => target === folder || target.startsWith(`${folder}/`);
    if ([`src/${name}`, ...direction.folders].some(inside)) return undefined;
    return `leaves src/${name}`;
  }
  if (name === 'physics') return 'the engine imports nothing outside itself';
  if (!from.startsWith('#')) return undefined;
  const door = from.slice(1);
  if (door.includes('/')) return 'goes past a door';
  if (direction.imports.includes(door)) return undefined;
  if (!direction.types.includes(door)) return `src/${name} may not import it`;
  return typesOnly ? undefined : `src/${name} may import only its types`;
}

/** Imports against the directions, for a file of src that lies in a module. */
export function wrongImports(path: string, text: string, directions: Directions): string[] {
  return importsOf(text).flatMap((one) => {
    const reason = crossing(path, one, directions);
    return reason === undefined ? [] : [`${path}: ${one.from}: ${reason}`];
  });
}

/** Taking d3 whole: as a namespace, by `export *`, or by `import()`. */
export function wholeD3(path: string, text: string): string[] {
  return importsOf(text)
    .filter(({ from, what }) => /^d3\b/.test(from) && (/^(type\s+)?\*/.test(what) || what === 'import()'))
    .map(({ from }) => `${path}: takes all of ${from}`);
}

const NOT_FOR_THE_ENGINE =
  /\bMath\s*\.\s*random\b|\bnew\s+Date\b|\bDate\s*\.|\bperformance\s*\.|\b(?:document|window|globalThis)\s*[.[]|\bset(?:Timeout|Interval)\b/g;

/** A clock, a page or chance in the engine. */
export function unfitForEngine(path: string, text: string): string[] {
  return [...withoutComments(text).matchAll(NOT_FOR_THE_ENGINE)].map((match) => `${path}: ${match[0]}`);
}
