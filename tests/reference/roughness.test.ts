/**
 * Pascals a metre by material. Roughness: ASHRAE Fundamentals 2021 ch. 21 table 1, as transcribed, not
 * checked against the printed handbook; the pressures were computed from it apart from this engine.
 */
import { describe, expect, test } from 'vitest';
import { ductLoss, expectPrinted, straight } from './support.ts';

const ROUGHNESS = [0.046, 0.09, 0.12, 0.9, 1.5];

// bore mm, L/s, m/s, Re, velocity pressure, Pa/m at each roughness
const TABLE = [
  [100, 25, '3.18', '21136', '6.10', ['1.619', '1.674', '1.711', '2.404', '2.793']],
  [100, 50, '6.37', '42272', '24.40', ['5.641', '5.938', '6.126', '9.287', '10.92']],
  [125, 50, '4.07', '33818', '9.99', ['1.908', '1.981', '2.028', '2.886', '3.349']],
  [150, 50, '2.83', '28181', '4.82', ['0.791', '0.814', '0.829', '1.120', '1.283']],
  [150, 100, '5.66', '56363', '19.28', ['2.759', '2.884', '2.963', '4.313', '5.006']],
  [150, 150, '8.49', '84544', '43.37', ['5.790', '6.122', '6.328', '9.570', '11.17']],
  [200, 100, '3.18', '42272', '6.10', ['0.684', '0.704', '0.717', '0.966', '1.102']],
  [200, 200, '6.37', '84544', '24.40', ['2.403', '2.513', '2.583', '3.733', '4.308']],
  [250, 200, '4.07', '67636', '9.99', ['0.812', '0.839', '0.856', '1.169', '1.332']],
  [250, 300, '6.11', '101453', '22.49', ['1.698', '1.771', '1.817', '2.582', '2.962']],
] as const;

describe('straight duct, Pa a metre', () => {
  test.each(TABLE)('%d mm at %d L/s', (bore, flow, velocity, reynolds, velocityPressure, pressures) => {
    const state = straight(bore, flow, 0.09);
    expectPrinted(state.velocity, velocity);
    expectPrinted(state.reynolds, reynolds);
    expectPrinted(state.velocityPressure, velocityPressure);
    pressures.forEach((printed, i) => {
      const duct = { material: 'rigid', diameter_mm: bore, path_m: 1, roughness_mm: ROUGHNESS[i]! };
      expectPrinted(ductLoss(flow, duct), printed, `roughness ${ROUGHNESS[i]} mm`);
    });
  });

  test('taut flexible duct loses about half as much again as spiral (ASHRAE rule, as transcribed): 32 to 52 %', () => {
    for (const bore of [100, 150, 200, 250]) {
      for (const velocity of [3, 4.5, 6]) {
        const flow = velocity * (Math.PI / 4) * bore ** 2 * 1e-3;
        const ratio = straight(bore, flow, 0.9).perMetre / straight(bore, flow, 0.12).perMetre;
        expect(ratio, `${bore} mm, ${velocity} m/s`).toBeGreaterThan(1.32);
        expect(ratio, `${bore} mm, ${velocity} m/s`).toBeLessThan(1.52);
      }
    }
  });
});
