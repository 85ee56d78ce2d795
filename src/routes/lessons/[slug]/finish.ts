/** A finished lesson written into the practice record; fetched only when one is finished. */
import { evidence, stagesOf, type Evidence } from '#lesson';
import { loadPractice, savePractice, withFinished } from '#lesson-practice';
import { browserStorage, type LessonPlay } from '#session';

/** What the play shows of its learner so far. */
export function evidenceOf(play: LessonPlay): Evidence {
  return evidence(play.lesson, play.snapshot.context, (step) => {
    const { from, to } = stagesOf(play.lesson, step);
    return {
      before_L_s: play.runs.at(from).flow_L_s.outdoors,
      after_L_s: play.runs.at(to).flow_L_s.outdoors,
    };
  });
}

/** False where the browser would not keep it. */
export function recordFinish(play: LessonPlay): boolean {
  const { practice } = loadPractice(browserStorage);
  return savePractice(browserStorage, withFinished(practice, play.lesson, evidenceOf(play), new Date()));
}
