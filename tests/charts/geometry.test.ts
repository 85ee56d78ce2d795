/** The crossing and the walk as geometry: labels that fit at every size, and no NaN from poor input. */
import { describe, expect, it } from 'vitest';
import { boxesOverlap } from '../../src/charts/placeLabels.ts';
import { layout, readable, visible, type CrossingInput } from '../../src/charts/crossing.ts';
import { clip, pressureAt, tidy } from '../../src/charts/curve.ts';
import { walkLayout } from '../../src/charts/walk.ts';
import { crossing, meeting, stations } from './fixtures.ts';

const sizes = [
  { width: 350, height: 230, type: 14 },
  { width: 460, height: 285, type: 14 },
  { width: 700, height: 430, type: 14 },
  { width: 900, height: 520, type: 30 },
];

describe('labels on the crossing', () => {
  for (const size of sizes) {
    for (const imperial of [false, true]) {
      it(`never lie on each other at ${size.width} px, ${imperial ? 'cfm' : 'L/s'}`, () => {
        const choice = imperial
          ? ({ flow: 'cfm', pressure: 'in w.g.' } as const)
          : ({ flow: 'L/s', pressure: 'Pa' } as const);
        for (let steps = 0; steps <= 5; steps += 1) {
          const result = crossing(steps).point!.flow_L_s;
          for (const off of [-12, -3, -0.4, 0, 0.4, 3, 12]) {
            for (const required of [undefined, 25, result + 0.5]) {
              const input = crossing(steps, { predicted: result + off, required, choice });
              const { labels, frame } = layout(visible(input), size);
              const ids = labels.map((label) => label.id);
              expect(ids).toContain('you');
              expect(ids).toContain('fan');
              expect(ids).toContain(`curve-s${steps}`);
              if (required != null) expect(ids).toContain('required');
              labels.forEach((label, index) => {
                for (const other of labels.slice(index + 1))
                  expect(boxesOverlap(label.box, other.box)).toBe(false);
                expect(label.box.x).toBeGreaterThanOrEqual(0);
                expect(label.box.y + label.box.height).toBeLessThanOrEqual(frame.height);
                expect(label.box.x + label.box.width).toBeLessThanOrEqual(frame.width + size.type);
              });
            }
          }
        }
      });
    }
  }

  it('measures a prediction against what leaves a leaking run, and draws no band round the fan', () => {
    const result = crossing(1).point!.flow_L_s;
    const likely = { low_L_s: result - 7, high_L_s: result - 3 };
    const tight = crossing(1, { predicted: result - 8, likely });
    const leaking = layout(visible({ ...tight, leaving_L_s: result - 5 }), sizes[1]!);
    expect(leaking.gap!.from).toBeCloseTo(leaking.x(result - 5), 6);
    expect(leaking.band).toBeUndefined();
    expect(leaking.likely).toBeDefined();
    const sound = layout(visible(tight), sizes[1]!);
    expect(sound.gap!.from).toBeCloseTo(sound.x(result), 6);
    expect(sound.band).toBeDefined();
  });

  it('thins the ticks when there is less room', () => {
    const narrow = layout(visible(crossing()), sizes[0]!);
    const wide = layout(visible(crossing()), sizes[2]!);
    expect(narrow.xTicks.length).toBeLessThan(wide.xTicks.length);
  });

  it('keeps its scales from step to step', () => {
    const [first, last] = [layout(visible(crossing(1)), sizes[1]!), layout(visible(crossing(5)), sizes[1]!)];
    expect(first.x(30)).toBe(last.x(30));
    expect(first.y(100)).toBe(last.y(100));
  });
});

describe('what may be seen before the reveal', () => {
  it('is everything but the present curve and point', () => {
    const view = visible(crossing(2, { hideResult: true }));
    expect(view.point).toBeNull();
    expect(view.curves.map((curve) => curve.tone)).toEqual(['healthy', 'before']);
    expect(readable(view)?.tone).toBe('before');
    const drawn = layout(view, sizes[1]!);
    expect(drawn.dot).toBeUndefined();
    expect(drawn.gap).toBeUndefined();
    expect(drawn.arrow).toBeUndefined();
    expect(drawn.labels.map((label) => label.id)).not.toContain('result');
  });
});

