/** Every fault at every stage of every lesson, drawn at six widths: its words are there, on the paper, and lie on nothing else that is written. */
import { expect, test } from 'vitest';
import { everyStage } from '#lesson';
import { LessonRuns, lessonRigs, stockFor } from '#lesson-engine';
import { loadLessons } from '#lesson-load';
import { frameFor, layout } from '#scene';
import { trouble } from '#scene-trouble';
import { defaults } from '#units';
import { belliesOf, faultSize } from '../../src/routes/lessons/[slug]/picture.ts';
import { spentBy, spentWords } from '../../src/routes/lessons/[slug]/walk.ts';
import type { Box, Drawing } from '../../src/scene/types.ts';

const frames = [
  frameFor(1364, 360),
  frameFor(1840, 432),
  // Before a class, on paper, on two phones.
  frameFor(1728, 448, 36),
  frameFor(703),
  frameFor(390),
  frameFor(320),
];

const meet = (a: Box, b: Box) =>
  a.x < b.x + b.width && b.x < a.x + a.width && a.y < b.y + b.height && b.y < a.y + a.height;

/** The least box round a path of straight lines. */
function reach(path: string): Box {
  const numbers = [...path.matchAll(/-?[\d.]+/g)].map(Number);
  const xs = numbers.filter((_, k) => k % 2 === 0);
  const ys = numbers.filter((_, k) => k % 2 === 1);
  const [x, y] = [Math.min(...xs), Math.min(...ys)];
  return { x, y, width: Math.max(...xs) - x, height: Math.max(...ys) - y };
}

function wrong({ labels, caption, aside, frame, numberBox, scaleBar, dimensions }: Drawing): string[] {
  const own = labels.filter(({ key }) => key.startsWith('fault'));
  if (own.length === 0) return ['is not there'];
  const others = labels.filter((label) => !own.includes(label));
  const found: string[] = [];
  const marked = own.some(({ key }) => key === 'fault/mark');
  if (marked !== (caption !== null)) found.push('is a mark without words, or words twice');
  if (marked && frame.width >= 1000) found.push('is no more than a mark on wide paper');
  for (const { box } of own) {
    if (box.x < 0 || box.y < 0 || box.x + box.width > frame.width || box.y + box.height > frame.height)
      found.push('leaves the paper');
    const ceiling = frame.height * (frame.kind === 'wide' ? 0.775 : 0.815);
    if (box.y < ceiling && box.y + box.height > ceiling) found.push('hides the ceiling');
    if (meet(box, numberBox)) found.push('lies across the number');
    if (scaleBar && meet(box, reach(scaleBar))) found.push('lies across the scale bar');
    if (dimensions.some(({ line }) => line && meet(box, reach(line)))) found.push('lies on a dimension');
    for (const other of others) if (meet(box, other.box)) found.push(`lies on "${other.text}"`);
  }
  const kept = (key: string) => labels.some((label) => label.key === key);
  if (kept('note') === (aside !== null)) found.push('has no note on scale, or two');
  if (aside && frame.kind === 'wide') found.push('has its note on scale beside wide paper');
  if (scaleBar && !kept('scale')) found.push('leaves the scale bar without its figure');
  return found;
}

test.each(loadLessons().map(({ lesson }) => [lesson.slug, lesson] as const))(
  "%s: the faults' words stand clear at every width",
  (_, lesson) => {
    const rigs = lessonRigs(lesson);
    const runs = new LessonRuns(lesson, rigs, stockFor(lesson, rigs));
    const found = everyStage(lesson).flatMap((stage) =>
      stage.faults.flatMap((fault, k) => {
        const solution = runs.at(stage);
        const healthy = runs.at({ ...stage, faults: [] });
        const text = faultSize(fault, solution, defaults);
        // A piled fault has a number over its words, a case's has none.
        return ['', `Fault ${k + 1}`].flatMap((title) =>
          frames.flatMap((frame) => {
            const lettering = {
              present: fault.at,
              faultLabel: { title, text, kind: fault.kind },
              choice: defaults,
            };
            const drawing = layout(
              runs.rig(stage),
              solution,
              healthy,
              frame,
              lettering,
              trouble.drawer,
              belliesOf({ lesson, runs, target: stage }),
            );
            return wrong(drawing).map((what) => `${frame.width} ${stage.rig} "${title}" "${text}" ${what}`);
          }),
        );
      }),
    );
    expect([...new Set(found)]).toEqual([]);
  },
  60_000,
);

test('the walk names what a fault spends, and of a fault that spends nothing only the name', () => {
  const { lesson } = loadLessons().find((each) => each.lesson.slug === 'joints-that-last')!;
  const rigs = lessonRigs(lesson);
  const runs = new LessonRuns(lesson, rigs, stockFor(lesson, rigs));
  const stage = everyStage(lesson).find(({ faults }) => faults.some(({ kind }) => kind === 'joint-off'))!;
  const fault = stage.faults.find(({ kind }) => kind === 'joint-off')!;
  expect(spentBy(fault, runs.at(stage))).toBe(0);
  expect(spentWords(fault, runs.at(stage), defaults)).toBe('duct off');
  const sag = { kind: 'sag', at: 'out', amount: 0.5, span_m: 1.7 } as const;
  const words = spentWords(sag, runs.at({ rig: lesson.rig, faults: [sag] }), defaults);
  expect(words).toMatch(/^sag: .*[1-9].* spent here$/);
});

test("the words of a joint's fault lead to the joint, not to the duct it belongs to", () => {
  const { lesson } = loadLessons().find((each) => each.lesson.slug === 'joints-that-last')!;
  const rigs = lessonRigs(lesson);
  const runs = new LessonRuns(lesson, rigs, stockFor(lesson, rigs));
  let led = 0;
  for (const stage of everyStage(lesson))
    for (const fault of stage.faults.filter(({ kind }) => kind.startsWith('joint-'))) {
      const [solution, healthy] = [runs.at(stage), runs.at({ ...stage, faults: [] })];
      const lettering = {
        present: fault.at,
        faultLabel: { title: 'Fault 1', text: 'what is wrong', kind: fault.kind },
      };
      const drawing = layout(runs.rig(stage), solution, healthy, frames[0]!, lettering, trouble.drawer);
      const leader = drawing.labels.find(({ key }) => key === 'fault')?.leader;
      if (!leader) continue;
      const [x, y] = [...leader.matchAll(/-?[\d.]+/g)].map(Number).slice(-2) as [number, number];
      // Duct that has come off hangs below the collar it was on; the joint is the collar.
      const line = drawing.centreline;
      const [first, last] = [
        line.findIndex(({ piece }) => piece === fault.at),
        line.findLastIndex(({ piece }) => piece === fault.at),
      ];
      const ends = [first - 1, first, last, last + 1]
        .flatMap((index) => line[index] ?? [])
        .map((end) => Math.hypot(end.x - x, end.y - y) / end.full);
      expect(Math.min(...ends), `${fault.kind} at ${fault.at}`).toBeLessThan(3.2);
      led += 1;
    }
  expect(led).toBeGreaterThan(2);
});
