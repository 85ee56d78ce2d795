/** Finds the key that was meant: same word with another unit, or the nearest spelling. */

const unitWords: Readonly<Record<string, string>> = {
  m: 'metres',
  mm: 'millimetres',
  cm: 'centimetres',
  in: 'inches',
  ft: 'feet',
  m2: 'square metres',
  mm2: 'square millimetres',
  cm2: 'square centimetres',
  m3: 'cubic metres',
  L: 'litres',
  L_s: 'litres per second',
  m3_s: 'cubic metres per second',
  m3_h: 'cubic metres per hour',
  cfm: 'cubic feet per minute',
  m_s: 'metres per second',
  Pa: 'pascals',
  hPa: 'hectopascals',
  kPa: 'kilopascals',
  W: 'watts',
  kW: 'kilowatts',
  C: 'degrees Celsius',
  K: 'kelvin',
  F: 'degrees Fahrenheit',
  deg: 'degrees',
  rad: 'radians',
  rpm: 'turns per minute',
  kg_m3: 'kilograms per cubic metre',
  m2_s: 'square metres per second',
};

/** Longest first, so that `flow_L_s` ends in `L_s` and not in `s`. */
const suffixes = Object.keys(unitWords).sort((one, other) => other.length - one.length);

interface Parted {
  readonly word: string;
  readonly unit: string | undefined;
}

function part(key: string): Parted {
  const unit = suffixes.find((suffix) => key.toLowerCase().endsWith(`_${suffix.toLowerCase()}`));
  const word = unit === undefined ? key : key.slice(0, -unit.length - 1);
  return { word: word.toLowerCase().replaceAll(/[_\s-]/g, ''), unit };
}

/** Number of letters to add, drop or change to turn one word into the other. */
function distance(one: string, other: string): number {
  let row = Array.from({ length: other.length + 1 }, (_, index) => index);
  for (let i = 1; i <= one.length; i += 1) {
    const next = [i];
    for (let j = 1; j <= other.length; j += 1) {
      const change = (row[j - 1] ?? 0) + (one[i - 1] === other[j - 1] ? 0 : 1);
      next.push(Math.min(change, (row[j] ?? 0) + 1, (next[j - 1] ?? 0) + 1));
    }
    row = next;
  }
  return row[other.length] ?? 0;
}

/** The nearest of the legal words, or nothing when none is near. */
export function nearest(word: string, legal: readonly string[]): string | undefined {
  if (word.length > 60) return undefined;
  const allowance = Math.max(1, Math.floor(word.length / 3));
  return legal
    .map((candidate) => ({ candidate, far: distance(word.toLowerCase(), candidate.toLowerCase()) }))
    .filter(({ far }) => far <= allowance)
    .sort((one, other) => one.far - other.far)[0]?.candidate;
}

/** A legal key that differs from the written one only by its unit or by its missing unit. */
export function unitSlip(written: string, legal: readonly string[]): string | undefined {
  const wanted = part(written).word;
  return legal.find((key) => key !== written && part(key).word === wanted);
}

/** The key meant, if any. */
export function meant(written: string, legal: readonly string[]): string | undefined {
  return unitSlip(written, legal) ?? nearest(written, legal);
}

/** "diameter_mm, in millimetres"; the key alone when it has no unit. */
export function withUnit(key: string): string {
  const { unit } = part(key);
  return unit === undefined ? key : `${key}, in ${unitWords[unit] ?? unit}`;
}
