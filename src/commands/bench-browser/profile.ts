/** Books the samples of a processor profile to the files of the source the time was spent in. */
import { existsSync, readFileSync } from 'node:fs';
import { SourceMap, type SourceMapPayload } from 'node:module';
import { join } from 'node:path';

export interface CpuProfile {
  readonly nodes: readonly {
    readonly id: number;
    readonly callFrame: {
      readonly functionName: string;
      readonly url: string;
      readonly lineNumber: number;
      readonly columnNumber: number;
    };
    readonly children?: readonly number[];
  }[];
  readonly samples?: readonly number[];
  readonly timeDeltas?: readonly number[];
}

export interface Cost {
  readonly name: string;
  readonly ms: number;
}

export interface Account {
  /** Milliseconds of script in a frame by what they were spent on. */
  readonly parts: readonly Cost[];
  /** Own time of single functions, dearest first. */
  readonly functions: readonly Cost[];
}

/** Parts of an update, the first that fits counts. */
const PARTS: readonly (readonly [string, RegExp])[] = [
  ['Svelte', /node_modules\/(svelte|esm-env)/],
  ['engine', /src\/(physics|session|catalogue)\//],
  ['scene, laying out', /src\/scene\/(layout\/|.*\.ts)/],
  ['scene, marks', /src\/scene\//],
  ['charts, laying out', /src\/charts\/.*\.ts|node_modules\/d3/],
  ['charts, marks', /src\/charts\//],
  ['words and numbers', /src\/(i18n|units)\/|intl-messageformat|formatjs/],
  ['the page', /src\//],
];

export const partOf = (file: string): string | undefined => PARTS.find(([, files]) => files.test(file))?.[0];

/** Where in the source a place of a built script comes from. */
export type Origin = (url: string, line: number, column: number) => string | undefined;

export function originsIn(folder: string): Origin {
  const maps = new Map<string, SourceMap | undefined>();
  const load = (path: string): SourceMap | undefined => {
    const file = join(folder, `${path}.map`);
    if (!existsSync(file)) return undefined;
    return new SourceMap(JSON.parse(readFileSync(file, 'utf8')) as SourceMapPayload);
  };
  return (url, line, column) => {
    if (!url.startsWith('http')) return undefined;
    const path = new URL(url).pathname;
    if (!maps.has(path)) maps.set(path, load(path));
    const entry = maps.get(path)?.findEntry(line, column);
    if (!entry || !('originalSource' in entry)) return undefined;
    const source = entry.originalSource.replace(/^.*?(?=\b(?:src|node_modules)\/)/, '');
    return `${source}:${entry.originalLine + 1}`;
  };
}

/**
 * Samples taken by the clock, brought to the processor time script has in a frame, `script_ms`, so that other work
 * on the machine drops out. The browser's own functions are booked to their caller in the source.
 */
export function attribute(
  profile: CpuProfile,
  where: string | Origin,
  script_ms: number,
  most = 14,
): Account {
  const origin = typeof where === 'string' ? originsIn(where) : where;
  const parents = new Map<number, number>();
  const places = new Map<number, { place: string | undefined; name: string }>();
  for (const { id, children, callFrame } of profile.nodes) {
    for (const child of children ?? []) parents.set(child, id);
    const { url, lineNumber, columnNumber, functionName } = callFrame;
    places.set(id, { place: origin(url, lineNumber, columnNumber), name: functionName });
  }
  const parts = new Map<string, number>();
  const functions = new Map<string, number>();
  const add = (to: Map<string, number>, name: string, ms: number) => to.set(name, (to.get(name) ?? 0) + ms);
  let whole = 0;
  (profile.samples ?? []).forEach((id, i) => {
    const time = Math.max(0, profile.timeDeltas?.[i] ?? 0);
    const leaf = places.get(id)!;
    let at: number | undefined = id;
    while (at !== undefined && places.get(at)!.place === undefined) at = parents.get(at);
    const place = at === undefined ? undefined : places.get(at)!.place;
    const garbage = leaf.name === '(garbage collector)';
    // Idle, and the browser's style, layout and paint, which the trace knows better.
    if (place === undefined && !garbage) return;
    whole += time;
    add(parts, place === undefined ? 'collecting garbage' : (partOf(place) ?? 'other'), time);
    if (place === undefined) return;
    const native = leaf.place === undefined && leaf.name ? `${leaf.name} in ` : '';
    add(functions, `${native}${place}`, time);
  });
  const sorted = (from: Map<string, number>) =>
    [...from].map(([name, time]) => ({ name, ms: (time / whole) * script_ms })).sort((a, b) => b.ms - a.ms);
  return { parts: sorted(parts), functions: sorted(functions).slice(0, most) };
}
