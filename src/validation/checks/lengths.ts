/**
 * The prescriptive duct-length table, feet. How it was built was worked out afterwards: 0.25 in of water
 * spent on Darcy friction less 30 ft (two elbows), roughness 0.116 mm for smooth and 1.665 mm for flexible
 * duct fitted once to all cells. One row here for each bore and kind: the cell that fits worst.
 */
import { elbowLoss } from '#physics';
import type { Check } from '../types.ts';
import { straight } from '../engine.ts';

const FLOWS_CFM = [50, 80, 100, 125, 150, 200, 250, 300];
const L_S_PER_CFM = 0.471947;
const FOOT_M = 0.3048;
const NOT_ALLOWED = 'X';
const NO_LIMIT = 'NL';
/** Feet from which the table sets no limit. */
const LONGEST = 200;
const SPENT_PA = 62.27;
const FITTINGS_FT = 30;

const TABLES = [
  {
    kind: 'flexible',
    roughness_mm: 1.665,
    rows: {
      3: 'X X X X X X X X',
      4: '56 4 X X X X X X',
      5: 'NL 81 42 16 2 X X X',
      6: 'NL NL 158 91 55 18 1 X',
      7: 'NL NL NL NL 161 78 40 19',
      8: 'NL NL NL NL NL 189 111 69',
    },
  },
  {
    kind: 'smooth',
    roughness_mm: 0.116,
    rows: {
      3: '5 X X X X X X X',
      4: '114 31 10 X X X X X',
      5: 'NL 152 91 51 28 4 X X',
      6: 'NL NL NL 168 112 53 25 9',
      7: 'NL NL NL NL NL 148 88 54',
      8: 'NL NL NL NL NL NL 198 133',
    },
  },
] as const;

function longest(inches: number, cfm: number, roughness_mm: number): number {
  const { perMetre } = straight(inches * 25.4, cfm * L_S_PER_CFM, roughness_mm);
  return Math.min(LONGEST, Math.max(0, SPENT_PA / perMetre / FOOT_M - FITTINGS_FT));
}

const inFeet = (cell: string) => (cell === NOT_ALLOWED ? 0 : cell === NO_LIMIT ? LONGEST : Number(cell));

function worstCell(row: string, inches: number, roughness_mm: number) {
  const cells = row.split(' ').map((cell, i) => {
    const cfm = FLOWS_CFM[i]!;
    const ours = longest(inches, cfm, roughness_mm);
    return { cell, cfm, ours, off: Math.abs(ours - inFeet(cell)) };
  });
  return cells.reduce((worst, next) => (next.off > worst.off ? next : worst));
}

const rows = TABLES.flatMap(({ kind, roughness_mm, rows }) =>
  Object.entries(rows).map(([inches, row]): Check => {
    const worst = worstCell(row, Number(inches), roughness_mm);
    return {
      id: `length-${kind}-${inches}`,
      source: 'irc',
      where: `${inches} in, ${kind}; worst of 8 cells, printed "${worst.cell}" (X counts 0, NL 200)`,
      mark: 'transcribed',
      quantity: `longest run at ${worst.cfm} cfm`,
      unit: 'ft',
      published: inFeet(worst.cell),
      ours: () => longest(Number(inches), worst.cfm, roughness_mm),
      allowed: { kind: 'absolute', by: 1, why: 'whole feet; two roughnesses fitted once to all 96 cells' },
    };
  }),
);

export const lengthChecks: readonly Check[] = [
  ...rows,
  {
    id: 'length-elbow',
    source: 'irc',
    where: 'note to the table: take off 15 ft for each elbow',
    mark: 'transcribed',
    quantity: 'straight length equal to an adjustable elbow, 6 in smooth at 100 cfm',
    unit: 'ft',
    published: 15,
    ours: () =>
      (elbowLoss('adjustable', 152.4, 90) * 0.1524) /
      straight(152.4, 100 * L_S_PER_CFM, 0.116).factor /
      FOOT_M,
    allowed: { kind: 'relative', by: 0.4, why: 'one round figure has to cover every form and bore of elbow' },
  },
];
