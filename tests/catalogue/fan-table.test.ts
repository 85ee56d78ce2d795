/** Fan tables that cannot be a fan, alone and inside a rig. */
import { describe, expect, it } from 'vitest';
import {
  readFanTable,
  readInstrument,
  readMaterial,
  readRig,
  stock,
  tell,
  instruments,
  type ProblemCode,
} from '#catalogue';
import { changed, type Loose } from './changed.ts';

const good = (): Loose => ({
  pressure: 'static',
  points: [
    { flow_L_s: 0, pressure_Pa: 100, power_W: 20 },
    { flow_L_s: 20, pressure_Pa: 60, power_W: 21 },
    { flow_L_s: 30, pressure_Pa: 70, power_W: 21 },
    { flow_L_s: 40, pressure_Pa: 0, power_W: 20 },
  ],
  saddle: true,
});

const cases: [string, (table: Loose) => unknown, ProblemCode, string, ...string[]][] = [
  [
    'rises',
    (t) => delete t.saddle,
    'pressure-rises',
    'points[2].pressure_Pa',
    '70 Pa after 60 Pa',
    'at most 60 Pa',
    '"saddle": true',
  ],
  ['rises, saddle denied', (t) => (t.saddle = false), 'pressure-rises', 'points[2].pressure_Pa', '70 Pa'],
  [
    'rises from the start',
    (t) => (t.points[1].pressure_Pa = 120),
    'saddle-too-high',
    'points[1].pressure_Pa',
    '120 Pa',
    '100 Pa at the first point',
  ],
  [
    'rises above its start past the dip',
    (t) => (t.points[2].pressure_Pa = 101),
    'saddle-too-high',
    'points[2].pressure_Pa',
    '101 Pa',
    '100 Pa',
  ],
  [
    'has two dips',
    (t) => t.points.push({ flow_L_s: 50, pressure_Pa: 5, power_W: 20 }),
    'pressure-rises-twice',
    'points[4].pressure_Pa',
    '5 Pa after 0 Pa',
    'one dip',
  ],
  [
    'repeats a flow',
    (t) => (t.points[2].flow_L_s = 20),
    'flow-does-not-rise',
    'points[2].flow_L_s',
    '20 L/s after 20 L/s',
    'more than 20 L/s',
  ],
  [
    'goes back in flow',
    (t) => (t.points[2].flow_L_s = 10),
    'flow-does-not-rise',
    'points[2].flow_L_s',
    '10 L/s after 20 L/s',
  ],
  ['has two points', (t) => t.points.splice(2), 'too-few', 'points', '2 points', 'at least 3'],
  ['has no points', (t) => (t.points = []), 'too-few', 'points', '0 points'],
  [
    'has a negative pressure',
    (t) => (t.points[3].pressure_Pa = -5),
    'out-of-range',
    'points[3].pressure_Pa',
    '-5',
    'from 0',
  ],
  [
    'has a negative flow',
    (t) => (t.points[0].flow_L_s = -5),
    'out-of-range',
    'points[0].flow_L_s',
    '-5',
    'from 0',
  ],
  [
    'has a negative power',
    (t) => (t.points[0].power_W = -1),
    'out-of-range',
    'points[0].power_W',
    '-1',
    'watts',
  ],
  [
    'says power at some points',
    (t) => delete t.points[1].power_W,
    'power-in-part',
    'points[1].power_W',
    'at every point or at none',
  ],
  [
    'is in m3/s',
    (t) => t.points.forEach((p: Loose) => (p.flow_L_s /= 1000)),
    'out-of-range',
    'points[3].flow_L_s',
    '0.04',
    'cubic metres per second, which would be 40',
  ],
  [
    'is in kPa',
    (t) => t.points.forEach((p: Loose) => (p.pressure_Pa /= 1000)),
    'out-of-range',
    'points[0].pressure_Pa',
    '0.1',
    'kilopascals, which would be 100',
  ],
  ['says neither total nor static', (t) => delete t.pressure, 'missing-key', 'pressure', 'the key pressure'],
  [
    'says another pressure',
    (t) => (t.pressure = 'gauge'),
    'not-one-of',
    'pressure',
    '"gauge"',
    '"total", "static"',
  ],
  [
    'has a bare number for a point',
    (t) => (t.points[1] = 60),
    'wrong-type',
    'points[1]',
    'found 60',
    'flow_L_s',
  ],
];

