/** Moist air, and a room that dries out. */
import { airDensity, airState, dynamicViscosity, saturationPressure } from '#physics';
import type { Check } from '../types.ts';

const SEA_LEVEL = 101325;
const ZERO_C = 273.15;
/** J/(kg K), water vapour. */
const GAS_VAPOUR = 461.5;

/** Grams of water in a cubic metre of air. */
const gramsOf = (temperature: number, humidity: number) =>
  (1000 * humidity * saturationPressure(temperature)) / (GAS_VAPOUR * (temperature + ZERO_C));

/** Temperature at which that vapour saturates, by halving. */
function dewPoint(temperature: number, humidity: number): number {
  const vapour = humidity * saturationPressure(temperature);
  let low = 0;
  let high = temperature;
  for (let i = 0; i < 60; i++) {
    const middle = (low + high) / 2;
    if (saturationPressure(middle) < vapour) low = middle;
    else high = middle;
  }
  return low;
}

/**
 * Minutes until a 12 m3 room at 22 degC, saturated, is at 70 % RH; make-up air 20 degC and 55 % RH. The
 * balance is stepped through (fourth-order Runge-Kutta, one second), so that it can be held to the closed form.
 */
function minutesToDry(flow_L_s: number): number {
  const exchange = flow_L_s / 1000 / 12;
  const makeUp = gramsOf(20, 0.55);
  const target = gramsOf(22, 0.7);
  const rate = (content: number) => exchange * (makeUp - content);
  let content = gramsOf(22, 1);
  for (let second = 0; second < 36_000; second++) {
    const k1 = rate(content);
    const k2 = rate(content + k1 / 2);
    const k3 = rate(content + k2 / 2);
    const next = content + (k1 + 2 * k2 + 2 * k3 + rate(content + k3)) / 6;
    if (next <= target) return (second + (content - target) / (content - next)) / 60;
    content = next;
  }
  return Infinity;
}

const saturation = (
  [
    [5, 872.6],
    [25, 3169.7],
    [50, 12351.3],
  ] as const
).map(([temperature, published]): Check => ({
  id: `saturation-${temperature}`,
  source: 'ashrae-2017',
  where: `table 3, ${temperature} °C`,
  mark: 'transcribed',
  quantity: 'saturation pressure over water',
  unit: 'Pa',
  published,
  ours: () => saturationPressure(temperature),
  allowed: { kind: 'relative', by: 3e-4, why: 'the table is on a newer temperature scale' },
}));

const independent = (
  [
    ['coolprop', 20, 0.5, 1.1994],
    ['coolprop', 35, 0.9, 1.1243],
    ['coolprop', 40, 0.95, 1.0981],
    ['cipm', 20, 0.5, 1.1993],
  ] as const
).map(([source, temperature, humidity, published]): Check => ({
  id: `density-${source}-${temperature}`,
  source,
  where: `${temperature} °C, ${100 * humidity} % RH, sea level`,
  mark: 'computed independently',
  quantity: 'density of moist air',
  unit: 'kg/m³',
  published,
  ours: () => airDensity(temperature, humidity, SEA_LEVEL),
  allowed: { kind: 'relative', by: 5.5e-4, why: 'ours takes air as an ideal gas' },
}));

const drying = (
  [
    [25, 7.1],
    [12.5, 14.2],
    [5, 35.5],
  ] as const
).map(([flow, published]): Check => ({
  id: `drying-${flow}`,
  source: 'mixed-room',
  where: `12 m³ at 22 °C, saturated, ${flow} L/s`,
  mark: 'computed independently',
  quantity: 'time to 70 % RH',
  unit: 'min',
  published,
  ours: () => minutesToDry(flow),
  allowed: { kind: 'absolute', by: 0.06, why: 'half a unit of the last digit' },
}));

export const airChecks: readonly Check[] = [
  ...saturation,
  ...independent,
  {
    id: 'viscosity-dry',
    source: 'coolprop',
    where: '20 °C, dry',
    mark: 'computed independently',
    quantity: 'viscosity',
    unit: 'µPa s',
    published: 18.206,
    ours: () => 1e6 * dynamicViscosity(20),
    allowed: { kind: 'relative', by: 0.005, why: 'Sutherland’s formula is 0.4 % low' },
  },
  {
    id: 'viscosity-wet',
    source: 'coolprop',
    where: '35 °C, 90 % RH',
    mark: 'computed independently',
    quantity: 'viscosity',
    unit: 'µPa s',
    published: 18.614,
    ours: () => {
      const air = airState({ temperature_C: 35, relativeHumidity: 0.9 });
      return 1e6 * air.viscosity * air.density;
    },
    allowed: { kind: 'relative', by: 0.0205, why: 'ours leaves out what vapour does to viscosity' },
  },
  {
    id: 'saturation-magnus',
    source: 'magnus',
    where: '30 °C: 611.2 exp(17.62 t/(243.12 + t))',
    mark: 'memory',
    quantity: 'saturation pressure over water',
    unit: 'Pa',
    published: 611.2 * Math.exp((17.62 * 30) / (243.12 + 30)),
    ours: () => saturationPressure(30),
    allowed: { kind: 'relative', by: 0.003, why: 'a simple form, 0.3 % from the long one' },
  },
  {
    id: 'dew-point',
    source: 'magnus',
    where: '22 °C, 80 % RH, Magnus turned round',
    mark: 'computed independently',
    quantity: 'dew point',
    unit: '°C',
    published: 18.39,
    ours: () => dewPoint(22, 0.8),
    allowed: { kind: 'absolute', by: 0.02, why: 'Magnus is within 0.02 °C here' },
  },
  ...drying,
];
