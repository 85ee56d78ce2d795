/** Any legal rig draws itself: 200 of them, of every piece, exit and place of the fan, on four widths of paper. */
import { expect, test } from 'vitest';
import { readRig } from '#catalogue';
import { frameFor, layout } from '#scene';
import { ribbonHalf } from '../../src/scene/layout/air.ts';
import { beside } from '../../src/scene/layout/centreline.ts';
import { planOf } from '../../src/scene/layout/plan.ts';
import { rafterUnder, sizes } from '../../src/scene/layout/sizes.ts';
import type { Box, Drawing } from '../../src/scene/types.ts';
import { caseOf, randomRig, type Case } from './rigs.ts';

const cases: readonly Case[] = Array.from({ length: 200 }, (_, k) => caseOf(`random ${k}`, randomRig(k)));
const frames = [1440, 1920, 390, 320].map((width) => frameFor(width));
/** A drawn tenth of a pixel, and rounding. */
const NEAR = 0.11;

const meet = (a: Box, b: Box) =>
  a.x + NEAR < b.x + b.width &&
  b.x + NEAR < a.x + a.width &&
  a.y + NEAR < b.y + b.height &&
  b.y + NEAR < a.y + a.height;

function strings(value: unknown): string[] {
  if (typeof value === 'string') return [value];
  if (Array.isArray(value)) return value.flatMap(strings);
  return value && typeof value === 'object' ? Object.values(value).flatMap(strings) : [];
}

function numbers(value: unknown): number[] {
  if (typeof value === 'number') return [value];
  if (Array.isArray(value)) return value.flatMap(numbers);
  return value && typeof value === 'object' ? Object.values(value).flatMap(numbers) : [];
}

function wrongLabels({ labels, frame, numberBox }: Drawing): string[] {
  return labels.flatMap((label, index) => {
    const { box, text } = label;
    const wrong: string[] = [];
    if (box.x < 0 || box.y < 0 || box.x + box.width > frame.width || box.y + box.height > frame.height)
      wrong.push(`"${text}" leaves the drawing`);
    if (meet(box, numberBox)) wrong.push(`"${text}" lies across the number`);
    for (const other of labels.slice(index + 1))
      if (meet(box, other.box)) wrong.push(`"${text}" lies on "${other.text}"`);
    return wrong;
  });
}

/** Where the run is not one line, or does not stay in the house between room and way out. */
function wrongLine(drawing: Drawing, run: Case['rig']['run']): string[] {
  const { exit } = planOf(run);
  const size = sizes(drawing.frame, exit);
  const wrong: string[] = [];
  const { centreline } = drawing;
  const end = run[run.length - 1]!.id;
  centreline.forEach((place, k) => {
    const before = centreline[k - 1];
    // Samples stand at most three steps apart; joints hold two in one place.
    if (before && Math.hypot(place.x - before.x, place.y - before.y) > size.step * 3 + 4)
      wrong.push(
        `a gap of ${Math.round(Math.hypot(place.x - before.x, place.y - before.y))} before ${place.piece}, ${before.x.toFixed(0)} ${before.y.toFixed(0)}`,
      );
    if (before && place.x < before.x - drawing.frame.width * 0.2) wrong.push(`${place.piece} runs back`);
    if (ribbonHalf(place) > place.half + 1e-9) wrong.push(`the ribbon is out of ${place.piece}`);
    const outer = place.piece === end;
    if (place.x - place.half < size.wallLeft + size.wallThick && !outer)
      wrong.push(`${place.piece} in the left wall`);
    if (!outer && place.x > size.endX + size.bore) wrong.push(`${place.piece} beyond the way out`);
    if (outer) return;
    const top = Math.min(beside(place, -place.half).y, beside(place, place.half).y);
    const bottom = Math.max(beside(place, -place.half).y, beside(place, place.half).y);
    const standsOut = exit === 'roof' && Math.abs(place.x - size.endX) < size.bore * 2;
    if (!standsOut && top < rafterUnder(size, place.x)) wrong.push(`${place.piece} through the roof`);
    const isLevel = Math.abs(place.tx) > 0.8;
    if (isLevel && bottom > size.ceiling + 1) wrong.push(`${place.piece} through the ceiling`);
  });
  return [...new Set(wrong)];
}

test('the random rigs are legal, and there is one of everything among them', () => {
  const found = new Set<string>();
  for (const { rig } of cases) {
    const { faults: _faults, ...sound } = rig;
    expect(readRig(JSON.parse(JSON.stringify(sound)), rig.name), rig.name).toMatchObject({ ok: true });
    found.add(planOf(rig.run).exit);
    const fan = rig.run.findIndex((piece) => piece.kind === 'fan');
    found.add(fan === 1 ? 'fan first' : fan === rig.run.length - 2 ? 'fan last' : 'fan between');
    if (rig.run[0]!.kind !== 'grille') found.add('no grille');
    for (const piece of rig.run) found.add(piece.kind).add('form' in piece ? `${piece.form}` : '');
  }
  for (const each of [
    ...['wall', 'soffit', 'roof', 'fan first', 'fan last', 'fan between', 'no grille', 'reducer', 'damper'],
    ...['fitting', 'gored', 'pressed', 'mitred', 'adjustable', 'flexible', 'sudden', 'conical'],
    ...['open-end', 'wall-cowl', 'rain-cap', 'high-rain-cap', 'louvre'],
  ])
    expect(found).toContain(each);
});

test.each(frames)(
  '$width wide: sound paths, labels apart, one line inside the house',
  (frame) => {
    const wrong = cases.flatMap(({ name, rig, solution, healthy }) => {
      const fault = rig.faults?.[0];
      const drawing = layout(rig, solution, healthy, frame, {
        ...(fault ? { present: fault.at, faultLabel: { title: 'Fault 1', text: 'what is wrong here' } } : {}),
      });
      const broken = strings(drawing).filter((text) => /NaN|Infinity|undefined|\de-\d/.test(text));
      return [
        ...broken.map((text) => text.slice(0, 60)),
        ...(numbers(drawing).every(Number.isFinite) ? [] : ['a number is not finite']),
        ...wrongLabels(drawing),
        ...wrongLine(drawing, rig.run),
      ].map((text) => `${name}: ${text}`);
    });
    expect(wrong).toEqual([]);
  },
  60_000,
);

test('what does not change with the air is the same object from frame to frame', () => {
  const frame = frames[0]!;
  const one = caseOf('one', randomRig(3));
  const draw = (solution: Case['solution']) => layout(one.rig, solution, one.healthy, frame);
  const before = draw(one.solution);
  const after = draw({ ...one.solution, fan: { ...one.solution.fan, pressure_Pa: 1 } });
  expect(after.building).toBe(before.building);
  expect(after.room).toBe(before.room);
  expect(after.labels).not.toEqual(before.labels);
});
