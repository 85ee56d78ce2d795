/**
 * The ids a lesson may name, as the tables of `lessons/README.md`: `npm run -s lessons -- --ids` prints them, and
 * a test holds the README to them, so that an author needs nothing but the README.
 */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { instruments, seedRig, seedRigIds, stock } from '#catalogue';
import { sharedSections } from '#lesson-author';
import type { Piece } from '#physics';
import { root } from '../run.ts';

type Row = readonly string[];

const code = (id: string) => `\`${id}\``;
const table = (head: Row, rows: readonly Row[]): string =>
  [head, head.map(() => '---'), ...rows].map((cells) => `| ${cells.join(' | ')} |`).join('\n');

function pieceWords(piece: Piece): string {
  if (piece.kind === 'duct') return `${code(piece.id)} (${piece.material} duct)`;
  const what = piece.kind === 'fan' && typeof piece.fan === 'string' ? `fan ${piece.fan}` : piece.kind;
  return piece.id === what ? code(piece.id) : `${code(piece.id)} (${what})`;
}

function shared(kind: string): Row[] {
  const file = (name: string) => ({ name, content: readFileSync(join(root, 'lessons', name), 'utf8') });
  const { sections } = sharedSections({ common: file('common.en.md'), glossary: file('glossary.en.md') });
  return Object.entries(sections).flatMap(([key, { title }]) => {
    const [top, id] = key.split('/');
    return top === kind && id !== undefined ? [[code(id), title]] : [];
  });
}

/** Tables in Markdown, each under its heading. */
export function idTables(): string {
  const rigs = seedRigIds.map((id) => {
    const { required, run } = seedRig(id);
    return [code(id), required ? `${required.flow_L_s} L/s` : 'nothing', run.map(pieceWords).join(', ')];
  });
  const fans = Object.entries(stock.fans).map(([id, { name }]) => [code(id), name ?? '']);
  const meters = Object.entries(instruments).map(([id, { name, measures }]) => [code(id), name, measures]);
  return [
    ['Rigs', table(['rig', 'required', 'pieces, from the room to outdoors'], rigs)],
    ['Fans', table(['fan', 'what it is'], fans)],
    ['Meters', table(['kind', 'what it is', 'reads'], meters)],
    ['Terms', table(['term', 'words shown'], shared('terms'))],
    ['Cautions', table(['caution', 'words shown'], shared('cautions'))],
  ]
    .map(([heading, rows]) => `### ${heading}\n\n${rows}`)
    .join('\n\n');
}
