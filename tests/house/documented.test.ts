/** Every function a module lets out says what it does; the engine's say in what unit. */
import { expect, test } from 'vitest';
import { undocumented } from './documented.ts';

test.each([
  ['src/physics/index.ts', true],
  ['src/units/index.ts', false],
  ['src/catalogue/index.ts', false],
  ['src/session/lesson-engine.ts', false],
  ['src/lesson/index.ts', false],
] as const)(
  '%s',
  (door, units) => {
    expect(undocumented(door, units)).toEqual([]);
  },
  60_000,
);

test('a function without a comment, or with a bare number, is found', () => {
  const text = `
    export function silent(): void {}
    /** Doubles it. */
    export function bare(x: number): number { return 2 * x; }
    /** Doubles a pressure in Pa. */
    export function told(x: number): number { return 2 * x; }
    /** Doubles it. */
    export function named_Pa(x_Pa: number): number { return 2 * x_Pa; }
  `;
  expect(undocumented('/fixture.ts', true, text)).toEqual([
    { name: 'silent', lacks: 'a comment' },
    { name: 'bare', lacks: 'a unit' },
  ]);
}, 60_000);
