/**
 * Moist air: density and viscosity from temperature, relative humidity and pressure.
 * Ideal-gas mixture with Hyland-Wexler saturation pressure (ASHRAE Fundamentals ch. 1, from memory;
 * within 0.05 % of CIPM-2007 at room conditions) and Sutherland viscosity (US Standard Atmosphere
 * 1976, from memory; 0.4 % low against modern data, under 2 % in hot saturated air).
 */
import type { Air } from './types.ts';

export const STANDARD_PRESSURE_PA = 101325;
const ZERO_CELSIUS = 273.15;
const GAS_CONSTANT_DRY = 287.042; // J/(kg K)

export interface AirState {
  /** kg/m3 */
  readonly density: number;
  /** m2/s */
  readonly viscosity: number;
}

/** Saturation pressure over water, Pa, for 0 to 200 degC (Hyland-Wexler). */
export function saturationPressure(temperature_C: number): number {
  const t = temperature_C + ZERO_CELSIUS;
  return Math.exp(
    -5.8002206e3 / t +
      1.3914993 -
      4.8640239e-2 * t +
      4.1764768e-5 * t ** 2 -
      1.4452093e-8 * t ** 3 +
      6.5459673 * Math.log(t),
  );
}

/** Moist-air density, kg/m3; `relativeHumidity` 0 to 1, `pressure` in Pa. */
export function airDensity(temperature_C: number, relativeHumidity: number, pressure: number): number {
  const vapour = relativeHumidity * saturationPressure(temperature_C);
  return (pressure - 0.378 * vapour) / (GAS_CONSTANT_DRY * (temperature_C + ZERO_CELSIUS));
}

/** Dynamic viscosity of dry air, Pa s (Sutherland). */
export function dynamicViscosity(temperature_C: number): number {
  const t = temperature_C + ZERO_CELSIUS;
  return (1.458e-6 * t ** 1.5) / (t + 110.4);
}

/** The state the losses are reckoned in. Defaults: 20 degC, 50 % RH, 101 325 Pa. */
export function airState(air: Air = {}): AirState {
  const temperature = air.temperature_C ?? 20;
  const density =
    air.density_kg_m3 ??
    airDensity(temperature, air.relativeHumidity ?? 0.5, air.pressure_Pa ?? STANDARD_PRESSURE_PA);
  return { density, viscosity: air.kinematicViscosity_m2_s ?? dynamicViscosity(temperature) / density };
}
