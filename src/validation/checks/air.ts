/** Moist air, and a room that dries out. */
import {
  absoluteHumidity,
  airDensity,
  airState,
  clearTime_min,
  dewPoint,
  dynamicViscosity,
  humidityRatio,
  MOISTURE,
  saturationHumidity,
  saturationPressure,
} from '#physics';
import type { Check } from '../types.ts';

const SEA_LEVEL = 101325;

/** Minutes until a 12 m3 room at 22 degC, saturated, is at 70 % RH; make-up air 20 degC and 55 % RH. */
function minutesToDry(flow_L_s: number): number {
  const makeUp_g_m3 = absoluteHumidity(20, 0.55);
  const room = { volume_m3: 12, temperature_C: 22, flow_L_s, makeUp_g_m3 };
  return clearTime_min(room, saturationHumidity(22), 0.7) ?? Infinity;
}

/** The table is over ice below 0 °C and the engine over water throughout, so only its warm side is a check. */
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

const ratios = (
  [
    [5, 0.005425],
    [25, 0.020173],
  ] as const
).map(([temperature, published]): Check => ({
  id: `saturated-ratio-${temperature}`,
  source: 'ashrae-2017',
  where: `table 2 or 3, saturated at ${temperature} °C, sea level`,
  mark: 'transcribed',
  quantity: 'mass of water over mass of dry air',
  unit: 'kg/kg',
  published,
  ours: () => humidityRatio(temperature, 1),
  allowed: { kind: 'relative', by: 0.006, why: 'ours leaves out the mixing factor of about 1.004' },
}));

/** What a shower gives off must lie inside what is published of it. */
const showers = (
  [
    ['moisture-1988', 47, 'half a US pint in 5 minutes, towels left out'],
    ['solar-handbook', 42, 'about 2,500 g an hour'],
  ] as const
).map(([source, published, where]): Check => ({
  id: `shower-${source}`,
  source,
  where,
  mark: 'transcribed',
  quantity: 'water a shower gives off',
  unit: 'g/min',
  published,
  ours: () => MOISTURE.shower_g_min.value,
  allowed: { kind: 'relative', by: 0.1, why: 'the published rates themselves differ by a tenth' },
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
  ...ratios,
  ...showers,
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
    ours: () => dewPoint(22, 0.8) ?? NaN,
    allowed: { kind: 'absolute', by: 0.02, why: 'Magnus is within 0.02 °C here' },
  },
  ...drying,
];
