/** What is wrong, as drawn: nothing where there is nothing, and as far as it was reckoned where there is. */
import { describe, expect, test } from 'vitest';
import { seedRig } from '#catalogue';
import { FAULTS, flattenedArea, type Fault, type FaultKind, type Piece, type Rig } from '#physics';
import { frameFor, layout } from '#scene';
import { trouble } from '#scene-trouble';
import { leftOpen } from '../../src/scene/layout/trouble/door.ts';
import { heightLeft } from '../../src/scene/layout/trouble/necks.ts';
import type { Drawing } from '../../src/scene/types.ts';
import { caseOf, randomRig } from './rigs.ts';

const bathroom: Rig = seedRig('upstairs-bathroom');
const flap: Piece[] = [
  { id: 'flap', kind: 'damper', diameter_mm: 100 },
  { id: 'sleeve', kind: 'duct', material: 'rigid', diameter_mm: 100, path_m: 0.4 },
];
const flapped: Rig = {
  ...bathroom,
  run: bathroom.run.flatMap((piece) => (piece.kind === 'terminal' ? [...flap, piece] : [piece])),
};

/** Every kind that is drawn over the run, where it befalls one. */
const PLACES: Partial<Record<FaultKind, readonly string[]>> = {
  'joint-weep': ['out', 'inlet'],
  'joint-open': ['out', 'inlet'],
  'joint-off': ['out', 'inlet'],
  crushed: ['out', 'inlet'],
  dented: ['inlet'],
  undersized: ['out', 'inlet'],
  'bend-at-fan': ['fan'],
  'fan-reversed': ['fan'],
  'weak-fan': ['fan'],
  'blocked-grille': ['grille'],
  'blocked-cowl': ['cowl'],
  'screened-cowl': ['cowl'],
  'stuck-damper': ['flap'],
  'no-make-up-air': ['grille'],
};
/** The lesson's five change the run itself and are looked for elsewhere. */
const IN_THE_RUN: readonly FaultKind[] = ['sag', 'crimp', 'flexible-swap', 'tight-ties', 'extra-length'];

const frames = [frameFor(1440), frameFor(390)];

function draw(faults: readonly Fault[], { rig = flapped, frame = frames[0]! } = {}) {
  const one = caseOf(faults.map(({ kind }) => kind).join(), { ...rig, faults });
  const drawing = layout(one.rig, one.solution, one.healthy, frame, {}, trouble.drawer);
  return { ...one, drawing, marks: drawing.trouble!.marks };
}

const unsound = (drawing: Drawing) => /NaN|undefined|Infinity|null,null/.test(JSON.stringify(drawing));

test('every fault is drawn in the run or over it', () => {
  expect([...IN_THE_RUN, ...Object.keys(PLACES)].sort()).toEqual(Object.keys(FAULTS).sort());
});

describe.each(Object.entries(PLACES).flatMap(([kind, all]) => all.map((at) => ({ kind, at }))))(
  '$kind at $at',
  ({ kind, at }) => {
    const fault = (amount: number): Fault => ({ kind: kind as FaultKind, at, amount });

    test.each(frames)('draws nothing at 0 and more the more there is, on $width px', (frame) => {
      const none = draw([fault(0)], { frame });
      const sound = draw([], { frame });
      expect(none.drawing).toEqual(sound.drawing);
      expect(none.marks).toEqual([]);
      let before = 0;
      for (const amount of [0.1, 0.5, 0.9, 1]) {
        const { drawing, marks } = draw([fault(amount)], { frame });
        expect(unsound(drawing)).toBe(false);
        const mark = marks.find((one) => one.kind === kind);
        expect(mark?.piece).toBe(at);
        expect(mark!.measure).toBeGreaterThan(before);
        before = mark!.measure;
      }
    });
  },
);

