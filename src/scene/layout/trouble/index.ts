/** All that can be wrong, drawn from what the engine reckoned. Handed to `layout` by pages that need it. */
import type { Trouble } from '../../types.ts';
import { bend } from './bend.ts';
import { damage } from './damage.ts';
import { door } from './door.ts';
import type { TroubleDrawer } from './drawer.ts';
import { ends } from './ends.ts';
import { fanMarks } from './fan.ts';
import { jointMarks, joints } from './joints.ts';
import { leaks, most } from './leaks.ts';
import { narrow } from './necks.ts';

export const drawer: TroubleDrawer = {
  bend,
  narrow,
  draw(site, points, fixed): Trouble {
    const found = joints(site, points);
    const lost = leaks(site, points, found);
    const harm = damage(site, points);
    const fan = fanMarks(site, points);
    const greatest = most(site);
    return {
      // Air under ink: strokes of a gap lie behind the tape that hangs over it.
      marks: [
        ...lost.marks,
        ...harm.marks,
        ...jointMarks(site, points, found),
        ...ends(site, points, fixed),
        ...door(site, fixed),
        ...fan.marks,
      ],
      streams: lost.streams,
      carried: Object.fromEntries(
        site.solution.pieces.map(({ id, flow_L_s }) => [id, Math.abs(flow_L_s) / greatest]),
      ),
      wheel: fan.wheel,
      taken: harm.taken,
    };
  },
};