describe.each(cases)('a fan table that %s', (_, change, code, path, ...words) => {
  const table = good();
  change(table);

  it.each([
    ['in a file of its own', '', () => readFanTable(table, 'fan.json')],
    [
      'inside a rig',
      'run[2].fan.',
      () =>
        readRig(
          changed((rig) => (rig.run[2].fan = table)),
          'fan.json',
        ),
    ],
  ])('is refused %s', (_where, prefix, read) => {
    const result = read();
    if (result.ok) throw new Error('accepted');
    const problem = result.problems.find((each) => each.code === code && each.path === `${prefix}${path}`);
    if (problem === undefined) throw new Error(result.problems.map(tell).join('\n'));
    for (const word of ['fan.json: ', 'found ', '; allowed: ', ...words])
      expect(tell(problem)).toContain(word);
  });
});

it.each([
  ['with an honest stall dip', () => {}],
  ['without power', (t: Loose) => t.points.forEach((p: Loose) => delete p.power_W)],
  ['level over part of it', (t: Loose) => ((t.points[2].pressure_Pa = 60), delete t.saddle)],
])('a fan table %s is accepted', (_, change) => {
  const table = good();
  change(table);
  const read = readFanTable(table, 'fan.json');
  expect(read.ok ? [] : read.problems.map(tell)).toEqual([]);
});

describe('materials and instruments', () => {
  const material = (change: (m: Loose) => unknown) => {
    const one: Loose = structuredClone(stock.materials.flexible);
    change(one);
    const read = readMaterial(one, 'm.json');
    return read.ok ? [] : read.problems.map(({ code, path }) => `${code} ${path}`);
  };
  const instrument = (change: (i: Loose) => unknown) => {
    const one: Loose = structuredClone(instruments.manometer);
    change(one);
    const read = readInstrument(one, 'i.json');
    return read.ok ? [] : read.problems.map(({ code, path }) => `${code} ${path}`);
  };

  it.each<[string, (m: Loose) => unknown, string[]]>([
    ['as shipped', () => {}, []],
    ['rougher than its own range', (m) => (m.roughness_mm = 3), ['outside-own-range roughness_mm']],
    ['with its range backwards', (m) => m.roughnessRange_mm.reverse(), ['range-backwards roughnessRange_mm']],
    ['with one end of a range', (m) => m.roughnessRange_mm.pop(), ['out-of-range roughnessRange_mm[1]']],
    ['with three ends of a range', (m) => m.roughnessRange_mm.push(1), ['wrong-type roughnessRange_mm[2]']],
    ['without a source', (m) => delete m.source, ['missing-key source']],
    ['with a mark of its own', (m) => (m.mark = 'sure'), ['not-one-of mark']],
  ])('material %s', (_, change, expected) => expect(material(change)).toEqual(expected));

  it.each<[string, (i: Loose) => unknown, string[]]>([
    ['as shipped', () => {}, []],
    ['measuring colour', (i) => (i.measures = 'colour'), ['not-one-of measures']],
    ['with a range of another quantity', (i) => (i.range_L_s = [0, 1]), ['unknown-key range_L_s']],
    ['with its range backwards', (i) => i.range_Pa.reverse(), ['range-backwards range_Pa']],
    ['with no resolution', (i) => (i.resolution_Pa = 0), ['wrong-type resolution_Pa']],
    ['with an error in per cent', (i) => (i.errorShare = 6), ['out-of-range errorShare']],
  ])('instrument %s', (_, change, expected) => expect(instrument(change)).toEqual(expected));
});
