/** `lessons/README.md` is all an author needs: every id there is stands in it, as the catalogue has it. */
import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { readRig, seedRig } from '#catalogue';
import { loadGuide } from '#lesson-load';
import { idTables } from '../../src/commands/lessons/ids.ts';

const guide = readFileSync(new URL('../../lessons/README.md', import.meta.url), 'utf8');
/** Without what is done to a table so that it lines up. */
const bare = (markdown: string) => markdown.replace(/ +/g, ' ').replace(/-{3,}/g, '---');

it('lists rigs and their pieces, fans, meters, terms and cautions (npm run -s lessons -- --ids prints them)', () => {
  for (const part of bare(idTables()).split(/\n\n(?=###)/)) expect(bare(guide)).toContain(part);
  expect(idTables()).toMatch(/`upstairs-bathroom` .*`out` \(flexible duct\)/);
  expect(idTables()).toMatch(/\n\| `fan-curve` \| Fan curve \|\n/);
  expect(idTables()).toMatch(/\n\| `falls` \| A ceiling is not a floor \|\n/);
});

it('shows a whole rig, which reads, to start one of your own from', () => {
  const blocks = [...guide.matchAll(/^```json\n([^]*?)^```$/gm)].map(([, json]) => JSON.parse(json!));
  const rig = blocks.find(({ rigs }) => rigs)?.rigs['my-bathroom'];
  expect(readRig(rig, 'rig')).toMatchObject({ ok: true });
  expect(rig).toEqual(seedRig('upstairs-bathroom'));
});

it('is what the page of own lessons hands out', () => {
  expect(loadGuide()).toBe(guide);
});
