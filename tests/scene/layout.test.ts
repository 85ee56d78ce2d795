/** The drawing says what the engine computed, stays on its paper, and is the same drawing every time. */
import { describe, expect, test } from 'vitest';
import { seedRig } from '#catalogue';
import type { Rig } from '#physics';
import { layout } from '../../src/scene/layout/index.ts';
import { ribbonHalf } from '../../src/scene/layout/air.ts';
import type { Drawing, Frame } from '../../src/scene/types.ts';
import { bathroom, caseOf, randomRig, type Case } from './rigs.ts';

const frames: readonly Frame[] = [
  { width: 1360, height: 394, kind: 'wide' },
  { width: 1800, height: 560, kind: 'wide' },
  { width: 760, height: 220, kind: 'wide' },
  { width: 390, height: 250, kind: 'phone' },
];

const seeds: readonly Case[] = [
  bathroom(),
  ...['sag', 'crimp', 'swap', 'ties', 'bunched', 'draped'].map((kind) => bathroom(kind)),
  bathroom('sag', 'crimp', 'swap', 'ties', 'bunched'),
  bathroom('sag', 'draped'),
  caseOf('laundry', seedRig('long-laundry-run')),
  caseOf('base case', seedRig('base-case')),
];
const random: readonly Case[] = Array.from({ length: 60 }, (_, k) => caseOf(`random ${k}`, randomRig(k)));

const draw = ({ rig, solution, healthy }: Case, frame: Frame) =>
  layout(rig, solution, healthy, frame, {
    present: rig.faults?.[0]?.at ?? 'out',
    faultLabel: { title: 'Fault 1', text: 'what is wrong here' },
  });

/** Every string in the drawing, with where it stands. */
function strings(value: unknown, path = ''): [string, string][] {
  if (typeof value === 'string') return [[path, value]];
  if (Array.isArray(value)) return value.flatMap((item, k) => strings(item, `${path}[${k}]`));
  if (value && typeof value === 'object')
    return Object.entries(value).flatMap(([key, item]) => strings(item, `${path}.${key}`));
  return [];
}

function numbers(value: unknown): number[] {
  if (typeof value === 'number') return [value];
  if (Array.isArray(value)) return value.flatMap(numbers);
  return value && typeof value === 'object' ? Object.values(value).flatMap(numbers) : [];
}

/** Absolute points of a path: ends of every M, L and C/Q/S with absolute letters; relative parts are walked. */
function points(path: string): [number, number][] {
  const found: [number, number][] = [];
  let x = 0;
  let y = 0;
  for (const [, letter, rest] of path.matchAll(/([MLCQSHVZmlcqshvzta])([^MLCQSHVZmlcqshvzta]*)/g)) {
    const list = (rest!.match(/-?\d+(\.\d+)?/g) ?? []).map(Number);
    const relative = letter === letter!.toLowerCase();
    const size = { m: 2, l: 2, t: 2, c: 6, q: 4, s: 4, h: 1, v: 1, a: 7, z: 0 }[letter!.toLowerCase()]!;
    for (let k = 0; size > 0 && k + size <= list.length; k += size) {
      const last = list.slice(k, k + size);
      if (letter === 'H' || letter === 'h') x = relative ? x + last[0]! : last[0]!;
      else if (letter === 'V' || letter === 'v') y = relative ? y + last[0]! : last[0]!;
      else {
        const [dx, dy] = last.slice(-2) as [number, number];
        x = relative ? x + dx : dx;
        y = relative ? y + dy : dy;
      }
      found.push([x, y]);
    }
  }
  return found;
}

function meet(drawing: Drawing): string[] {
  const { labels } = drawing;
  return labels.flatMap((a, i) =>
    labels.slice(i + 1).flatMap((b) => {
      const clear =
        a.box.x + a.box.width <= b.box.x + 0.01 ||
        b.box.x + b.box.width <= a.box.x + 0.01 ||
        a.box.y + a.box.height <= b.box.y + 0.01 ||
        b.box.y + b.box.height <= a.box.y + 0.01;
      return clear ? [] : [`${a.text} / ${b.text}`];
    }),
  );
}

