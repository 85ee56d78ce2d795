/**
 * How much water air holds and where it lets go of it. Ideal gases, saturation over liquid water
 * (Hyland-Wexler, see air.ts); the air/water mixing factor of about 1.004 is left out.
 */
import { STANDARD_PRESSURE_PA, saturationPressure } from './air.ts';
import { bracketedRoot } from './root.ts';

/** J/(kg K); 461.5 as the sheets of check values use it. */
const GAS_CONSTANT_VAPOUR = 461.5;
/** Molar mass of water over that of dry air (ASHRAE Fundamentals 2017 ch. 1). */
const MASS_RATIO = 0.621945;
const ZERO_CELSIUS = 273.15;
/** Saturation over liquid is held to hold between these; below 0 degC it is supercooled water, not ice. */
const COLDEST_C = -40;
const HOTTEST_C = 100;

/** Vapour pressure, Pa; `relativeHumidity` 0 to 1. */
export function vapourPressure(temperature_C: number, relativeHumidity: number): number {
  return relativeHumidity * saturationPressure(temperature_C);
}

/** Water in a cubic metre of air, g/m3; `relativeHumidity` 0 to 1. */
export function absoluteHumidity(temperature_C: number, relativeHumidity: number): number {
  const vapour = vapourPressure(temperature_C, relativeHumidity);
  return (1000 * vapour) / (GAS_CONSTANT_VAPOUR * (temperature_C + ZERO_CELSIUS));
}

/** Most water a cubic metre of air can hold, g/m3. */
export function saturationHumidity(temperature_C: number): number {
  return absoluteHumidity(temperature_C, 1);
}

/** Relative humidity (0 to 1) of air that holds `humidity_g_m3`; above 1 where it cannot hold it all. */
export function relativeHumidityOf(temperature_C: number, humidity_g_m3: number): number {
  return humidity_g_m3 / saturationHumidity(temperature_C);
}

/** Mass of water over mass of dry air, kg/kg. */
export function humidityRatio(
  temperature_C: number,
  relativeHumidity: number,
  pressure_Pa: number = STANDARD_PRESSURE_PA,
): number {
  const vapour = vapourPressure(temperature_C, relativeHumidity);
  return (MASS_RATIO * vapour) / (pressure_Pa - vapour);
}

/**
 * Temperature at which the air begins to shed water, degC, as the root of the saturation pressure; null
 * for dry air or a dew point outside -40 to 100 degC.
 */
export function dewPoint(temperature_C: number, relativeHumidity: number): number | null {
  const vapour = vapourPressure(temperature_C, relativeHumidity);
  const over = (t: number) => saturationPressure(t) - vapour;
  if (!(over(COLDEST_C) <= 0 && over(HOTTEST_C) >= 0)) return null;
  return bracketedRoot(over, COLDEST_C, HOTTEST_C, 1e-9);
}

/** The same by the Magnus formula (17.62, 243.12 degC): within 0.02 K in rooms, for working by hand. */
export function dewPointMagnus(temperature_C: number, relativeHumidity: number): number | null {
  if (!(relativeHumidity > 0)) return null;
  const g = Math.log(relativeHumidity) + (17.62 * temperature_C) / (243.12 + temperature_C);
  return (243.12 * g) / (17.62 - g);
}
