/** All that can be wrong, drawn from what the engine reckoned. Handed to `layout` by pages that need it. */
import type { Box, Point, Sample, Trouble } from '../../types.ts';
import { placeAt } from '../centreline.ts';
import { bend } from './bend.ts';
import { damage } from './damage.ts';
import { door, doorSpots } from './door.ts';
import type { Site, TroubleDrawer } from './drawer.ts';
import { ends, grilleSpots } from './ends.ts';
import { fanMarks } from './fan.ts';
import { jointMarks, joints, jointSpots } from './joints.ts';
import { leaks, most } from './leaks.ts';
import { stretchOf } from './marks.ts';
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
      // Strokes of a gap lie behind the tape that hangs over it, but those of a bare end over the paper there.
      marks: [
        ...jointMarks(
          site,
          points,
          found.filter(({ manner }) => manner === 'off'),
        ),
        ...lost.marks,
        ...harm.marks,
        ...jointMarks(
          site,
          points,
          found.filter(({ manner }) => manner !== 'off'),
        ),
        ...ends(site, points, fixed),
        ...door(site, fixed),
        ...fan.marks,
      ],
      streams: lost.streams,
      carried: Object.fromEntries(
        site.solution.pieces.map(({ id, flow_L_s }) => [id, Math.abs(flow_L_s) / greatest]),
      ),
      wheel: fan.wheel,
      spots: [
        ...jointSpots(site, points, found),
        ...doorSpots(site, fixed),
        ...grilleSpots(site, points, fixed),
      ],
      taken: [
        ...harm.taken,
        ...lost.streams.map(({ points: way }) => round(way)),
        ...turnedFan(site, points),
      ],
    };
  },
};

/** The least upright box round points, with a margin. */
function round(points: readonly Point[], margin = 2): Box {
  const xs = points.map((point) => point.x);
  const ys = points.map((point) => point.y);
  const x = Math.min(...xs) - margin;
  const y = Math.min(...ys) - margin;
  return { x, y, width: Math.max(...xs) + margin - x, height: Math.max(...ys) + margin - y };
}

/** A fan across the run stands taller than a level one, and so does the duct led to it. */
function turnedFan(site: Site, points: readonly Sample[]): Box[] {
  const fan = site.rig.run.find(({ kind }) => kind === 'fan');
  if (!fan || !site.shapes.get(fan.id)?.doubledBack_deg) return [];
  const stretch = stretchOf(points, fan.id);
  if (!stretch) return [];
  const full = placeAt(points, stretch.from).full;
  const near = points.filter(({ along }) => along > stretch.from - full * 4 && along < stretch.to + full * 6);
  return [round(near, full * 1.3)];
}
