/** What the checks against outside sources share: standard air, a run that is one duct only, printed figures. */
import { expect } from 'vitest';
import { systemCurve, type Air, type Duct, type Fault, type Rig, type Stock } from '#physics';
import fans from '../../seeds/fans.json' with { type: 'json' };
import materials from '../../seeds/materials.json' with { type: 'json' };
import { STANDARD_AIR, straight } from '../../src/validation/engine.ts';

export const stock = { fans, materials } as unknown as Stock;

export { STANDARD_AIR, straight };

/**
 * Holds `actual` to every digit of a printed number: half a unit of the last digit, and a tenth of a unit
 * more because some were rounded from values already rounded.
 */
export function expectPrinted(actual: number, printed: string, because = printed): void {
  const digits = /\.(\d*)/.exec(printed)?.[1]?.length ?? 0;
  expect(Math.abs(actual - Number(printed)), `${because}: ${actual} for ${printed}`).toBeLessThanOrEqual(
    0.6 * 10 ** -digits,
  );
}

/** Holds `actual` within a share of `expected`. */
export function expectWithin(actual: number, expected: number, share: number, because = ''): void {
  expect(Math.abs(actual / expected - 1), `${because} ${actual} for ${expected}`).toBeLessThanOrEqual(share);
}

/** Enough of a fan for a rig to be legal; it takes no part in a system curve. */
export const ANY_FAN = {
  id: 'fan',
  kind: 'fan',
  fan: {
    pressure: 'total',
    points: [
      { flow_L_s: 0, pressure_Pa: 200 },
      { flow_L_s: 200, pressure_Pa: 0 },
    ],
  },
} as const;

/** A run with one duct and nothing else that loses pressure. */
export function ductRig(
  duct: Omit<Duct, 'id' | 'kind'>,
  air: Air = STANDARD_AIR,
  faults: readonly Omit<Fault, 'at'>[] = [],
): Rig {
  return {
    name: 'one duct',
    air,
    run: [
      { id: 'mouth', kind: 'grille', diameter_mm: duct.diameter_mm, lossCoefficient: 0 },
      { id: 'duct', kind: 'duct', ...duct },
      ANY_FAN,
    ],
    faults: faults.map((fault) => ({ ...fault, at: 'duct' })),
  };
}

/** Pa that the run of `ductRig` loses. */
export function ductLoss(flow_L_s: number, ...[duct, air, faults]: Parameters<typeof ductRig>): number {
  return systemCurve(ductRig(duct, air, faults), stock, [flow_L_s])![0]!.pressure_Pa;
}
