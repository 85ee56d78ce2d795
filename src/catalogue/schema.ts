/**
 * The shapes a file may hold, as strict schemas: a key that is not listed is refused. Each schema's message
 * is a short code that `findings.ts` turns into words, so the wording stays in one place.
 */
import * as v from 'valibot';
import {
  FAULTS,
  type FanTable,
  type FaultKind,
  type Fault,
  type Material,
  type Piece,
  type Rig,
} from '#physics';
import { inRange, type RangeName } from './ranges.ts';

const record = <Entries extends v.ObjectEntries>(entries: Entries) =>
  v.strictObject(entries, `keys:${Object.keys(entries).join('|')}`);

const quantity = (name: RangeName) =>
  v.pipe(
    v.number(`range:${name}`),
    v.check((value) => inRange(name, value), `range:${name}`),
  );

const maybe = (name: RangeName) => v.optional(quantity(name));

const text = v.pipe(
  v.string('type:text in double quotes'),
  v.check((value) => value.trim() !== '', 'type:text that is not empty'),
  v.maxLength(2000, 'type:text of at most 2000 characters'),
);

const choice = <const Options extends readonly string[]>(options: Options) =>
  v.picklist(options, `choice:${options.join('|')}`);

const listOf = <Item extends v.GenericSchema>(item: Item) => v.array(item, 'type:a list [ ]');

const pairOf = <Item extends v.GenericSchema>(item: Item) =>
  v.strictTuple([item, item], 'type:a list of two numbers, [least, most]');

export const marks = [
  'published',
  'transcribed',
  'memory',
  'model assumption',
  'common practice, no source',
  'invented',
] as const;

export const FanTableSchema = record({
  name: v.optional(text),
  pressure: choice(['total', 'static']),
  outletDiameter_mm: maybe('outletDiameter_mm'),
  ratingDensity_kg_m3: maybe('ratingDensity_kg_m3'),
  motor: v.optional(choice(['AC', 'EC'])),
  motorFloor_W: maybe('motorFloor_W'),
  speed_rpm: maybe('speed_rpm'),
  saddle: v.optional(v.boolean('type:true or false')),
  points: listOf(
    record({
      flow_L_s: quantity('flow_L_s'),
      pressure_Pa: quantity('pressure_Pa'),
      power_W: maybe('power_W'),
    }),
  ),
  origin: v.optional(text),
}) satisfies v.GenericSchema<unknown, FanTable>;

export const MaterialSchema = record({
  name: text,
  behaviour: choice(['rigid', 'semi-rigid', 'flexible']),
  roughness_mm: quantity('roughness_mm'),
  roughnessRange_mm: pairOf(quantity('roughness_mm')),
  source: text,
  mark: choice(marks),
}) satisfies v.GenericSchema<unknown, Material>;

const number = v.pipe(v.number('type:a number'), v.finite('type:a finite number'));
const positive = v.pipe(
  number,
  v.check((value) => value > 0, 'type:a number above 0'),
);
const instrumentBasics = { name: text, source: text, mark: choice(marks), errorShare: maybe('errorShare') };

/** What an instrument can read; range and resolution carry the unit of what it measures. */
export const InstrumentSchema = v.variant(
  'measures',
  [
    record({
      ...instrumentBasics,
      measures: v.literal('flow'),
      range_L_s: pairOf(number),
      resolution_L_s: positive,
      error_L_s: v.optional(positive),
    }),
    record({
      ...instrumentBasics,
      measures: v.literal('velocity'),
      range_m_s: pairOf(number),
      resolution_m_s: positive,
      error_m_s: v.optional(positive),
    }),
    record({
      ...instrumentBasics,
      measures: v.literal('pressure'),
      range_Pa: pairOf(number),
      resolution_Pa: positive,
      error_Pa: v.optional(positive),
    }),
  ],
  'choice:flow|velocity|pressure',
);

export type Instrument = v.InferOutput<typeof InstrumentSchema>;

const bend = record({ angle_deg: quantity('angle_deg'), radiusRatio: quantity('radiusRatio') });
const diameter_mm = quantity('diameter_mm');

