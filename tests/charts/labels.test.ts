/** Labels stand free: of each other, of marks, of firm lines, whatever the crowd. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  boxesOverlap,
  crosses,
  placeLabels,
  type Box,
  type LabelRequest,
  type Obstacles,
  type Segment,
} from '../../src/charts/placeLabels.ts';

const bounds: Box = { x: 0, y: 0, width: 320, height: 200 };

/** A segment seen the slow way: sampled along its length. */
function touches(box: Box, { x1, y1, x2, y2 }: Segment): boolean {
  for (let step = 0; step <= 400; step += 1) {
    const x = x1 + ((x2 - x1) * step) / 400;
    const y = y1 + ((y2 - y1) * step) / 400;
    if (x > box.x && x < box.x + box.width && y > box.y && y < box.y + box.height) return true;
  }
  return false;
}

/** Tenths of a pixel: finer than anything drawn, coarse enough for exact comparison. */
const tenths = (min: number, max: number): fc.Arbitrary<number> =>
  fc.integer({ min: min * 10, max: max * 10 }).map((value) => value / 10);
const across = tenths(-20, 340);
const down = tenths(-20, 220);
const segment: fc.Arbitrary<Segment> = fc.record({ x1: across, y1: down, x2: across, y2: down });
const box: fc.Arbitrary<Box> = fc.record({
  x: across,
  y: down,
  width: tenths(1, 60),
  height: tenths(1, 40),
});
const request = fc.record({
  texts: fc.array(fc.record({ text: fc.string(), width: tenths(5, 120) }), {
    minLength: 1,
    maxLength: 2,
  }),
  height: fc.constant(16),
  places: fc.array(
    fc.record({
      x: across,
      y: down,
      anchor: fc.constantFrom('start' as const, 'middle' as const, 'end' as const),
    }),
    {
      minLength: 1,
      maxLength: 6,
    },
  ),
  optional: fc.boolean(),
});

describe('placeLabels', () => {
  it('never sets a label on another, on a mark, on a firm line or outside the frame', () => {
    fc.assert(
      fc.property(
        fc.array(request, { maxLength: 14 }),
        fc.array(segment, { maxLength: 12 }),
        fc.array(box, { maxLength: 6 }),
        (bare, segments, boxes) => {
          const requests: LabelRequest[] = bare.map((one, index) => ({ ...one, id: String(index) }));
          const placed = placeLabels(requests, { boxes, segments }, bounds);
          placed.forEach((label, index) => {
            expect(label.box.x).toBeGreaterThanOrEqual(0);
            expect(label.box.y).toBeGreaterThanOrEqual(0);
            expect(label.box.x + label.box.width).toBeLessThanOrEqual(bounds.width);
            expect(label.box.y + label.box.height).toBeLessThanOrEqual(bounds.height);
            for (const other of placed.slice(index + 1))
              expect(boxesOverlap(label.box, other.box)).toBe(false);
            for (const mark of boxes) expect(boxesOverlap(label.box, mark)).toBe(false);
            for (const line of segments) expect(touches(label.box, line)).toBe(false);
          });
        },
      ),
      { numRuns: 150 },
    );
  });

  it('sees every line that runs through a box', () => {
    fc.assert(
      fc.property(box, segment, (area, line) => {
        if (touches(area, line)) expect(crosses(area, line)).toBe(true);
      }),
    );
  });

  const one = (over: Partial<LabelRequest> = {}): LabelRequest => ({
    id: 'a',
    texts: [{ text: 'fan curve', width: 60 }],
    height: 16,
    places: [{ x: 100, y: 100, anchor: 'start' }],
    ...over,
  });
  const nothing: Obstacles = { boxes: [], segments: [] };

  it('takes the first place when it is free', () => {
    expect(placeLabels([one()], nothing, bounds)).toEqual([
      { id: 'a', text: 'fan curve', away: false, box: { x: 100, y: 92, width: 60, height: 16 } },
    ]);
  });

  it('falls back on the shorter wording before it moves away', () => {
    const wall = [{ x1: 140, y1: 0, x2: 140, y2: 200 }];
    const texts = [
      { text: 'fan curve', width: 60 },
      { text: 'fan', width: 25 },
    ];
    const [label] = placeLabels([one({ texts })], { boxes: [], segments: wall }, bounds);
    expect(label).toMatchObject({ text: 'fan', away: false });
  });

  it('stands on a faint line rather than away from its own', () => {
    const faint = [{ x1: 120, y1: 0, x2: 120, y2: 200 }];
    expect(placeLabels([one()], { ...nothing, faint }, bounds)[0]).toMatchObject({ away: false });
    expect(placeLabels([one({ optional: true })], { ...nothing, faint }, bounds)).toEqual([]);
  });

  it('does not name a line from behind another line', () => {
    const between = [{ x1: 95, y1: 0, x2: 95, y2: 200 }];
    const places = [{ x: 100, y: 100, anchor: 'start' as const, tie: { x: 90, y: 100 } }];
    expect(placeLabels([one({ places, tied: true })], { boxes: [], segments: between }, bounds)).toEqual([]);
    const own = [{ ...between[0]!, owner: 'a' }];
    expect(placeLabels([one({ places, tied: true })], { boxes: [], segments: own }, bounds)).toHaveLength(1);
  });

  it('leaves a label out when the frame is full', () => {
    const full = [{ x: 0, y: 0, width: 320, height: 200 }];
    expect(placeLabels([one()], { boxes: full, segments: [] }, bounds)).toEqual([]);
  });

  it('keeps a mark’s own words beside it, over a named line if need be', () => {
    const named = [{ x1: 120, y1: 0, x2: 120, y2: 200, owner: 'curve' }];
    const crowd = { boxes: [], segments: named };
    expect(placeLabels([one({ over: true })], crowd, bounds)[0]).toMatchObject({ away: false });
    expect(placeLabels([one()], crowd, bounds)[0]).toMatchObject({ away: true });
    const rule = [{ ...named[0]!, owner: undefined }];
    expect(placeLabels([one({ over: true })], { boxes: [], segments: rule }, bounds)[0]).toMatchObject({
      away: true,
    });
  });
});