describe('poor input', () => {
  const flat = { flow_L_s: 0, pressure_Pa: 0 };
  const poor: Record<string, Partial<CrossingInput>> = {
    'zero flow': { point: flat, before: flat, predicted: 0, required: 0 },
    'no points': { fan: [], curves: crossing().curves.map((curve) => ({ ...curve, points: [] })) },
    'one point': { fan: [flat] },
    'all equal': {
      fan: Array(5).fill(flat),
      curves: crossing().curves.map((curve) => ({ ...curve, points: Array(5).fill(flat) })),
    },
    level: { fan: [flat, { flow_L_s: 60, pressure_Pa: 0 }] },
    'not numbers': {
      fan: [
        flat,
        { flow_L_s: NaN, pressure_Pa: 3 },
        { flow_L_s: 9, pressure_Pa: Infinity },
        { flow_L_s: 60, pressure_Pa: 1 },
      ],
      point: { flow_L_s: NaN, pressure_Pa: NaN },
      predicted: NaN,
    },
    'no extent': { extent: flat },
    'far off the chart': { point: { flow_L_s: 500, pressure_Pa: 9000 }, predicted: 400 },
  };
  for (const [name, input] of Object.entries(poor)) {
    it(`draws no NaN: ${name}`, () => {
      const drawn = layout(visible(crossing(1, input)), sizes[1]!);
      const text = JSON.stringify(drawn, (_, value: unknown) =>
        typeof value === 'number' && !Number.isFinite(value) ? 'NaN' : value,
      );
      expect(text).not.toMatch(/NaN|Infinity/);
    });
  }

  it('holds a point off the axes at the edge and says which way it lies', () => {
    const drawn = (flow_L_s: number, pressure_Pa: number) =>
      layout(visible(crossing(1, { point: { flow_L_s, pressure_Pa }, before: null })), sizes[1]!);
    const { dot: inside, beyond } = drawn(30, 100);
    expect(inside!.x).toBeGreaterThan(0);
    expect(beyond).toBeUndefined();
    const back = drawn(-27, 100);
    expect([back.dot!.x, back.dot!.y]).toEqual([0, inside!.y]);
    expect(Math.abs(back.beyond!)).toBe(180);
    const high = drawn(30, 9000);
    expect([high.dot!.x, high.dot!.y]).toEqual([inside!.x, 0]);
    expect(high.beyond).toBe(-90);
  });

  it('draws no NaN on the walk', () => {
    const at = (total_Pa: number, x = 10) => ({ x, total_Pa, static_Pa: total_Pa, after: 'a' });
    const lists = [[], [at(0)], [at(0), at(0)], [at(5), at(NaN, 40), at(5, 60)], stations];
    for (const list of lists) {
      for (const extent_Pa of [
        [0, 0],
        [-60, 150],
        [NaN, 3],
      ] as const) {
        const cause = { x0: 5, x1: 30, text: 'x' };
        const drawn = walkLayout(
          {
            stations: list,
            before: list,
            choice: { flow: 'L/s', pressure: 'Pa' },
            extent_Pa,
            cause,
            highlight: 'a',
          },
          600,
          110,
          14,
        );
        const text = JSON.stringify(drawn, (_, value: unknown) =>
          typeof value === 'number' && !Number.isFinite(value) ? 'NaN' : value,
        );
        expect(text).not.toMatch(/NaN|Infinity/);
      }
    }
  });
});

describe('curves', () => {
  it('are cut where they leave the frame', () => {
    expect(
      clip(
        [
          { x: 0, y: 50 },
          { x: 100, y: -50 },
        ],
        100,
        100,
      ),
    ).toEqual([
      { x: 0, y: 50 },
      { x: 50, y: 0 },
    ]);
    expect(
      clip(
        [
          { x: -10, y: 5 },
          { x: 10, y: 5 },
          { x: 200, y: 5 },
        ],
        100,
        100,
      ),
    ).toEqual([
      { x: 0, y: 5 },
      { x: 10, y: 5 },
      { x: 100, y: 5 },
    ]);
  });
  it('are read between their points and not beyond', () => {
    const points = tidy([
      { flow_L_s: 10, pressure_Pa: 40 },
      { flow_L_s: 0, pressure_Pa: 20 },
    ]);
    expect(pressureAt(points, 2.5)).toBe(25);
    expect(pressureAt(points, 0)).toBe(20);
    expect(pressureAt(points, 11)).toBeNull();
    expect(pressureAt(points, -1)).toBeNull();
    expect(pressureAt([], 3)).toBeNull();
  });
  it('meet where the fixture says', () => {
    const point = meeting(0.1);
    expect(pressureAt(tidy(crossing().fan), point.flow_L_s)).toBeCloseTo(point.pressure_Pa, 0);
  });
});
