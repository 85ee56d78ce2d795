/** Runs a table of bad rigs: each must be refused at its path, in words that say what was found and allowed. */
import { describe, expect, it } from 'vitest';
import { readRig, tell, type ProblemCode } from '#catalogue';
import { changed, type Loose } from './changed.ts';

/** What is wrong, the change, the path blamed, and words the message must hold. */
export type Case = readonly [
  what: string,
  change: (rig: Loose) => unknown,
  code: ProblemCode,
  path: string,
  ...words: string[],
];

export function refuses(group: string, cases: readonly Case[]): void {
  describe(`a bad rig: ${group}`, () => {
    it.each(cases.map((one) => [one[0], one] as const))('%s', (_what, [, change, code, path, ...words]) => {
      const read = readRig(changed(change), 'a-rig.json');
      if (read.ok) throw new Error('accepted');
      const problem = read.problems.find((each) => each.code === code && each.path === path);
      if (problem === undefined) throw new Error(`refused as:\n${read.problems.map(tell).join('\n')}`);
      const message = tell(problem);
      expect(message).not.toContain('\n');
      expect(message).toContain(`a-rig.json: ${path}: found ${problem.found}; allowed: ${problem.allowed}`);
      for (const word of words) expect(message).toContain(word);
      // The same place is not blamed twice for the same thing.
      const places = read.problems.map((each) => `${each.code} ${each.path}`);
      expect(new Set(places).size).toBe(places.length);
    });
  });
}
