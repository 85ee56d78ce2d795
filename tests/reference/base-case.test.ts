/**
 * One run with every coefficient stated (seeds/rigs/base-case.json), worked apart from this engine:
 * own scripts in two languages and, for the rows marked EPANET, a general pipe-network solver (EPANET
 * 2.3.5 through epanet-js 0.9.0), which takes Swamee-Jain for friction where we take Colebrook.
 */
import { describe, expect, test } from 'vitest';
import {
  bracketedRoot,
  fanCurveOf,
  monotoneCubic,
  solve,
  swameeJain,
  systemCurve,
  thinNeck,
  type FanTable,
  type Fault,
  type Piece,
  type Rig,
  type Solution,
} from '#physics';
import baseCase from '../../seeds/rigs/base-case.json' with { type: 'json' };
import { expectPrinted, expectWithin, stock, straight } from './support.ts';

const rig = baseCase as unknown as Rig;

function solved(changed: Rig): Solution {
  const solution = solve(changed, stock);
  if (solution.outcome !== 'solved') throw new Error(`${solution.path}: ${solution.found}`);
  return solution;
}

const flowOf = (changed: Rig) => solved(changed).flow_L_s.fan;

function change(id: string, replacement: object): Rig {
  return {
    ...rig,
    run: rig.run.map((piece) => (piece.id === id ? ({ ...piece, ...replacement } as Piece) : piece)),
  };
}

/** A loss of its own just before the fan. */
function withLoss(coefficient: number): Rig {
  const at = rig.run.findIndex((piece) => piece.kind === 'fan');
  return {
    ...rig,
    run: rig.run.toSpliced(at, 0, {
      id: 'extra',
      kind: 'fitting',
      diameter_mm: 150,
      lossCoefficient: coefficient,
    }),
  };
}

const withFault = (fault: Fault): Rig => ({ ...rig, faults: [fault] });
const fanTable = (rig.run.find((piece) => piece.kind === 'fan') as { fan: FanTable }).fan;
const AIR = { density_kg_m3: 1.2, kinematicViscosity_m2_s: 1.51e-5 };

describe('base case', () => {
  const solution = solved(rig);
  const flow = solution.flow_L_s.fan;

  test('89.4287 L/s at 152.5206 Pa', () => {
    expect(Math.abs(flow - 89.4287)).toBeLessThan(0.001);
    expect(Math.abs(solution.fan.pressure_Pa - 152.5206)).toBeLessThan(0.002);
  });

  test('speed, velocity pressure, Re and friction factors', () => {
    expectPrinted(solution.pieces[1]!.velocity_m_s, '5.0606');
    expectPrinted(solution.pieces[1]!.velocityPressure_Pa, '15.366');
    expectPrinted(straight(150, flow, 0.9, AIR).reynolds, '50271');
    expectPrinted(straight(150, flow, 0.9, AIR).factor, '0.033723');
    expectPrinted(straight(150, flow, 3, AIR).factor, '0.049405');
  });

  test('slopes of the two curves there: +3.40235 and -3.10292 Pa per L/s', () => {
    const around = [flow - 0.01, flow + 0.01];
    const asked = systemCurve(rig, stock, around)!;
    const given = fanCurveOf(rig, stock, around)!;
    expect((asked[1]!.pressure_Pa - asked[0]!.pressure_Pa) / 0.02).toBeCloseTo(3.40235, 3);
    expect((given[1]!.pressure_Pa - given[0]!.pressure_Pa) / 0.02).toBeCloseTo(-3.10292, 3);
  });
});