describe('as far as it was reckoned', () => {
  const shapeOf = (fault: Fault) => {
    const drawn = draw([fault]);
    const shape = drawn.solution.pieces.find(({ id }) => id === fault.at)!.shape;
    const own = drawn.drawing.centreline.filter(({ piece }) => piece === fault.at);
    const open = Math.min(...own.map(({ half, full }) => half / full));
    const px = (metres: number) => metres * drawn.drawing.pixelsPerMetre * drawn.drawing.enlargement;
    const measure = drawn.marks.find(({ kind }) => kind === fault.kind)!.measure;
    return { ...drawn, shape, own, open, px, measure };
  };

  test.each([0.2, 0.6, 1])('a gap opens to scale (%s)', (amount) => {
    const { measure, shape, px } = shapeOf({ kind: 'joint-open', at: 'out', amount });
    expect(measure).toBeCloseTo(px(shape.jointGap_mm! / 1000), 6);
  });

  test.each([0.2, 0.6, 1])('a crush is as low as a flat oval of that area (%s)', (amount) => {
    const { open, shape } = shapeOf({ kind: 'crushed', at: 'out', amount });
    expect(flattenedArea(1 - open)).toBeCloseTo(shape.crushedOpenArea!, 1);
    expect(open).toBeCloseTo(heightLeft(shape.crushedOpenArea!), 1);
  });

  test.each([0.3, 1])('dents leave the area reckoned and are as many (%s)', (amount) => {
    const { own, open, shape } = shapeOf({ kind: 'dented', at: 'inlet', amount });
    expect(open).toBeCloseTo(heightLeft(shape.dentOpenArea!), 1);
    const lows = own.filter(
      ({ half }, k) => half < (own[k - 1]?.half ?? half) && half <= (own[k + 1]?.half ?? 0),
    );
    expect(lows).toHaveLength(shape.dents!);
  });

  test.each([0.5, 1])(
    'a size too small is as small over its length, and air runs faster there (%s)',
    (amount) => {
      const { own, open, shape } = shapeOf({ kind: 'undersized', at: 'out', amount });
      expect(open).toBeCloseTo(shape.boreRatio!, 6);
      const narrow = own.filter(({ half, full }) => half / full < shape.boreRatio! + 1e-6);
      expect(narrow.length / own.length).toBeGreaterThan(0.9);
      const middle = own[Math.floor(own.length / 2)]!;
      expect(middle.velocity_m_s / own[0]!.velocity_m_s).toBeCloseTo(shape.boreRatio! ** -2, 2);
    },
  );

  test.each([0.4, 1])('a fan across the run stands at its angle (%s)', (amount) => {
    const { drawing, shape } = shapeOf({ kind: 'fan-reversed', at: 'fan', amount });
    expect(drawing.fan!.turn).toMatch(new RegExp(`^rotate\\(-${shape.doubledBack_deg!.toFixed(1)} `));
  });

  test.each([0.5, 1])('a bend at the fan comes in at its angle (%s)', (amount) => {
    const { drawing, shape } = shapeOf({ kind: 'bend-at-fan', at: 'fan', amount });
    const fan = drawing.centreline.findIndex(({ piece }) => piece === 'fan');
    const before = drawing.centreline.slice(0, fan);
    const steepest = Math.max(...before.slice(-40).map(({ tx, ty }) => Math.atan2(-ty, tx)));
    expect((steepest * 180) / Math.PI).toBeGreaterThan(shape.inletBend_deg! * 0.93);
  });

  test.each([0.5, 1])('a weak fan has a wheel of its strength (%s)', (amount) => {
    const { drawing, shape } = shapeOf({ kind: 'weak-fan', at: 'fan', amount });
    expect(drawing.trouble!.wheel).toContain(`scale(${shape.fanStrength!.toFixed(3)})`);
  });

  test('a door on its seals leaves both openings in series', () => {
    expect(leftOpen(0, 14000)).toBe(1);
    // 14 000 and 2 000 mm2 one after the other pass as 1 979.9 mm2 do: (1/14000^2 + 1/2000^2)^-1/2.
    expect(leftOpen(1, 14000) * 14000).toBeCloseTo(1979.9, 1);
  });
});

describe('any legal rig with what can befall it', () => {
  const kinds = (Object.keys(PLACES) as FaultKind[]).filter((kind) => kind !== 'joint-off');
  test.each(Array.from({ length: 80 }, (_, k) => k))('random %i', (seed) => {
    const rig = randomRig(seed);
    const stock = { fans: {}, materials: {} };
    const more = rig.run.flatMap((piece, index): Fault[] =>
      kinds
        .filter((kind) => !['crushed', 'dented'].includes(kind) && FAULTS[kind].fits(piece, stock))
        .filter((_, k) => (seed + index + k) % 3 === 0)
        .map((kind, k) => ({ kind, at: piece.id, amount: ((seed * 7 + k * 3 + index) % 10) / 10 + 0.1 })),
    );
    const ducts = rig.run.filter((piece) => piece.kind === 'duct');
    const off: Fault[] =
      seed % 4 === 0 && ducts.length
        ? [{ kind: 'joint-off', at: ducts[seed % ducts.length]!.id, amount: 1 }]
        : [];
    const harmed: Fault[] = ducts
      .filter((piece) => piece.kind === 'duct' && piece.material === 'flexible')
      .map(({ id }) => ({ kind: 'crushed', at: id, amount: 0.7 }));
    const faults = [...(rig.faults ?? []), ...more, ...off, ...harmed];
    for (const frame of frames) {
      const { drawing } = draw(faults, { rig, frame });
      expect(unsound(drawing)).toBe(false);
      expect(new Set(drawing.trouble!.marks.map(({ key }) => key)).size).toBe(drawing.trouble!.marks.length);
    }
  });
});
