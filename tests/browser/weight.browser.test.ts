/** The size budget: gzipped script a reader of each route has to fetch before the page is alive. */
import { existsSync, readFileSync } from 'node:fs';
import { join, posix } from 'node:path';
import { gzipSync } from 'node:zlib';
import { describe, expect, test } from 'vitest';
import { page, problemsOf, site } from './support/page.ts';

/** 1 kB = 1000 bytes, the stricter reading. */
const BUDGETS = [
  // Its picture is solved while the page is built: it sends no script at all.
  { route: '/', most_kB: 0, least: 0 },
  // 110 was the aim; see DEVELOPERS.md for what is in it.
  { route: '/lessons/five-small-faults', most_kB: 152, least: 3 },
];

/** Routes with a budget that are not built yet. A route here that is built fails until it leaves the list. */
const NOT_BUILT_YET: string[] = [];

/** The prerendered page of a route, as a path inside the built folder, or nothing. */
function pageOf(folder: string, route: string): string | undefined {
  const inside = route.slice(1);
  return [`${inside}.html`, posix.join(inside, 'index.html')].find((file) => existsSync(join(folder, file)));
}

/** Every script `html` names: preloaded, as `<script src>`, or imported by the starting script. */
export function scriptsIn(html: string): string[] {
  const links = [...html.matchAll(/<link\b[^>]*>/g)]
    .map(([tag]) => tag)
    .filter((tag) => /rel="modulepreload"/.test(tag))
    .map((tag) => /href="([^"]+)"/.exec(tag)?.[1]);
  const sources = [...html.matchAll(/<script\b[^>]*\bsrc="([^"]+)"/g)].map((match) => match[1]);
  const imports = [...html.matchAll(/\bimport\("([^"]+)"\)/g)].map((match) => match[1]);
  return [...links, ...sources, ...imports].filter((path) => path !== undefined);
}

/** What a built script imports outright; `import()` is left out, it may never be fetched. */
export function importsIn(script: string): string[] {
  return [...script.matchAll(/\b(?:from|import)\s*"(\.[^"]+)"/g)].map((match) => match[1] ?? '');
}

function preloaded(folder: string, file: string): Set<string> {
  const waiting = scriptsIn(readFileSync(join(folder, file), 'utf8')).map((path) =>
    posix.join(posix.dirname(file), path),
  );
  const seen = new Set<string>();
  for (let path = waiting.pop(); path !== undefined; path = waiting.pop()) {
    if (seen.has(path)) continue;
    seen.add(path);
    const here = posix.dirname(path);
    waiting.push(
      ...importsIn(readFileSync(join(folder, path), 'utf8')).map((next) => posix.join(here, next)),
    );
  }
  return seen;
}

/** The scripts a real browser fetches until the page has gone quiet. */
async function fetched(route: string): Promise<Set<string>> {
  const visit = await page();
  const seen = new Set<string>();
  visit.on('request', (request) => {
    const { pathname } = new URL(request.url());
    if (request.resourceType() === 'script' || pathname.endsWith('.js')) seen.add(pathname.slice(1));
  });
  await visit.goto(route, { waitUntil: 'networkidle' });
  expect(problemsOf(visit)).toEqual([]);
  await visit.context().close();
  return seen;
}

describe('script per route, gzip', () => {
  for (const { route, most_kB, least } of BUDGETS.filter((budget) => !NOT_BUILT_YET.includes(budget.route))) {
    test(`${route} needs at most ${most_kB} kB`, async () => {
      const { folder } = site();
      const file = pageOf(folder, route);
      if (file === undefined) throw new Error(`${route} is not built`);
      const scripts = new Set([...preloaded(folder, file), ...(await fetched(route))]);
      expect(scripts.size).toBeGreaterThanOrEqual(least);
      const sizes = [...scripts].map((path) => gzipSync(readFileSync(join(folder, path))).length / 1000);
      const total_kB = sizes.reduce((sum, size) => sum + size, 0);
      console.log(`${route}: ${total_kB.toFixed(1)} kB of ${most_kB} kB in ${scripts.size} scripts`);
      expect(total_kB).toBeLessThanOrEqual(most_kB);
    });
  }

  test('no route waits in the list of unbuilt ones once it is built', () => {
    expect(NOT_BUILT_YET.filter((route) => pageOf(site().folder, route) !== undefined)).toEqual([]);
  });

  test('scripts are found in a page and in a script', () => {
    const html =
      '<link href="./_app/a.js" rel="modulepreload"><link rel="stylesheet" href="./x.css">' +
      '<script>Promise.all([import("./_app/b.js")])</script><script src="./c.js"></script>';
    expect(scriptsIn(html)).toEqual(['./_app/a.js', './c.js', './_app/b.js']);
    expect(importsIn('import{a}from"./d.js";import"../e.js";import("./late.js");')).toEqual([
      './d.js',
      '../e.js',
    ]);
  });
});
