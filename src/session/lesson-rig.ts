/** The rigs a lesson names, out of the lesson itself or the starter catalogue. */
import { isSeedRigId, readRig, seedRig, seedRigIds, stock, tell } from '#catalogue';
import { everyStage, type Lesson } from '#lesson';
import type { Rig, Stock } from '#physics';

export { seedRig, stock };

/** Every rig the lesson stands on, by id. Throws, naming place and remedy, for one that is not there or not right. */
export function lessonRigs(lesson: Lesson): Record<string, Rig> {
  const ids = [...new Set(everyStage(lesson).map(({ rig }) => rig))];
  return Object.fromEntries(ids.map((id) => [id, lessonRig(id, lesson.rigs)]));
}

/** Throws, naming the rigs there are, for an id neither the lesson nor the catalogue holds. */
function lessonRig(id: string, own: Lesson['rigs'] = {}): Rig {
  const inline = own[id];
  if (inline) {
    const read = readRig(inline, `lesson.json, rigs.${id}`);
    if (read.ok) return read.rig;
    throw new Error(read.problems.map(tell).join('\n'));
  }
  if (isSeedRigId(id)) return seedRig(id);
  const known = [...Object.keys(own), ...seedRigIds].join(', ');
  throw new Error(`lesson.json, rig: found "${id}"; allowed is ${known}`);
}

const fansOf = (rig: Rig): string[] =>
  rig.run.flatMap((piece) => (piece.kind === 'fan' && typeof piece.fan === 'string' ? [piece.fan] : []));

/** Of the starter catalogue: the fans named, and every duct material (a fault may swap one for another). */
function only(named: readonly string[]): Stock {
  const missing = named.find((id) => !(id in stock.fans));
  if (missing !== undefined)
    throw new Error(`lesson.json, fan: found "${missing}"; allowed is ${Object.keys(stock.fans).join(', ')}`);
  return {
    fans: Object.fromEntries(Object.entries(stock.fans).filter(([id]) => named.includes(id))),
    materials: stock.materials,
  };
}

/** What one rig needs of the catalogue. */
export const stockOf = (rig: Rig): Stock => only(fansOf(rig));

/** What all the stages of a lesson need of it. Throws, naming the fans there are, for one there is not. */
export function stockFor(lesson: Lesson, rigs: Readonly<Record<string, Rig>>): Stock {
  const swapped = everyStage(lesson).flatMap(({ fan }) => (fan === undefined ? [] : [fan]));
  return only([...Object.values(rigs).flatMap(fansOf), ...swapped]);
}
