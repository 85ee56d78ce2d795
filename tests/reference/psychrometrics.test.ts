/** Water in air against PsychroLib, an ASHRAE table as a public test suite carries it, and a sheet of worked values. */
import psychrolib from 'psychrolib';
import { describe, expect, test } from 'vitest';
import {
  absoluteHumidity,
  dewPoint,
  dewPointMagnus,
  humidityRatio,
  saturationHumidity,
  saturationPressure,
} from '#physics';
import { expectPrinted, expectWithin } from './support.ts';

psychrolib.SetUnitSystem(psychrolib.SI);

describe('against PsychroLib 1.1.1', () => {
  test.each([
    [20, 0.5],
    [22, 0.8],
    [10, 0.8],
    [28, 0.9],
    [35, 0.2],
  ])('humidity ratio at %s degC, RH %s', (t, rh) => {
    expectWithin(humidityRatio(t, rh), psychrolib.GetHumRatioFromRelHum(t, rh, 101325), 1e-3);
  });

  test.each([
    [20, 0.5],
    [22, 0.95],
    [10, 0.8],
    [28, 0.9],
  ])('saturation pressure at our dew point of %s degC, RH %s is their vapour pressure', (t, rh) => {
    const dew = dewPoint(t, rh)!;
    expectWithin(psychrolib.GetSatVapPres(dew), rh * psychrolib.GetSatVapPres(t), 1e-3);
  });
});

test.each([
  [5, 872.6, 0.005425],
  [25, 3169.7, 0.020173],
])('ASHRAE Fundamentals 2017 ch. 1 table 3 at %s degC', (t, pressure, ratio) => {
  expectWithin(saturationPressure(t), pressure, 5e-4);
  // The table holds the mixing factor of 1.004 that is left out here.
  expectWithin(humidityRatio(t, 1), ratio, 6e-3);
});

test.each([
  [0, '4.85', '3.77'],
  [4, '6.36', '5.03'],
  [8, '8.27', '6.66'],
  [10, '9.40', '7.63'],
  [15, '12.82', '10.65'],
  [18, '15.36', '12.93'],
  [20, '17.29', '14.70'],
  [22, '19.42', '16.67'],
  [25, '23.03', '20.08'],
])('saturated air at %s degC', (t, grams, ratio) => {
  expectPrinted(saturationHumidity(t), grams);
  expectPrinted(1000 * humidityRatio(t, 1), ratio);
});

test.each([
  [20, 0.5, '8.64', '7.26', '9.27', '9.26'],
  [20, 0.6, '10.37', '8.73', '12.01', '12.00'],
  [22, 0.7, '13.59', '11.58', '16.28', '16.27'],
  [22, 0.8, '15.53', '13.26', '18.39', '18.39'],
  [22, 0.95, '18.45', '15.81', '21.16', '21.16'],
  [24, 0.95, '20.68', '17.91', '23.15', '23.15'],
  [25, 0.6, '13.82', '11.90', '16.70', '16.69'],
  [28, 0.9, '24.49', '21.62', '26.20', '26.20'],
  [10, 0.8, '7.52', '6.09', '6.71', '6.71'],
])('air at %s degC, RH %s', (t, rh, grams, ratio, exact, magnus) => {
  expectPrinted(absoluteHumidity(t, rh), grams);
  expectPrinted(1000 * humidityRatio(t, rh), ratio);
  expectPrinted(dewPoint(t, rh)!, exact);
  expectPrinted(dewPointMagnus(t, rh)!, magnus);
});

test('dry air has no dew point', () => {
  expect(dewPoint(20, 0)).toBeNull();
  expect(dewPointMagnus(20, 0)).toBeNull();
});
