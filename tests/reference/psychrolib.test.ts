/** Moist air against PsychroLib (ASHRAE Handbook of Fundamentals 2017 chapter 1), an independent library. */
import psychrolib from 'psychrolib';
import { describe, expect, test } from 'vitest';
import { airDensity, saturationPressure } from '#physics';

psychrolib.SetUnitSystem(psychrolib.SI);

describe('moist air against PsychroLib 1.1.1', () => {
  test.each([0.1, 5, 10, 15, 20, 25, 30, 35, 40, 50])('saturation pressure at %s degC within 0.1 %%', (t) => {
    const theirs = psychrolib.GetSatVapPres(t);
    expect(Math.abs(saturationPressure(t) / theirs - 1)).toBeLessThan(1e-3);
  });

  test.each([
    [0.5, 0.2, 101325],
    [20, 0.5, 101325],
    [22, 0.6, 101325],
    [35, 0.9, 101325],
    [20, 0.5, 95000],
  ])('density at %s degC, RH %s, %s Pa within 0.05 %%', (t, humidity, pressure) => {
    const ratio = psychrolib.GetHumRatioFromRelHum(t, humidity, pressure);
    const theirs = psychrolib.GetMoistAirDensity(t, ratio, pressure);
    expect(Math.abs(airDensity(t, humidity, pressure) / theirs - 1)).toBeLessThan(5e-4);
  });
});
