/** What the play shows of its learner so far. */
import { evidence, stagesOf, type Evidence } from '#lesson';
import type { LessonPlay } from '#session';

export function evidenceOf({ lesson, runs, snapshot }: LessonPlay): Evidence {
  return evidence(lesson, snapshot.context, (step) => {
    const { from, to } = stagesOf(lesson, step);
    return { before_L_s: runs.at(from).flow_L_s.outdoors, after_L_s: runs.at(to).flow_L_s.outdoors };
  });
}
