/** The starter catalogue holds only what the checks would accept from anyone, and says where its numbers come from. */
import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import {
  instruments,
  readFanTable,
  readInstrument,
  readMaterial,
  rates,
  readRigText,
  seedRig,
  seedRigIds,
  stock,
  tell,
} from '#catalogue';
import { FAULTS, solve, type Rig, type Solution } from '#physics';

const folder = new URL('../../seeds/', import.meta.url);
const text = (name: string) => readFileSync(new URL(name, folder), 'utf8');
const entries = (name: string) => Object.entries(JSON.parse(text(name)) as Record<string, unknown>);

function accepted<Result extends { readonly ok: boolean }>(read: Result): Extract<Result, { ok: true }> {
  if (!read.ok)
    throw new Error(
      (read as unknown as { problems: Parameters<typeof tell>[0][] }).problems.map(tell).join('\n'),
    );
  return read as Extract<Result, { ok: true }>;
}

function solved(rig: Rig): Solution {
  const solution = solve(rig, stock);
  if (solution.outcome === 'failed') throw new Error(`${solution.path}: ${solution.found}`);
  return solution;
}

it('holds nothing that the catalogue does not hand out', () => {
  expect(readdirSync(folder).sort()).toEqual([
    'fans.json',
    'instruments.json',
    'materials.json',
    'rates.json',
    'rigs',
  ]);
  expect(rates).toEqual(JSON.parse(text('rates.json')));
  expect(readdirSync(new URL('rigs/', folder)).sort()).toEqual(seedRigIds.map((id) => `${id}.json`).sort());
  expect(Object.keys(stock.fans)).toEqual(entries('fans.json').map(([id]) => id));
});

describe('fans', () => {
  it.each(entries('fans.json'))('%s is sound, invented, and says its watts', (id, table) => {
    const fan = accepted(readFanTable(table, `fans.json ${id}`)).value;
    expect(fan.origin).toMatch(/^invented/);
    expect(fan.points.every((point) => (point.power_W ?? 0) > 0)).toBe(true);
    expect(fan.points.at(-1)!.pressure_Pa).toBe(0);
    expect(fan.saddle ?? false).toBe(id.startsWith('axial'));
    expect(fan.motorFloor_W !== undefined).toBe(fan.motor === 'EC');
  });

  /** Spot values of the normalised shapes: mixed-flow 0.53 of shut-off pressure at 0.7 flow; axial dips to 0.525 at 0.4. */
  it.each([
    ['mixed-100', 7, 43.4, 185 * 0.53, 32],
    ['mixed-150', 3, 45, 310 * 0.855, 68 * 0.91],
    ['mixed-ec-200', 10, 280, 0, 125 * 0.92],
    ['axial-100', 4, 10.8, 42 * 0.525, 13],
    ['axial-125', 5, 26, 60 * 0.54, 22 * 0.99],
  ])('%s follows its shape at point %d', (id, index, flow, pressure, power) => {
    const point = stock.fans[id]!.points[index]!;
    expect(point.flow_L_s).toBeCloseTo(flow, 6);
    expect(Math.abs(point.pressure_Pa - pressure)).toBeLessThan(0.0051);
    expect(Math.abs(point.power_W! - power)).toBeLessThan(0.0051);
  });

  it('has a small mixed-flow, a small axial and a larger EC mixed-flow', () => {
    expect(stock.fans['mixed-100']!.points.at(-1)!.flow_L_s).toBeLessThan(100);
    expect(stock.fans['axial-100']!.points.at(-1)!.flow_L_s).toBeLessThan(100);
    expect(stock.fans['mixed-ec-200']!.motor).toBe('EC');
  });
});

describe('materials', () => {
  it.each(entries('materials.json'))(
    '%s is within its published range and names its source',
    (id, material) => {
      const { source, mark } = accepted(readMaterial(material, `materials.json ${id}`)).value;
      expect(source).toMatch(/ASHRAE Fundamentals 2021 \(SI\) ch\. 21/);
      expect(source).toContain('not checked against the printed handbook');
      expect(mark).toBe('transcribed');
    },
  );

  it('has one of every behaviour', () => {
    expect(new Set(Object.values(stock.materials).map(({ behaviour }) => behaviour))).toEqual(
      new Set(['rigid', 'semi-rigid', 'flexible']),
    );
  });
});

describe('instruments', () => {
  it.each(entries('instruments.json'))('%s is sound and says how far it can be out', (id, value) => {
    const instrument = accepted(readInstrument(value, `instruments.json ${id}`)).value;
    expect(Object.keys(instrument).some((key) => key.startsWith('error'))).toBe(true);
    expect(instruments[id]).toEqual(instrument);
  });
});

describe('rigs', () => {
  it.each(seedRigIds)('%s is accepted as it stands in its file, says it is invented, and solves', (id) => {
    const { rig } = accepted(readRigText(text(`rigs/${id}.json`), `${id}.json`));
    expect(rig).toEqual(seedRig(id));
    expect(rig.about).toMatch(/^Invented\./);
    expect(Math.abs(solved(rig).residual_Pa)).toBeLessThan(1e-6);
  });

  it('are handed out as copies', () => {
    expect(seedRig('base-case')).not.toBe(seedRig('base-case'));
  });

  it('the bathroom starts healthy and with room to spare', () => {
    const rig = seedRig('upstairs-bathroom');
    expect(rig.faults).toEqual([]);
    expect(solved(rig).flow_L_s.room).toBeGreaterThan(rig.required!.flow_L_s * 1.2);
  });

  it('the leaky loft run has every kind of piece and fault, and mending them all gets more air outdoors', () => {
    const rig = seedRig('leaky-loft-run');
    expect(new Set(rig.faults!.map(({ kind }) => kind))).toEqual(new Set(Object.keys(FAULTS)));
    const pieces = ['grille', 'duct', 'elbow', 'reducer', 'fan', 'damper', 'terminal'];
    expect([...new Set(rig.run.map(({ kind }) => kind))].sort()).toEqual(pieces.sort());
    const { flow_L_s, leaks } = solved(rig);
    expect(flow_L_s.fan).toBeGreaterThan(flow_L_s.room + 1);
    expect(flow_L_s.outdoors).toBeLessThan(flow_L_s.fan - 10);
    expect(new Set(leaks.map(({ side }) => side))).toEqual(new Set(['suction', 'discharge']));
    expect(solved({ ...rig, faults: [] }).flow_L_s.outdoors).toBeGreaterThan(flow_L_s.outdoors + 20);
  });

  it('the laundry run carries the five faults of the first lesson, and mending them all moves more air', () => {
    const rig = seedRig('long-laundry-run');
    expect(rig.faults!.map(({ kind }) => kind)).toEqual([
      'sag',
      'crimp',
      'flexible-swap',
      'tight-ties',
      'extra-length',
    ]);
    expect(solved({ ...rig, faults: [] }).flow_L_s.room).toBeGreaterThan(solved(rig).flow_L_s.room + 10);
    const length = rig.run.reduce((sum, piece) => sum + (piece.kind === 'duct' ? piece.path_m : 0), 0);
    expect(length).toBeCloseTo(9.5, 6);
  });

  it('the base case gives the flow and pressure worked out beside it by another program', () => {
    const { flow_L_s, fan } = solved(seedRig('base-case'));
    expect(Math.abs(flow_L_s.fan - 89.4287)).toBeLessThan(0.05);
    expect(Math.abs(fan.pressure_Pa - 152.5206)).toBeLessThan(0.2);
  });
});
