/** The rig a lesson names, out of the starter catalogue. */
import { isSeedRigId, seedRig, seedRigIds, stock } from '#catalogue';
import type { Rig } from '#physics';

export { stock };

/** Throws, naming the rigs there are, for an id the catalogue does not hold. */
export function lessonRig(id: string): Rig {
  if (!isSeedRigId(id)) throw new Error(`lesson.json, rig: found "${id}"; allowed is ${seedRigIds.join(', ')}`);
  return seedRig(id);
}