const pieces = [
  record({
    id: text,
    kind: v.literal('grille'),
    diameter_mm,
    freeArea: maybe('freeArea'),
    lossCoefficient: maybe('lossCoefficient'),
  }),
  record({
    id: text,
    kind: v.literal('duct'),
    material: text,
    diameter_mm,
    path_m: quantity('path_m'),
    fullLength_m: maybe('fullLength_m'),
    roughness_mm: maybe('roughness_mm'),
    supports: v.optional(record({ spacing_m: quantity('spacing_m'), width_mm: quantity('width_mm') })),
    bends: v.optional(listOf(bend)),
    leakClass: v.optional(choice(['A', 'B', 'C', 'D'])),
    leakCoefficient_L_s_m2: maybe('leakCoefficient_L_s_m2'),
    leakExponent: maybe('leakExponent'),
    jointLeak: v.optional(
      record({ coefficient_L_s: quantity('coefficient_L_s'), exponent: maybe('leakExponent') }),
    ),
  }),
  record({
    id: text,
    kind: v.literal('elbow'),
    form: choice(['gored', 'pressed', 'mitred', 'adjustable', 'flexible']),
    angle_deg: quantity('angle_deg'),
    radiusRatio: maybe('radiusRatio'),
    gores: v.optional(v.picklist([3, 5, 7], 'type:3, 5 or 7')),
    diameter_mm,
    lossCoefficient: maybe('lossCoefficient'),
  }),
  record({
    id: text,
    kind: v.literal('fan'),
    /** A name in the stock, or the table itself: anything that is not text is read as a table. */
    fan: v.lazy((value: unknown) => (typeof value === 'string' ? text : FanTableSchema)),
    speed: maybe('speed'),
    diameter_mm: v.optional(diameter_mm),
  }),
  record({
    id: text,
    kind: v.literal('terminal'),
    form: choice(['open-end', 'wall-cowl', 'rain-cap', 'high-rain-cap', 'louvre']),
    diameter_mm,
    lossCoefficient: maybe('lossCoefficient'),
    screen: v.optional(record({ freeArea: quantity('freeArea') })),
  }),
  record({
    id: text,
    kind: v.literal('fitting'),
    diameter_mm,
    lossCoefficient: quantity('lossCoefficient'),
  }),
  record({
    id: text,
    kind: v.literal('reducer'),
    diameter_mm,
    toDiameter_mm: diameter_mm,
    form: v.optional(choice(['sudden', 'conical'])),
    angle_deg: maybe('angle_deg'),
    lossCoefficient: maybe('lossCoefficient'),
  }),
  record({
    id: text,
    kind: v.literal('damper'),
    diameter_mm,
    openingPressure_Pa: maybe('openingPressure_Pa'),
    lossCoefficient: maybe('lossCoefficient'),
  }),
] as const;

const PieceSchema = v.variant(
  'kind',
  pieces,
  'choice:grille|duct|elbow|fan|terminal|fitting|reducer|damper',
) satisfies v.GenericSchema<unknown, Piece>;

const fault = <Kind extends FaultKind>(kind: Kind) => ({
  kind: v.literal(kind),
  at: text,
  amount: quantity('amount'),
});

const FaultSchema = v.variant(
  'kind',
  [
    record({ ...fault('sag'), span_m: maybe('span_m') }),
    record(fault('crimp')),
    record(fault('flexible-swap')),
    record(fault('tight-ties')),
    record({ ...fault('extra-length'), manner: v.optional(choice(['bunched', 'draped'])) }),
    record({ ...fault('bend-at-fan'), straight_m: maybe('straight_m') }),
    record(fault('fan-reversed')),
    record(fault('joint-weep')),
    record(fault('joint-open')),
    record(fault('joint-off')),
    record(fault('crushed')),
    record(fault('dented')),
    record(fault('blocked-grille')),
    record(fault('blocked-cowl')),
    record(fault('screened-cowl')),
    record(fault('stuck-damper')),
    record(fault('undersized')),
    record(fault('no-make-up-air')),
    record(fault('weak-fan')),
  ],
  `choice:${Object.keys(FAULTS).join('|')}`,
) satisfies v.GenericSchema<unknown, Fault>;

const air = record({
  temperature_C: maybe('temperature_C'),
  relativeHumidity: maybe('relativeHumidity'),
  pressure_Pa: maybe('airPressure_Pa'),
  density_kg_m3: maybe('density_kg_m3'),
  kinematicViscosity_m2_s: maybe('kinematicViscosity_m2_s'),
});

/** An object whose keys may all be absent would let an empty list pass. */
const noList = v.never('type:an object { }');

export const RigSchema = record({
  name: text,
  about: v.optional(text),
  air: v.optional(v.lazy((value: unknown) => (Array.isArray(value) ? noList : air))),
  room: v.optional(
    record({
      volume_m3: quantity('volume_m3'),
      makeUpFreeArea_mm2: maybe('makeUpFreeArea_mm2'),
      use: v.optional(choice(['bathroom', 'toilet', 'laundry', 'kitchen'])),
    }),
  ),
  required: v.optional(
    record({ flow_L_s: quantity('requiredFlow_L_s'), source: text, rate: v.optional(text) }),
  ),
  outdoors: v.optional(record({ wind_Pa: quantity('wind_Pa') })),
  roofSpace: v.optional(record({ pressure_Pa: quantity('roofPressure_Pa') })),
  run: listOf(PieceSchema),
  faults: v.optional(listOf(FaultSchema)),
}) satisfies v.GenericSchema<unknown, Rig>;