describe.each(frames)('$width x $height', (frame) => {
  // Wide frames differ only in size, so the stream of random rigs is drawn on one of them.
  const cases = frame.width === 1800 || frame.width === 760 ? seeds : [...seeds, ...random];
  test.each(cases)('$name: sound paths, all on paper, labels apart', (one) => {
    const drawing = draw(one, frame);
    expect(strings(drawing).filter(([, text]) => /NaN|Infinity|undefined|\de-\d/.test(text))).toEqual([]);
    expect(numbers(drawing).every(Number.isFinite)).toBe(true);
    const off = strings({ ...drawing, labels: drawing.labels.map((label) => label.leader ?? '') })
      .filter(([path]) => !/\.(piece|key|style|kind|side|text)$/.test(path))
      .flatMap(([path, text]) =>
        points(text)
          .filter(([x, y]) => x < -1 || y < -1 || x > frame.width + 1 || y > frame.height + 1)
          .map((p) => `${path} ${p}`),
      );
    expect(off).toEqual([]);
    for (const { box } of drawing.labels) {
      expect(box.x).toBeGreaterThanOrEqual(0);
      expect(box.x + box.width).toBeLessThanOrEqual(frame.width);
      expect(box.y + box.height).toBeLessThanOrEqual(frame.height);
    }
    expect(meet(drawing)).toEqual([]);
    expect(drawing.labels.every((label) => label.size >= (frame.kind === 'phone' ? 12 : 12))).toBe(true);
  });

  test.each(cases)('$name: the run goes from grille to wall, forward, above the ceiling', (one) => {
    const drawing = draw(one, frame);
    expect(drawing.stationX).toHaveLength(one.solution.stations.length);
    for (let k = 1; k < drawing.stationX.length; k += 1)
      expect(drawing.stationX[k]).toBeGreaterThanOrEqual(drawing.stationX[k - 1]! - 0.01);
    for (const piece of one.rig.run) expect(drawing.pieceX[piece.id]).toBeDefined();
    const lowest = Math.max(
      ...drawing.centreline.filter((place) => Math.abs(place.tx) > 0.5).map((place) => place.y + place.half),
    );
    expect(lowest).toBeLessThanOrEqual(frame.height * 0.82);
    let back = 0;
    for (let k = 1; k < drawing.centreline.length; k += 1) {
      back +=
        drawing.centreline[k]!.along < drawing.centreline[k - 1]!.along ||
        drawing.centreline[k]!.s_m < drawing.centreline[k - 1]!.s_m - 1e-9
          ? 1
          : 0;
    }
    expect(back).toBe(0);
  });
});

test('the same rig gives the same drawing, and nothing it was given is changed', () => {
  const one = bathroom('sag', 'crimp');
  const before = JSON.stringify([one.rig, one.solution]);
  const first = draw(one, frames[0]!);
  expect(JSON.stringify(draw(one, frames[0]!))).toBe(JSON.stringify(first));
  expect(JSON.stringify([one.rig, one.solution])).toBe(before);
});

describe.each(frames)('faults as computed, $width x $height', (frame) => {
  test.each([0.1, 0.35, 0.5, 0.8, 1])('sag of amount %f hangs to its depth', (amount) => {
    const rig = {
      ...seedRig('upstairs-bathroom'),
      faults: [{ kind: 'sag', at: 'out', amount, span_m: 1.7 } as const],
    };
    const one = caseOf('sag', rig);
    const drawing = draw(one, frame);
    const sag_m = one.solution.pieces.find((piece) => piece.id === 'out')!.shape.sag_m!;
    const own = drawing.centreline.filter((place) => place.piece === 'out');
    const depth = Math.max(...own.map((place) => place.y)) - own[0]!.y;
    const wanted = sag_m * drawing.pixelsPerMetre * drawing.enlargement;
    expect(wanted).toBeGreaterThan(1);
    // Samples may straddle the lowest point, by less than half a pixel.
    expect(Math.abs(depth - wanted)).toBeLessThan(0.5);
    const dimension = drawing.dimensions.find((each) => each.key === 'out/sag')!;
    expect(Math.abs(dimension.measure - wanted)).toBeLessThan(0.5);
  });

  test.each([0.2, 0.6, 0.9])('a crimp of amount %f opens to its height', (amount) => {
    const one = caseOf('crimp', {
      ...seedRig('upstairs-bathroom'),
      faults: [{ kind: 'crimp', at: 'fan', amount }],
    });
    const drawing = draw(one, frame);
    const ratio = one.solution.pieces.find((piece) => piece.id === 'fan')!.shape.crimpHeightRatio!;
    const bore = 0.1 * drawing.pixelsPerMetre * drawing.enlargement;
    expect(ratio).toBeLessThan(1);
    expect(Math.abs(drawing.crimp!.height - bore * ratio)).toBeLessThan(bore * 0.02);
  });

  test('ties bite to their bore', () => {
    const one = bathroom('ties');
    const drawing = draw(one, frame);
    const { ties, tieRatio } = one.solution.pieces.find((piece) => piece.id === 'out')!.shape;
    const own = drawing.centreline.filter((place) => place.piece === 'out');
    expect(drawing.ties).toHaveLength(ties!);
    expect(Math.abs(Math.min(...own.map((place) => place.half / place.full)) - tieRatio!)).toBeLessThan(0.03);
  });

  test.each(['sag', 'crimp', 'swap', 'ties', 'bunched', 'draped'])(
    'the ribbon keeps the share of the flow: %s',
    (kind) => {
      const one = bathroom(kind);
      const share = one.solution.flow_L_s.outdoors / one.healthy.flow_L_s.outdoors;
      expect(share).toBeLessThan(1);
      for (const place of draw(one, frame).centreline) {
        if (place.hub === 0) expect(ribbonHalf(place) / place.half).toBeCloseTo(share, 9);
      }
    },
  );
});

