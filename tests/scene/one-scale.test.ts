/** A duct that only sags must not look thinner: all a lesson shows of a rig is drawn to one scale. */
import { expect, test } from 'vitest';
import { everyStage, faultSteps, isTaught, pile, stagesOf, type Lesson, type Stage } from '#lesson';
import { LessonRuns, lessonRigs, stockFor } from '#lesson-engine';
import { loadLessons } from '#lesson-load';
import type { Fault } from '#physics';
import { frameFor, layout, type Belly } from '#scene';
import { trouble } from '#scene-trouble';
import { belliesOf } from '../../src/routes/lessons/[slug]/picture.ts';

const frames = [frameFor(1364, 360), frameFor(1840, 432), frameFor(703), frameFor(390), frameFor(320)];
const taught = loadLessons().map(({ lesson }) => {
  const rigs = lessonRigs(lesson);
  return [lesson.slug, lesson, new LessonRuns(lesson, rigs, stockFor(lesson, rigs))] as const;
});

/** The picture on its way: faults of one stage shrink while those of the other grow, as the play moves them. */
function between(from: Stage, to: Stage, t: number): Stage {
  const kind = ({ amount: _, ...fault }: Fault) => JSON.stringify(fault);
  const amount = (faults: readonly Fault[], one: Fault) =>
    faults.find((fault) => kind(fault) === kind(one))?.amount ?? 0;
  const all = new Map([...from.faults, ...to.faults].map((fault) => [kind(fault), fault]));
  const faults = [...all.values()].map((fault) => ({
    ...fault,
    amount: amount(from.faults, fault) * (1 - t) + amount(to.faults, fault) * t,
  }));
  return { ...to, faults };
}

/** All that can be seen of a lesson, at rest and on the way into, out of and back to every change. */
function seen(lesson: Lesson): Stage[] {
  const steps = lesson.steps.filter(isTaught).map((step) => stagesOf(lesson, step));
  const mended = faultSteps(lesson).map(({ fault }) => {
    const whole = pile(lesson);
    return { from: whole, to: { ...whole, faults: whole.faults.filter((each) => each !== fault) } };
  });
  const moves = [...steps, ...mended].flatMap(({ from, to }) =>
    [0.05, 0.3, 0.5, 0.8, 0.97].map((t) => between(from, to, t)),
  );
  return [...everyStage(lesson), ...moves];
}

function scales(lesson: Lesson, runs: LessonRuns, rig: string, bellies?: readonly Belly[]): string[] {
  const stages = seen(lesson).filter((stage) => stage.rig === rig);
  return frames.map((frame) => {
    const found = stages.map((stage) => {
      const [solution, healthy] = [runs.passing(stage), runs.at({ ...stage, faults: [] })];
      const drawn = layout(runs.rig(stage), solution, healthy, frame, {}, trouble.drawer, bellies);
      return `${drawn.enlargement.toFixed(4)} times size, ${drawn.pixelsPerMetre.toFixed(3)} px a metre`;
    });
    return [...new Set(found)].join(' and ');
  });
}

test.each(taught)('%s: a rig has one scale, whatever is wrong with it', (_, lesson, runs) => {
  for (const rig of new Set(seen(lesson).map((stage) => stage.rig))) {
    const bellies = belliesOf({ lesson, runs, target: { rig, faults: [] } });
    for (const found of scales(lesson, runs, rig, bellies)) expect(found, rig).not.toMatch(/ and /);
  }
});

test('without knowing what else will hang, the main lesson would change its scale', () => {
  const [, lesson, runs] = taught.find(([slug]) => slug === 'five-small-faults')!;
  expect(scales(lesson, runs, lesson.rig).some((found) => / and /.test(found))).toBe(true);
});
