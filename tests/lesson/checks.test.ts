/** The checks against made-up sights with a known answer, one for each answer they can give. */
import { describe, expect, it } from 'vitest';
import type { CurvePoint, Solution } from '#physics';
import { answersOf, trueAnswer, type CheckName, type Sight } from '#lesson';

const FLOWS = [0, 10, 20, 30, 40, 50, 60];
const curve = (height: (flow: number) => number): CurvePoint[] =>
  FLOWS.map((flow) => ({ flow_L_s: flow, pressure_Pa: height(flow) }));
const run = curve((flow) => 0.08 * flow ** 2);
const fan = curve((flow) => 185 - 3 * flow);

/** Only what the checks read. */
const solution = (flow_L_s: number, pressure_Pa: number, losses: Record<string, number> = {}) =>
  ({
    flow_L_s: { room: flow_L_s, fan: flow_L_s, outdoors: flow_L_s },
    fan: { pressure_Pa },
    pieces: Object.entries(losses).map(([id, loss_Pa]) => ({ id, loss_Pa })),
  }) as unknown as Solution;

const STILL: Sight = {
  before: solution(40, 120, { inlet: 20, out: 30, cowl: 40 }),
  after: solution(40, 120, { inlet: 20, out: 30, cowl: 40 }),
  system: { before: run, after: run },
  fan: { before: fan, after: fan },
};
const system = (after: CurvePoint[]): Sight => ({ ...STILL, system: { before: run, after } });
const fans = (after: CurvePoint[]): Sight => ({ ...STILL, fan: { before: fan, after } });
const after = (flow: number, pressure: number, losses?: Record<string, number>): Sight => ({
  ...STILL,
  after: solution(flow, pressure, losses),
});

describe('what there is to see', () => {
  it.each<[CheckName, string | null, Sight]>([
    ['system-curve', 'unchanged', STILL],
    ['system-curve', 'steeper', system(curve((flow) => 0.1 * flow ** 2))],
    ['system-curve', 'flatter', system(curve((flow) => 0.06 * flow ** 2))],
    ['system-curve', 'shifted', system(curve((flow) => 30 + 0.08 * flow ** 2))],
    ['system-curve', null, system(curve((flow) => 30 + 0.1 * flow ** 2))],
    ['system-curve', null, { ...STILL, system: { before: [], after: [] } }],
    ['operating-point', 'still', STILL],
    ['operating-point', 'up-left', after(35, 130)],
    ['operating-point', 'down-left', after(35, 110)],
    ['operating-point', 'right', after(45, 110)],
    ['operating-point', null, after(35, 120)],
    ['share-gained', 'nothing', STILL],
    ['share-gained', 'a-little', after(45, 110)],
    ['share-gained', 'a-quarter', after(50, 100)],
    ['share-gained', 'half', after(60, 90)],
    ['share-gained', 'more', after(70, 60)],
    ['share-gained', null, after(35, 130)],
    ['verdict', 'marginal', { ...STILL, verdict: 'marginal' }],
    ['verdict', null, STILL],
    ['which-piece', 'inlet', after(38, 122, { inlet: 28, out: 27, cowl: 36 })],
    ['which-piece', 'fan', after(38, 122, { inlet: 19, fan: 9, out: 27, cowl: 36 })],
    ['which-piece', null, STILL],
    ['which-piece', null, after(38, 122, { inlet: 28, out: 40, cowl: 36 })],
    ['fan-pressure', 'same', STILL],
    ['fan-pressure', 'rose', after(35, 130)],
    ['fan-pressure', 'fell', after(45, 110)],
    ['fan-curve', 'unchanged', STILL],
    ['fan-curve', 'dropped', fans(curve((flow) => 160 - 3 * flow))],
    ['fan-curve', 'lifted', fans(curve((flow) => 200 - 3 * flow))],
    ['fan-curve', null, fans(curve((flow) => 200 - 4 * flow))],
  ])('%s: %s', (name, answer, sight) => {
    expect(trueAnswer(name, sight)).toBe(answer);
    const answers = answersOf(name);
    if (answer && answers) expect(answers).toContain(answer);
  });
});