test('a healthy run has no hatched gap; a faulty one has', () => {
  expect(draw(bathroom(), frames[0]!).air.lost).toBe('');
  expect(draw(bathroom('sag'), frames[0]!).air.lost).not.toBe('');
});

test('ducts keep their length to scale', () => {
  const drawing = draw(bathroom(), frames[0]!);
  const { start, end } = drawing.pieceX.out!;
  expect(end - start).toBeCloseTo(5 * drawing.pixelsPerMetre, 3);
});

test('air runs faster where the bore is narrower', () => {
  const one = bathroom('crimp');
  const places = draw(one, frames[0]!).centreline.filter((place) => place.piece === 'inlet');
  const neck = places.reduce((a, b) => (b.half < a.half ? b : a));
  expect(neck.velocity_m_s).toBeGreaterThan(places[0]!.velocity_m_s * 1.5);
});

test('fewer supports leave straps that hold nothing', () => {
  expect(draw(bathroom(), frames[0]!).supports.filter((each) => each.empty)).toHaveLength(0);
  const { rig, solution, healthy } = bathroom('sag');
  const spans = (found: typeof solution) => found.pieces.find((piece) => piece.id === 'out')!.shape.spans!;
  const gone = draw({ name: '', rig, solution, healthy }, frames[0]!).supports.filter((each) => each.empty);
  expect(gone).toHaveLength(spans(healthy) - spans(solution));
  expect(gone.length).toBeGreaterThan(0);
});

test('less air, more steam', () => {
  const steam = (...kinds: string[]) => draw(bathroom(...kinds), frames[0]!).room.steam.length;
  expect(steam('sag', 'crimp', 'swap', 'ties', 'bunched')).toBeGreaterThan(steam());
});

test('the big number has clear paper', () => {
  for (const frame of frames) {
    for (const one of [...seeds, ...random]) {
      const drawing = draw(one, frame);
      const { x, y, width, height } = drawing.numberBox;
      const all = [
        drawing.air.leaving,
        drawing.building.underside,
        drawing.building.eaves,
        drawing.cowl?.body ?? '',
      ].flatMap(points);
      expect(
        all.filter(([px, py]) => px > x + 4 && px < x + width && py > y && py < y + height - 4),
        one.name,
      ).toEqual([]);
    }
  }
}, 60_000);

test('a fault growing in moves nothing by leaps', () => {
  for (const frame of frames) {
    let before: Drawing | undefined;
    for (let amount = 0.02; amount <= 1.0001; amount += 0.02) {
      const rig: Rig = {
        ...seedRig('upstairs-bathroom'),
        faults: [
          { kind: 'sag', at: 'out', amount, span_m: 1.7 },
          { kind: 'crimp', at: 'fan', amount },
        ],
      };
      const drawing = draw(caseOf('growing', rig), frame);
      if (before) {
        expect(Math.abs(drawing.pieceX.fan!.start - before.pieceX.fan!.start)).toBeLessThan(
          frame.width * 0.006,
        );
        expect(Math.abs(drawing.enlargement - before.enlargement)).toBeLessThan(0.3);
      }
      before = drawing;
    }
  }
}, 60_000);

test('the sag is measured between level supports even where the duct jogs', () => {
  const one = caseOf('laundry', seedRig('long-laundry-run'));
  const drawing = draw(one, frames[0]!);
  const sag_m = one.solution.pieces.find((piece) => piece.id === 'out')!.shape.sag_m!;
  const measure = drawing.dimensions.find((each) => each.key === 'out/sag')!.measure;
  expect(Math.abs(measure - sag_m * drawing.pixelsPerMetre * drawing.enlargement)).toBeLessThan(1);
});