describe('variants of the base case, L/s', () => {
  test.each([
    [4.087, 81.0425],
    [12, 69.8835],
  ])('EPANET, K %d more: %d', (coefficient, epanet) => {
    expectWithin(flowOf(withLoss(coefficient)), epanet, 2e-3);
  });

  test('EPANET, no change: 89.3821', () => expectWithin(flowOf(rig), 89.3821, 1e-3));

  test.each([
    ['a flow hood of K 0.2', 0.2, '88.9600'],
    ['a flow hood of K 0.5', 0.5, '88.2704'],
    ['system effect 0.4', 0.4, '88.499'],
    ['system effect 0.8', 0.8, '87.597'],
    ['system effect 1.2', 1.2, '86.721'],
    ['system effect 2.5', 2.5, '84.044'],
    ['two more bends of K 0.35', 0.7, '87.819'],
    ['a flap stuck at 40 degrees, K 11', 11, '71.066'],
  ] as const)('%s', (_name, coefficient, printed) => expectPrinted(flowOf(withLoss(coefficient)), printed));

  // Flattened share; flow with the neck's central loss and the fan system effect. The engine takes the
  // thick-edged form less its value for no neck at all (K 0.01), so that no crimp costs nothing.
  test.each([
    [0.3, 89.03],
    [0.5, 87.69],
    [0.6, 85.76],
    [0.7, 81.31],
    [0.8, 70.29],
    [0.9, 45.76],
  ])('crimp at the fan, flattened by %d: %d', (flattened, flow) => {
    const found = flowOf(withFault({ kind: 'crimp', at: 'fan', amount: flattened / 0.9 }));
    expect(found - flow).toBeGreaterThan(-0.006);
    expect(found - flow).toBeLessThan(0.03);
  });

  // One tie on the 2 m inlet, which hangs in two spans; rounded edge 0.08.
  test.each([
    [0.9, '88.88'],
    [0.8, '87.30'],
    [0.7, '83.66'],
    [0.6, '76.18'],
  ] as const)('a tie drawing the bore to %d', (ratio, printed) => {
    expectPrinted(flowOf(withFault({ kind: 'tight-ties', at: 'inlet', amount: (1 - ratio) / 0.5 })), printed);
  });

  test.each([
    [0.6, '88.828'],
    [0.5, '84.302'],
    [0.4, '76.718'],
    [0.3, '64.572'],
    [0.2, '46.563'],
  ] as const)('grille of free area %d: face and 0.5 for the entry', (free, printed) => {
    expectPrinted(flowOf(change('grille', { lossCoefficient: thinNeck(free) + 0.5 })), printed);
    expectPrinted(
      flowOf(change('grille', { lossCoefficient: undefined, freeArea: free })),
      printed,
      'as a face',
    );
  });

  test.each([
    [15, 74.653],
    [30, 65.376],
  ])('discharge compressed by %d %%: %d', (percent, flow) => {
    const slack = { material: 'flexible', fullLength_m: 6 / (1 - percent / 100) };
    expectWithin(flowOf(change('discharge', slack)), flow, 1e-4);
  });

  test('4 m more run', () => expectPrinted(flowOf(change('discharge', { path_m: 10 })), '86.467'));

  test.each([
    [8, 9.2],
    [16, 21.8],
  ])('cowl blocked to K %d: %d %% less', (coefficient, percent) => {
    const less = 100 * (1 - flowOf(change('termination', { lossCoefficient: coefficient })) / flowOf(rig));
    expect(Math.abs(less - percent)).toBeLessThan(0.06);
  });

  test('the same points read as static pressure: 91.889', () => {
    expectPrinted(
      flowOf(change('fan', { fan: { ...fanTable, pressure: 'static', outletDiameter_mm: 150 } })),
      '91.889',
    );
  });

  test('80 % speed gives 0.79967 of the flow (EPANET), not 0.8; Colebrook 0.79974', () => {
    const ratio = flowOf(change('fan', { speed: 0.8 })) / flowOf(rig);
    expectWithin(ratio, 0.79967, 1e-4);
    expectPrinted(ratio, '0.79974');
  });
});

/** The same run solved here in a few lines with Swamee-Jain, as the network solver has it. */
describe('with Swamee-Jain friction, against EPANET', () => {
  const points = fanTable.points;
  const fan = monotoneCubic(
    points.map((p) => p.flow_L_s),
    points.map((p) => p.pressure_Pa),
  );
  const flow = (extra: number, speed = 1) =>
    bracketedRoot(
      (q) => {
        const state = straight(150, q, 0.9, AIR);
        const friction =
          (swameeJain(state.reynolds, 0.006) * 2 + swameeJain(state.reynolds, 0.02) * 6) / 0.15;
        return (
          speed ** 2 * fan.value(q / speed) -
          (friction + 2.5 + 0.3 + 0.7 + 4 + extra) * state.velocityPressure
        );
      },
      40 * speed,
      128 * speed,
      1e-10,
    );
  test.each([
    [0, '89.3813', 89.3821],
    [4.087, '81.0407', 81.0425],
    [12, '69.8813', 69.8835],
  ] as const)('K %d more', (extra, printed, epanet) => {
    expectPrinted(flow(extra), printed);
    expectWithin(flow(extra), epanet, 4e-5);
  });
  test('80 % speed', () => {
    expectWithin(flow(0, 0.8), 71.4762, 4e-5);
    expectPrinted(flow(0, 0.8) / flow(0), '0.79967');
  });
});
