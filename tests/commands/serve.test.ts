import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { serve } from '../../src/commands/serve.ts';

let folder = '';
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'lost-litres-serve-'));
  writeFileSync(join(folder, 'index.html'), '<h1>home</h1>');
  writeFileSync(join(folder, 'other.html'), '<h1>other</h1>');
});
afterAll(() => rmSync(folder, { recursive: true }));

test('pages are found with and without their ending, and what is not there is a 404', async () => {
  const { address, close } = await serve(folder, 0);
  try {
    expect(await (await fetch(`${address}/`)).text()).toBe('<h1>home</h1>');
    expect(await (await fetch(`${address}/other`)).text()).toBe('<h1>other</h1>');
    expect((await fetch(`${address}/missing`)).status).toBe(404);
    expect((await fetch(`${address}/..%2f..%2fetc/passwd`)).status).toBe(404);
  } finally {
    await close();
  }
  await expect(fetch(`${address}/`)).rejects.toThrow();
});

test('a taken port gives the next free one', async () => {
  const first = await serve(folder, 0);
  const port = Number(new URL(first.address).port);
  const second = await serve(folder, port);
  try {
    expect(Number(new URL(second.address).port)).toBeGreaterThan(port);
    expect((await fetch(`${second.address}/`)).status).toBe(200);
  } finally {
    await Promise.all([first.close(), second.close()]);
  }
});
