/** The rig a lesson names, out of the starter catalogue. */
import { isSeedRigId, seedRig, seedRigIds, stock } from '#catalogue';
import type { Rig, Stock } from '#physics';

export { stock };

/** Throws, naming the rigs there are, for an id the catalogue does not hold. */
export function lessonRig(id: string): Rig {
  if (!isSeedRigId(id))
    throw new Error(`lesson.json, rig: found "${id}"; allowed is ${seedRigIds.join(', ')}`);
  return seedRig(id);
}

/** The fans a rig names and every duct material (a fault may swap one for another). */
export function stockFor(rig: Rig): Stock {
  const named = rig.run.flatMap((piece) =>
    piece.kind === 'fan' && typeof piece.fan === 'string' ? [piece.fan] : [],
  );
  return {
    fans: Object.fromEntries(Object.entries(stock.fans).filter(([id]) => named.includes(id))),
    materials: stock.materials,
  };
}
