/** The grille and the door hang on no stretch of the run: words about them lead to them, and never to the duct. */
import { expect, test } from 'vitest';
import { isTaught, stagesOf } from '#lesson';
import { LessonRuns, lessonRigs, stockFor } from '#lesson-engine';
import { loadLessons } from '#lesson-load';
import type { FaultKind } from '#physics';
import { frameFor, layout, type Drawing, type Point } from '#scene';
import { trouble } from '#scene-trouble';
import { defaults } from '#units';
import { belliesOf, faultSize } from '../../src/routes/lessons/[slug]/picture.ts';

const LOW: readonly FaultKind[] = ['blocked-grille', 'no-make-up-air'];
const frames = [
  frameFor(1364, 360),
  frameFor(1840, 432),
  frameFor(1728, 448, 36),
  frameFor(703),
  frameFor(366),
  frameFor(296),
];

/** Every stage of a taught step with such a fault, drawn with its words at each width; a job names no fault. */
const drawings = loadLessons().flatMap(({ lesson }) => {
  const rigs = lessonRigs(lesson);
  const runs = new LessonRuns(lesson, rigs, stockFor(lesson, rigs));
  const stages = lesson.steps.filter(isTaught).flatMap((step) => Object.values(stagesOf(lesson, step)));
  return stages.flatMap((stage) =>
    stage.faults
      .filter(({ kind }) => LOW.includes(kind))
      .flatMap((fault) =>
        frames.map((frame) => {
          const solution = runs.at(stage);
          const text = faultSize(fault, solution, defaults);
          const lettering = { present: fault.at, faultLabel: { title: '', text, kind: fault.kind } };
          const healthy = runs.at({ ...stage, faults: [] });
          const bellies = belliesOf({ lesson, runs, target: stage });
          const drawer = trouble.drawer;
          const drawn = layout(runs.rig(stage), solution, healthy, frame, lettering, drawer, bellies);
          return { name: `${lesson.slug} ${fault.kind} ${frame.width}`, kind: fault.kind, drawn };
        }),
      ),
  );
});

const numbers = (path: string) => [...path.matchAll(/-?[\d.]+/g)].map(Number);

/** Both ends of the line from the words to the thing. */
function leaderOf({ labels }: Drawing): [Point, Point] | null {
  const found = labels.find(({ key }) => key === 'fault' || key === 'fault/mark');
  const [x, y, toX, toY] = numbers(found?.leader ?? '');
  return toY === undefined
    ? null
    : [
        { x: x!, y: y! },
        { x: toX!, y: toY },
      ];
}

test('there are such faults to look at', () => {
  for (const kind of LOW) expect(drawings.filter((each) => each.kind === kind).length).toBeGreaterThan(6);
});

test('the line from the words ends at the grille, or at the gap under the door', () => {
  for (const { name, kind, drawn } of drawings) {
    const end = leaderOf(drawn)?.[1];
    if (!end) continue;
    const height = drawn.frame.height;
    const first = drawn.centreline[0]!;
    const near =
      kind === 'blocked-grille'
        ? Math.hypot(end.x - first.x, end.y - first.y) < first.full * 2 + 10
        : Math.abs(end.x - drawn.room.right) < height * 0.05 && end.y > height * 0.9;
    expect(near, `${name} ends at ${end.x} ${end.y}`).toBe(true);
  }
});

test('the line from the words does not cross the duct on its way', () => {
  for (const { name, drawn } of drawings) {
    const leader = leaderOf(drawn);
    // Before a class the letters are so large that no paper is left beside the door.
    if (!leader || drawn.frame.lettering !== undefined) continue;
    const [from, to] = leader;
    const crossed = drawn.centreline.filter((point) =>
      Array.from({ length: 40 }, (_, k) => k / 40).some((t) => {
        const [x, y] = [from.x + (to.x - from.x) * t, from.y + (to.y - from.y) * t];
        return Math.hypot(point.x - x, point.y - y) < point.half;
      }),
    );
    expect(crossed.length, name).toBe(0);
  }
});

test('the shut door and the air under it are drawn within the frame', () => {
  for (const { name, kind, drawn } of drawings) {
    if (kind !== 'no-make-up-air') continue;
    const door = drawn.trouble?.marks.find((mark) => mark.kind === kind);
    expect(door?.air, name).toBeTruthy();
    for (const path of [door!.air, door!.body, door!.fine]) {
      const ys = numbers(path).filter((_, k) => k % 2 === 1);
      expect(Math.max(...ys), name).toBeLessThan(drawn.frame.height - 1);
    }
  }
});
