/**
 * The one table of legal values: what a rig or a fan table may hold, in the unit of its key, and the
 * slips of unit worth naming. The limits are model assumptions, set wide of house and small-shop practice
 * (100 to 250 mm, 10 to 300 L/s) and narrow enough that a value in the wrong unit mostly falls outside.
 */

/** How a value written in another unit is turned into the right one. */
export interface Slip {
  /** The wrong unit, in words. */
  readonly from: string;
  readonly convert: (value: number) => number;
}

export interface Range {
  readonly least: number;
  readonly most: number;
  /** In words, after the numbers. */
  readonly unit: string;
  /** 0 is legal although it lies below `least`. */
  readonly orZero?: boolean;
  readonly slips?: readonly Slip[];
}

const times = (factor: number, from: string): Slip => ({ from, convert: (value) => value * factor });

/** Below 5 a share is more likely just too large than written in per cent. */
const percent: Slip = { from: 'per cent', convert: (value) => (value >= 5 ? value / 100 : Number.NaN) };
const metresForMillimetres = times(1000, 'metres');
const millimetresForMetres = times(1 / 1000, 'millimetres');
const cubicMetresForLitres = times(1000, 'cubic metres per second');

const mm = 'millimetres (mm)';
const m = 'metres (m)';
const litresPerSecond = 'litres per second (L/s)';
const share = 'as a share, not per cent';
const noUnit = 'no unit';

const bore: Range = {
  least: 40,
  most: 1000,
  unit: mm,
  slips: [metresForMillimetres, times(25.4, 'inches'), times(10, 'centimetres')],
};
const pathLength: Range = { least: 0.01, most: 100, unit: m, slips: [millimetresForMetres] };

export const ranges = {
  temperature_C: {
    least: -20,
    most: 60,
    unit: 'degrees Celsius',
    slips: [
      { from: 'kelvin', convert: (value) => value - 273.15 },
      { from: 'degrees Fahrenheit', convert: (value) => ((value - 32) * 5) / 9 },
    ],
  },
  relativeHumidity: { least: 0, most: 1, unit: share, slips: [percent] },
  airPressure_Pa: {
    least: 50_000,
    most: 110_000,
    unit: 'pascals (Pa), absolute',
    slips: [times(100, 'hectopascals'), times(1000, 'kilopascals'), times(100_000, 'bar')],
  },
  density_kg_m3: {
    least: 0.5,
    most: 2,
    unit: 'kilograms per cubic metre',
    slips: [times(1 / 1000, 'grams per cubic metre')],
  },
  kinematicViscosity_m2_s: {
    least: 5e-6,
    most: 5e-5,
    unit: 'square metres per second',
    slips: [times(1e-6, 'square millimetres per second')],
  },
  volume_m3: { least: 0.5, most: 5000, unit: 'cubic metres (m3)', slips: [times(1 / 1000, 'litres')] },
  makeUpFreeArea_mm2: {
    least: 50,
    most: 10_000_000,
    unit: 'square millimetres (mm2)',
    orZero: true,
    slips: [times(1e6, 'square metres')],
  },
  requiredFlow_L_s: { least: 1, most: 5000, unit: litresPerSecond, slips: [cubicMetresForLitres] },
  flow_L_s: { least: 0, most: 5000, unit: litresPerSecond },
  largestFlow_L_s: { least: 2, most: 5000, unit: litresPerSecond, slips: [cubicMetresForLitres] },
  pressure_Pa: { least: 0, most: 5000, unit: 'pascals (Pa)' },
  largestPressure_Pa: {
    least: 5,
    most: 5000,
    unit: 'pascals (Pa)',
    slips: [times(1000, 'kilopascals'), times(249.09, 'inches of water')],
  },
  power_W: { least: 0, most: 10_000, unit: 'watts (W)' },
  motorFloor_W: { least: 0, most: 500, unit: 'watts (W)' },
  ratingDensity_kg_m3: { least: 0.5, most: 2, unit: 'kilograms per cubic metre' },
  speed_rpm: { least: 50, most: 30_000, unit: 'turns per minute (rpm)' },
  speed: { least: 0.1, most: 1.5, unit: 'as a share of rated speed', slips: [percent] },
  diameter_mm: bore,
  outletDiameter_mm: bore,
  path_m: pathLength,
  fullLength_m: { ...pathLength, most: 200 },
  freeArea: { least: 0.01, most: 1, unit: share, slips: [percent] },
  lossCoefficient: { least: 0, most: 1000, unit: noUnit },
  /** Drawn tubing, the smoothest in the handbook table, is 0.00046 mm. */
  roughness_mm: { least: 0.0004, most: 20, unit: mm, orZero: true, slips: [metresForMillimetres] },
  spacing_m: { least: 0.1, most: 10, unit: m, slips: [millimetresForMetres] },
  width_mm: { least: 5, most: 500, unit: mm, slips: [metresForMillimetres] },
  span_m: { least: 0.1, most: 20, unit: m, slips: [millimetresForMetres] },
  angle_deg: { least: 5, most: 180, unit: 'degrees', slips: [times(180 / Math.PI, 'radians')] },
  radiusRatio: { least: 0.5, most: 10, unit: 'centreline radius over bore, no unit' },
  amount: { least: 0, most: 1, unit: share, slips: [percent] },
  /** Class A is 0.027, unsealed flexible about 0.042, unsealed rectangular 0.0675 (30 and 48 in US terms). */
  leakCoefficient_L_s_m2: { least: 0, most: 0.1, unit: 'L/s per m2 of duct surface at 1 Pa' },
  /** A hole is 0.5, slow leakage through pores 1. */
  leakExponent: { least: 0.5, most: 1, unit: noUnit },
  coefficient_L_s: { least: 0, most: 200, unit: 'L/s at 1 Pa' },
  openingPressure_Pa: {
    least: 0,
    most: 100,
    unit: 'pascals (Pa)',
    slips: [times(249.09, 'inches of water')],
  },
  straight_m: { ...pathLength, least: 0, most: 20 },
  wind_Pa: { least: -500, most: 500, unit: 'pascals (Pa), above 0 against the fan' },
  roofPressure_Pa: { least: -500, most: 500, unit: 'pascals (Pa) against the room' },
  errorShare: { least: 0, most: 1, unit: share, slips: [percent] },
} as const satisfies Record<string, Range>;

export type RangeName = keyof typeof ranges;

/** Whether a number lies in a range of `ranges`, in that range’s own unit; ends included unless the range says otherwise. */
export function inRange(name: RangeName, value: number): boolean {
  const range: Range = ranges[name];
  return (value >= range.least && value <= range.most) || (range.orZero === true && value === 0);
}

/** The units a value outside its range would make sense in, with the value turned into the right one. */
export function likelySlips(name: RangeName, value: number): readonly { from: string; value: number }[] {
  const range: Range = ranges[name];
  return (range.slips ?? [])
    .map(({ from, convert }) => ({ from, value: Number(convert(value).toPrecision(6)) }))
    .filter((slip) => slip.value !== 0 && inRange(name, slip.value));
}
