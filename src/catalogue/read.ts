/** Reads a rig, or one entry of the starter catalogue, out of a value that came from a file or a link. */
import type { FanTable, Material, Rig, Stock } from '#physics';
import { fanFindings } from './fan-rules.ts';
import { faultFindings } from './fault-rules.ts';
import { check, type Checked } from './findings.ts';
import { parseJson } from './json.ts';
import { finding, type Finding, type Problem } from './problems.ts';
import { runFindings } from './run-rules.ts';
import { FanTableSchema, InstrumentSchema, MaterialSchema, RigSchema, type Instrument } from './schema.ts';
import { stock as seedStock } from './stock.ts';

interface Refusal {
  readonly ok: false;
  readonly problems: readonly Problem[];
}

export type ReadRig = { readonly ok: true; readonly rig: Rig } | Refusal;
export type Read<Thing> = { readonly ok: true; readonly value: Thing } | Refusal;

function finish<Thing>(
  checked: Checked<Thing>,
  file: string,
  rules: (thing: Thing) => readonly Finding[],
): Read<Thing> {
  const findings = checked.ok ? rules(checked.value) : checked.findings;
  if (checked.ok && findings.length === 0) return checked;
  return { ok: false, problems: findings.map((each) => ({ file, ...each })) };
}

/** `file` is only for the messages. The rig handed back is a fresh copy. Never throws. */
export function readRig(value: unknown, file: string, stock: Stock = seedStock): ReadRig {
  const read = finish(check<Rig>(RigSchema, value), file, (rig) => [
    ...runFindings(rig, stock),
    ...faultFindings(rig, stock),
  ]);
  return read.ok ? { ok: true, rig: read.value } : read;
}

/** The same from JSON text; a byte-order mark in front is passed over. */
export function readRigText(text: string, file: string, stock: Stock = seedStock): ReadRig {
  const parsed = parseJson(text);
  return parsed.ok
    ? readRig(parsed.value, file, stock)
    : { ok: false, problems: [{ file, ...parsed.finding }] };
}

/** A fan table out of parsed JSON; `file` is what problems are told of. */
export function readFanTable(value: unknown, file: string): Read<FanTable> {
  return finish(check<FanTable>(FanTableSchema, value), file, (table) => fanFindings(table, ''));
}

const backwards = (pair: readonly [number, number], path: string): Finding[] =>
  pair[0] > pair[1] ? [finding('range-backwards', path, pair)] : [];

/** A duct material out of parsed JSON; `file` is what problems are told of. */
export function readMaterial(value: unknown, file: string): Read<Material> {
  return finish(
    check<Material>(MaterialSchema, value),
    file,
    ({ roughness_mm, roughnessRange_mm: range }) => {
      const found = backwards(range, 'roughnessRange_mm');
      if (found.length > 0 || (roughness_mm >= range[0] && roughness_mm <= range[1])) return found;
      return [finding('outside-own-range', 'roughness_mm', roughness_mm, range)];
    },
  );
}

/** An instrument out of parsed JSON; `file` is what problems are told of. */
export function readInstrument(value: unknown, file: string): Read<Instrument> {
  return finish(check<Instrument>(InstrumentSchema, value), file, (instrument) => {
    if (instrument.measures === 'flow') return backwards(instrument.range_L_s, 'range_L_s');
    if (instrument.measures === 'velocity') return backwards(instrument.range_m_s, 'range_m_s');
    return backwards(instrument.range_Pa, 'range_Pa');
  });
}
