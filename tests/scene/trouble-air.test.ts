/** Air on its wrong way: which way it goes at a leak and how much, specks that follow it, and where the duct trembles. */
import { describe, expect, test } from 'vitest';
import { seedRig } from '#catalogue';
import type { Fault, Rig } from '#physics';
import { frameFor, layout } from '#scene';
import { trouble } from '#scene-trouble';
import { meter } from '../../src/scene/layout/trouble/meter.ts';
import { courses, specks } from '../../src/scene/specks.ts';
import { tremble } from '../../src/scene/tremble.ts';
import { caseOf } from './rigs.ts';

const bathroom: Rig = seedRig('upstairs-bathroom');
const frame = frameFor(1440);

function draw(faults: readonly Fault[], more: Partial<Rig> = {}) {
  const one = caseOf('air', { ...bathroom, ...more, faults });
  const healthy = caseOf('healthy', { ...bathroom, faults: [] }).solution;
  const drawing = layout(one.rig, one.solution, healthy, frame, {}, trouble.drawer);
  return { ...one, drawing, lost: drawing.trouble! };
}
const joint = (kind: Fault['kind'], at: string, amount = 1): Fault => ({ kind, at, amount });

describe('leaks', () => {
  test.each(['out', 'inlet'])('at %s as much is drawn as leaks, by its share of what the fan moves', (at) => {
    const shares = [0.2, 0.6, 1].map((amount) => {
      const { lost, solution } = draw([joint('joint-open', at, amount)]);
      const leak = solution.leaks.find((one) => one.at === at)!;
      const most = Math.max(...solution.pieces.map(({ flow_L_s }) => flow_L_s));
      const share = Math.abs(leak.flow_L_s) / most;
      expect(lost.marks.find(({ kind }) => kind === 'leak')!.measure).toBeCloseTo(share, 9);
      expect(lost.streams.reduce((sum, stream) => sum + stream.share, 0)).toBeCloseTo(share, 9);
      return share;
    });
    expect(shares).toEqual([...shares].sort((a, b) => a - b));
  });

  test.each([
    { at: 'out', out: true },
    { at: 'inlet', out: false },
  ])('at $at air goes the way the engine says', ({ at, out }) => {
    const { lost, drawing, solution } = draw([joint('joint-open', at)]);
    expect(solution.leaks[0]!.flow_L_s > 0).toBe(out);
    const fan = drawing.centreline.find(({ piece }) => piece === 'fan')!;
    const { points } = lost.streams[0]!;
    const far = (index: number) => Math.abs(points.at(index)!.y - fan.y);
    expect(far(-1) > far(0)).toBe(out);
  });

  test('what leaks out wets the insulation below; what is drawn in does not, nor does dry air', () => {
    const wet = (faults: readonly Fault[], more?: Partial<Rig>) =>
      draw(faults, more).lost.marks.some(({ quiet, kind }) => kind === 'leak' && quiet !== '');
    expect(wet([joint('joint-open', 'out')])).toBe(true);
    expect(wet([joint('joint-open', 'inlet')])).toBe(false);
    expect(wet([joint('joint-open', 'out')], { air: { temperature_C: 22, relativeHumidity: 0.3 } })).toBe(
      false,
    );
  });

  test('off altogether the duct hangs clear, air pours out of the bare end and none beyond it', () => {
    const { drawing, lost } = draw([joint('joint-off', 'out')]);
    const run = drawing.centreline;
    const mouth = run.find(({ piece }) => piece === 'out')!;
    const end = run[run.indexOf(mouth) - 1]!;
    expect(mouth.y - end.y).toBeGreaterThan(end.full);
    expect(mouth.x).toBeGreaterThan(end.x);
    expect(lost.streams.reduce((sum, stream) => sum + stream.share, 0)).toBeCloseTo(1, 6);
    expect(lost.streams[0]!.points.at(-1)!.x).toBeGreaterThan(lost.streams[0]!.points[0]!.x);
    expect(drawing.air.leaving).toBe('');
    expect(drawing.air.entering).not.toBe('');
  });

  test('spread leakage has a tick each side at every place it was reckoned at', () => {
    const run = bathroom.run.map((piece) =>
      piece.kind === 'duct' ? { ...piece, leakCoefficient_L_s_m2: 0.2 } : piece,
    );
    const { lost, solution } = draw([], { run });
    for (const at of ['inlet', 'out']) {
      const air = lost.marks.find(({ kind, piece }) => kind === 'seams' && piece === at)!.air;
      const places = solution.leaks.filter((leak) => leak.at === at).length;
      expect(air.match(/Q/g)).toHaveLength(places * 2);
    }
  });
});

