/** Worked examples of textbooks: an operating point, friction, density, scaling, a network. */
import { fanCurve, type FanTable, type Piece, type Rig } from '#physics';
import { units } from '#units';
import type { Check } from '../types.ts';
import { only, PRINTED, runLoss, SAME_FORMULA, solved, straight } from '../engine.ts';

const CFM = 1 / units.flow.find((unit) => unit.name === 'cfm')!.factor;
/** Pa in an inch of water as the book has it: 998 kg/m3 and 9.81 m/s2. */
const INCH = 998 * 9.81 * 0.0254;
const INCH_SI = 0.0254;

const fanAndDuct: Rig = {
  name: 'fan and duct',
  air: { density_kg_m3: 1.184, kinematicViscosity_m2_s: 1.562e-5 },
  run: [
    { id: 'entry', kind: 'grille', diameter_mm: 230, lossCoefficient: 1.3 },
    { id: 'duct', kind: 'duct', material: 'rigid', diameter_mm: 230, path_m: 13.4, roughness_mm: 0.15 },
    { id: 'elbows and damper', kind: 'fitting', diameter_mm: 230, lossCoefficient: 5 * 0.21 + 1.8 },
    {
      id: 'fan',
      kind: 'fan',
      fan: {
        pressure: 'total',
        ratingDensity_kg_m3: 1.184,
        saddle: true,
        points: [
          [0, 0.9],
          [250, 0.95],
          [500, 0.9],
          [750, 0.75],
          [1000, 0.4],
          [1200, 0],
        ].map(([cfm, inches]) => ({ flow_L_s: cfm! * CFM, pressure_Pa: inches! * INCH })),
      },
    },
    // The book charges the kinetic energy leaving with its factor 1.05.
    { id: 'exit', kind: 'terminal', form: 'open-end', diameter_mm: 230, lossCoefficient: 1.05 },
  ],
};

const hot = { density_kg_m3: 1.145, kinematicViscosity_m2_s: 1.655e-5 };
/** Metres of air lost in a smooth duct. */
const head = (bore: number, flow: number, length: number) =>
  (straight(bore, flow, 0, hot).perMetre * length) / (hot.density_kg_m3 * 9.81);
/** Flow in m3/s that spends `metres` of air over `length`. */
function flowFor(bore: number, length: number, metres: number): number {
  let low = 1;
  let high = 2000;
  for (let i = 0; i < 60; i++) {
    const middle = (low + high) / 2;
    if (head(bore, middle, length) < metres) low = middle;
    else high = middle;
  }
  return low / 1000;
}

const FOOT = 12 * INCH_SI;
const square = (() => {
  const air = { density_kg_m3: 0.00237 * 515.379, kinematicViscosity_m2_s: 0.000157 * FOOT ** 2 };
  const effective = (64 / 56.91) * 0.75 * FOOT;
  const flow = (25 / 0.75 ** 2) * FOOT * (Math.PI / 4) * effective ** 2 * 1000;
  const state = () => straight(effective * 1000, flow, 0.3 * FOOT, air);
  return {
    factor: () => state().factor,
    pressure: () => (state().factor * 100 * FOOT * state().velocityPressure) / (0.75 * FOOT),
  };
})();

const warmFan: FanTable = {
  pressure: 'total',
  points: [
    { flow_L_s: 0, pressure_Pa: 500, power_W: 1500 },
    { flow_L_s: 2400, pressure_Pa: 340, power_W: 1800 },
    { flow_L_s: 4000, pressure_Pa: 0, power_W: 1700 },
  ],
};
const warm = () => fanCurve(warmFan, (1.2 * 293.15) / 313.15, 1, 0.5);

/** The engine scales speed and density; size goes into the table by D^3, D^2 and D^5. */
function larger() {
  const size = 42 / 36;
  const points = [
    [0, 3.68, 11.1],
    [10_000, 3.75, 15.1],
    [20_000, 3.5, 18.6],
    [30_000, 2.96, 21.4],
    [40_000, 2.12, 23.1],
    [50_000, 1.02, 23.1],
    [60_000, 0, 21],
  ].map(([q, p, w]) => ({ flow_L_s: q! * size ** 3, pressure_Pa: p! * size ** 2, power_W: w! * size ** 5 }));
  return fanCurve({ pressure: 'total', saddle: true, points }, 1.2 * (0.045 / 0.075), 1150 / 600, 0.5);
}

/** Pa over a length with a stated friction factor and fittings, as the book works it. */
const stated = (bore: number, flow: number, coefficient: number) =>
  runLoss(only({ id: 'part', kind: 'fitting', diameter_mm: bore, lossCoefficient: coefficient }), flow);

