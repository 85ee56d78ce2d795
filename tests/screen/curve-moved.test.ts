/** What the crossing's title says moved: the run's curve up or down, or the fan's. */
import { expect, it } from 'vitest';
import { isTaught, stagesOf } from '#lesson';
import { loadLesson } from '#lesson-load';
import { LessonRuns, lessonRigs, stockFor, type LessonPlay } from '#session';
import { defaults } from '#units';
import { crossingTitle, curveMoved, namedFault } from '../../src/routes/lessons/[slug]/picture.ts';

/** The play of a lesson as it stands after the change of one step. */
function played(slug: string, id: string): LessonPlay {
  const { lesson } = loadLesson(slug);
  const rigs = lessonRigs(lesson);
  const runs = new LessonRuns(lesson, rigs, stockFor(lesson, rigs));
  const step = lesson.steps.find((each) => each.id === id)!;
  if (!isTaught(step)) throw new Error(`${id} changes nothing`);
  const snapshot = { context: { lesson, stepIndex: lesson.steps.indexOf(step) } };
  const { from, to } = stagesOf(lesson, step);
  const [before, solution] = [runs.at(from), runs.at(to)];
  return { lesson, runs, snapshot, target: to, before, solution } as unknown as LessonPlay;
}

it.each([
  ['a sag', 'five-small-faults', 'sag', 'climbed'],
  ['a joint let go behind the fan, though the wall gets less', 'joints-that-last', 'half-off', 'fell'],
  ['a fan turned down', 'fan-meets-duct', 'slow', 'fan'],
])('with %s', (_name, slug, id, way) => {
  expect(curveMoved(played(slug, id))).toBe(way);
});

it('two houses whose fans move the same are not said to have moved a curve', () => {
  const same = played('joints-that-last', 'two-sides');
  expect(crossingTitle(same, true, defaults)).toBe('Where fan meets duct: 42.5 L/s');
  const other = played('joints-that-last', 'half-off');
  expect(crossingTitle(other, true, defaults)).toMatch(/^The system curve .* became /);
});

it('names in the drawing what has come, not what was there before at the same piece', () => {
  expect(namedFault(played('hang-it-straight', 'garden-flat'))?.kind).toBe('tight-ties');
  expect(namedFault(played('hang-it-straight', 'slack'))?.kind).toBe('sag');
});