describe('specks', () => {
  test('go on past the cowl, and come in from the room', () => {
    const { drawing } = draw([]);
    const all = courses(drawing).flatMap((course) => specks(drawing, course, 0.4));
    expect(all.some(({ x2 }) => x2 > drawing.outlet.x + drawing.centreline[0]!.full)).toBe(true);
    expect(all.some(({ y1 }) => y1 > drawing.centreline[0]!.y + 4)).toBe(true);
  });

  const drift = (more: Partial<Rig>, faults: readonly Fault[] = []) => {
    const { drawing, solution } = draw(faults, more);
    const [course] = courses(drawing).sort((a, b) => b.count - a.count);
    const x = (phase: number) => specks(drawing, course!, phase).map((speck) => (speck.x1 + speck.x2) / 2);
    const before = x(0.4);
    const moved = x(0.4004).map((now, k) => now - before[k]!);
    return {
      direction: solution.direction,
      way: course!.way,
      moved: moved.sort((a, b) => a - b)[Math.floor(moved.length / 2)]!,
    };
  };

  test('run backwards where the wind blows the fan back', () => {
    expect(drift({})).toMatchObject({ direction: 'forward', way: 1 });
    expect(drift({}).moved).toBeGreaterThan(0);
    const back = drift({ outdoors: { wind_Pa: 400 } });
    expect(back).toMatchObject({ direction: 'reversed', way: -1 });
    expect(back.moved).toBeLessThan(0);
  });

  test('stand still in duct that has come off, and thin out behind a leak', () => {
    const off = draw([joint('joint-off', 'out')]).drawing;
    const still = courses(off).find(({ places }) => places[0]!.piece === 'out')!;
    expect(still.way).toBe(0);
    expect(specks(off, still, 0.1)).toEqual(specks(off, still, 0.1));
    const inOut = (faults: readonly Fault[]) => {
      const { drawing } = draw(faults);
      const x = drawing.pieceX['out']!;
      const end = x.end - 20;
      let seen = 0;
      for (let phase = 0; phase < 1; phase += 0.1)
        seen += specks(drawing, courses(drawing)[0]!, phase).filter(
          ({ x1, y1 }) => x1 > x.start + 20 && x1 < end && y1 < frame.height * 0.6,
        ).length;
      return seen;
    };
    expect(inOut([joint('joint-open', 'out')]) / inOut([])).toBeLessThan(0.85);
  });

  test('leave through a leak by their share', () => {
    const { drawing } = draw([joint('joint-off', 'out', 0.6)]);
    const [main, ...wandering] = courses(drawing);
    const rate = (course: typeof main) => course!.count / course!.seconds;
    const share = drawing.trouble!.streams.reduce((sum, stream) => sum + stream.share, 0);
    const leaving = wandering.reduce((sum, course) => sum + rate(course), 0);
    expect(leaving / rate(main)).toBeGreaterThan(share * 0.7);
    expect(leaving / rate(main)).toBeLessThan(share * 1.4);
  });
});

describe('where it trembles', () => {
  const at = (...faults: Fault[]) => {
    const { rig, solution } = draw(faults);
    return tremble(rig, solution);
  };
  test('the duct before a crimp, the crushed duct, and never further than a pixel and a half', () => {
    expect(at()).toBe(null);
    expect(at(joint('crimp', 'fan', 0.9))!.piece).toBe('inlet');
    expect(at(joint('crushed', 'out'))!.piece).toBe('out');
    expect(at(joint('crushed', 'out'))!.px).toBeLessThanOrEqual(1.5);
    expect(at(joint('crimp', 'fan', 0.9))!.px).toBeGreaterThan(at(joint('crimp', 'fan', 0.6))!.px);
  });
});

describe('meters', () => {
  const kinds = [
    'powered-hood',
    'passive-hood',
    'vane-anemometer',
    'bag',
    'manometer',
    'pitot-traverse',
  ] as const;
  test.each(kinds.flatMap((kind) => [1440, 390].map((width) => ({ kind, width }))))(
    '$kind is held at its place, its figure on the paper, on $width px',
    ({ kind, width }) => {
      const one = caseOf('meter', { ...bathroom, faults: [] });
      const drawing = layout(one.rig, one.solution, one.healthy, frameFor(width), {}, trouble.drawer);
      const place = kind === 'manometer' ? 'inlet' : kind === 'pitot-traverse' ? 'out' : 'grille';
      const held = meter(drawing, { kind, place, text: '24.5' })!;
      expect(JSON.stringify(held)).not.toMatch(/NaN|null/);
      const { window } = held;
      expect(window.x).toBeGreaterThanOrEqual(0);
      expect(window.x + window.width).toBeLessThanOrEqual(drawing.frame.width);
      expect(window.y + window.height).toBeLessThanOrEqual(drawing.frame.height);
      const { start, end } = drawing.pieceX[place]!;
      const reach = drawing.centreline[0]!.full * 6 + window.width;
      expect(window.x + window.width / 2).toBeGreaterThan(Math.min(start, end) - reach);
      expect(window.x + window.width / 2).toBeLessThan(Math.max(start, end) + reach);
    },
  );
  test('nothing is held where there is no such piece', () => {
    const one = caseOf('meter', bathroom);
    const drawing = layout(one.rig, one.solution, one.healthy, frame);
    expect(meter(drawing, { kind: 'bag', place: 'elsewhere', text: '1' })).toBe(null);
  });
});