export const textbookChecks: readonly Check[] = [
  {
    id: 'cengel-fan-flow',
    source: 'cengel',
    where: 'Example 14-1',
    mark: 'published',
    quantity: 'flow where fan and duct meet',
    unit: 'cfm',
    published: 650,
    ours: () => solved(fanAndDuct).flow_L_s.fan / CFM,
    allowed: { kind: 'relative', by: 0.005, why: 'the book reads it off a graph: "about 650"' },
  },
  {
    id: 'cengel-fan-pressure',
    source: 'cengel',
    where: 'Example 14-1',
    mark: 'published',
    quantity: 'pressure where fan and duct meet',
    unit: 'in w.g.',
    published: 0.83,
    ours: () => solved(fanAndDuct).fan.pressure_Pa / INCH,
    allowed: { kind: 'absolute', by: 0.006, why: PRINTED },
  },
  {
    id: 'cengel-fan-flow-apart',
    source: 'cengel',
    where: 'Example 14-1 inputs',
    mark: 'computed independently',
    quantity: 'the same flow, monotone cubic through the points',
    unit: 'cfm',
    published: 648.199,
    ours: () => solved(fanAndDuct).flow_L_s.fan / CFM,
    allowed: { kind: 'absolute', by: 0.01, why: SAME_FORMULA },
  },
  {
    id: 'cengel-plastic-head',
    source: 'cengel',
    where: 'plastic duct, 150 m, 0.35 m³/s; printed bore 0.267 m to three figures',
    mark: 'published',
    quantity: 'head lost at that bore',
    unit: 'm of air',
    published: 20,
    ours: () => head(267, 350, 150),
    allowed: { kind: 'relative', by: 0.01, why: 'half a millimetre of bore is 1 % of head' },
  },
  {
    id: 'cengel-plastic-factor',
    source: 'cengel',
    where: 'plastic duct, printed friction factor',
    mark: 'published',
    quantity: 'friction factor',
    unit: '',
    published: 0.018,
    ours: () => straight(267, 350, 0, hot).factor,
    allowed: { kind: 'absolute', by: 0.00006, why: PRINTED },
  },
  {
    id: 'cengel-plastic-longer',
    source: 'cengel',
    where: 'plastic duct, follow-on over 300 m',
    mark: 'memory',
    quantity: 'flow for the same head',
    unit: 'm³/s',
    published: 0.24,
    ours: () => flowFor(267, 300, 20),
    allowed: { kind: 'absolute', by: 0.006, why: PRINTED },
  },
  {
    id: 'white-factor',
    source: 'white',
    where: 'square duct, 9 in by 9 in, by its effective diameter',
    mark: 'published',
    quantity: 'friction factor',
    unit: '',
    published: 0.0177,
    ours: square.factor,
    allowed: { kind: 'absolute', by: 0.00006, why: PRINTED },
  },
  {
    id: 'white-pressure',
    source: 'white',
    where: 'square duct, 100 ft, 25 ft³/s; 5.5 lbf/ft²',
    mark: 'published',
    quantity: 'pressure lost',
    unit: 'Pa',
    published: 263,
    ours: square.pressure,
    allowed: { kind: 'relative', by: 0.01, why: 'printed to two figures' },
  },
  {
    id: 'stoecker-power',
    source: 'stoecker',
    where: 'fan at 2.4 m³/s moved from 20 °C to 40 °C air',
    mark: 'published',
    quantity: 'power',
    unit: 'kW',
    published: 1.685,
    ours: () => warm().power(2.4)! / 1000,
    allowed: { kind: 'absolute', by: 0.0006, why: PRINTED },
  },
  {
    id: 'stoecker-pressure',
    source: 'stoecker',
    where: 'the same fan',
    mark: 'computed independently',
    quantity: 'pressure',
    unit: 'Pa',
    published: 318.285,
    ours: () => warm().totalPressure(2.4),
    allowed: { kind: 'absolute', by: 0.001, why: SAME_FORMULA },
  },
  ...(
    [
      ['pressure', 'in w.g.', 8.88, () => larger().totalPressure(91.308), 0.001],
      ['power', 'hp', 195.4, () => larger().power(91.308)!, 0.001],
    ] as const
  ).map(([quantity, unit, published, ours, by]): Check => ({
    id: `fox-${quantity}`,
    source: 'fox',
    where: 'Example 10.11 at 91 308 cfm: 36 to 42 in, 600 to 1150 rpm, 0.075 to 0.045 lb/ft³',
    mark: 'computed independently',
    quantity: `${quantity} of the fan made larger and faster in thinner air`,
    unit,
    published,
    ours,
    allowed: { kind: 'relative', by, why: SAME_FORMULA },
  })),
  {
    id: 'douglas-network',
    source: 'douglas',
    where: 'Example 14.6: branch 10 m of 0.15 m, K 4, then main 26 m of 0.3 m; Darcy factor 0.032',
    mark: 'computed independently',
    quantity: 'fan pressure',
    unit: 'Pa',
    published: 684.513,
    ours: () => stated(150, 200, (0.032 * 10) / 0.15 + 4) + stated(300, 800, (0.032 * 26) / 0.3),
    allowed: { kind: 'absolute', by: 0.001, why: SAME_FORMULA },
  },
  {
    id: 'cengel-diffuser',
    source: 'cengel',
    where: 'Example 8-6: water, 6 to 9 cm, 7 m/s, loss coefficient 0.07',
    mark: 'memory',
    quantity: 'head lost in the diffuser',
    unit: 'm of water',
    published: 0.175,
    ours: () => {
      const diffuser: Piece = {
        id: 'cone',
        kind: 'reducer',
        diameter_mm: 60,
        toDiameter_mm: 90,
        lossCoefficient: 0.07,
      };
      const water = { density_kg_m3: 1000, kinematicViscosity_m2_s: 1e-6 };
      return runLoss(only(diffuser, water), 7000 * (Math.PI / 4) * 0.06 ** 2) / (1000 * 9.81);
    },
    allowed: { kind: 'absolute', by: 0.0006, why: PRINTED },
  },
];
