/** A good rig with one thing changed by hand; loosely typed, because the change may be anything. */
import { seedRig, type SeedRigId } from '#catalogue';

// eslint-disable-next-line @typescript-eslint/no-explicit-any -- a bad file has no type
export type Loose = any;

export function changed(change: (rig: Loose) => unknown, id: SeedRigId = 'upstairs-bathroom'): unknown {
  const rig: Loose = seedRig(id);
  change(rig);
  return rig;
}
