/** Every fault not in at all, half in and fully in, on the run that has a place for it. */
import { say, type MessageKey } from '#i18n';
import type { Fault, FaultKind } from '#physics';
import type { MeterReading } from '#scene-trouble';
import { defaults, show } from '#units';
import { sceneOf } from './parts.ts';
import { againstWind, whole } from './rigs.ts';
import type { State } from './types.ts';

type Shown = Omit<Fault, 'amount'> & { readonly name?: string };

/** A record, so that a new kind of fault does not compile until it has a place here. */
const PLACES: Readonly<Record<FaultKind, readonly Omit<Shown, 'kind'>[]>> = {
  sag: [{ at: 'out' }, { at: 'out', span_m: 2, name: 'supports-gone' }],
  crimp: [{ at: 'fan' }],
  'flexible-swap': [{ at: 'inlet' }],
  'tight-ties': [{ at: 'out' }],
  'extra-length': [
    { at: 'out', manner: 'bunched', name: 'bunched' },
    { at: 'out', manner: 'draped', name: 'draped' },
  ],
  'bend-at-fan': [{ at: 'fan' }],
  'fan-reversed': [{ at: 'fan' }],
  'joint-weep': [
    { at: 'inlet', name: 'suction' },
    { at: 'out', name: 'discharge' },
  ],
  'joint-open': [
    { at: 'inlet', name: 'suction' },
    { at: 'out', name: 'discharge' },
  ],
  'joint-off': [
    { at: 'inlet', name: 'suction' },
    { at: 'out', name: 'discharge' },
  ],
  crushed: [{ at: 'out' }],
  dented: [{ at: 'inlet' }],
  'blocked-grille': [{ at: 'grille' }],
  'blocked-cowl': [{ at: 'cowl' }],
  'screened-cowl': [{ at: 'cowl' }],
  'stuck-damper': [{ at: 'flap' }],
  undersized: [{ at: 'sleeve' }],
  'no-make-up-air': [{ at: 'grille' }],
  'weak-fan': [{ at: 'fan' }],
};
const AMOUNTS = [0, 0.5, 1];

export const faultWord = (kind: FaultKind) => say(`fault.${kind}` as MessageKey);

const single = (Object.keys(PLACES) as FaultKind[]).flatMap((kind) =>
  PLACES[kind].flatMap(({ name, ...place }) =>
    AMOUNTS.map((amount): State => {
      const share = show('share', amount, defaults).text;
      const fault = faultWord(kind);
      return {
        id: `fault-${kind}${name ? `-${name}` : ''}-${amount * 100}`,
        title: name
          ? say('gallery.fault.way', { fault, share, way: say(`gallery.way.${name}` as MessageKey) })
          : say('gallery.fault', { fault, share }),
        body: sceneOf({ ...whole, faults: [{ kind, ...place, amount }] }, { present: place.at }),
      };
    }),
  ),
);

/** One of the fixed five after another, and air that does not go where it should. */
export const five: readonly Fault[] = [
  { kind: 'sag', at: 'out', amount: 0.5 },
  { kind: 'crimp', at: 'fan', amount: 0.6 },
  { kind: 'flexible-swap', at: 'inlet', amount: 1 },
  { kind: 'tight-ties', at: 'out', amount: 0.5 },
  { kind: 'extra-length', at: 'out', amount: 0.5, manner: 'bunched' },
];
const together: readonly State[] = [
  {
    id: 'fault-five-together',
    title: say('gallery.fault.five'),
    body: sceneOf({ ...whole, faults: five }),
  },
  { id: 'fault-blown-back', title: say('gallery.flow.reversed'), body: sceneOf(againstWind(false)) },
  { id: 'fault-stopped', title: say('gallery.flow.stopped'), body: sceneOf(againstWind(true)) },
];

/** Each kind of meter held where it reads. What its window says here is what truly passes, without its error. */
const METERS: Readonly<Record<MeterReading['kind'], string>> = {
  'powered-hood': 'grille',
  'passive-hood': 'grille',
  bag: 'grille',
  'vane-anemometer': 'grille',
  manometer: 'fan',
  'pitot-traverse': 'out',
};
const meters = (Object.keys(METERS) as MeterReading['kind'][]).map((kind): State => {
  const body = sceneOf(whole);
  const solution = body.solution;
  const piece = solution.pieces.find(({ id }) => id === METERS[kind])!;
  const text =
    kind === 'manometer'
      ? show('pressure', solution.fan.staticPressure_Pa, defaults).text
      : kind === 'vane-anemometer' || kind === 'pitot-traverse'
        ? show('velocity', piece.velocity_m_s, defaults).text
        : show('flow', solution.flow_L_s.room, defaults).text;
  return {
    id: `meter-${kind}`,
    title: say(`gallery.meter.${kind}`),
    body: { ...body, meter: { kind, place: METERS[kind], text } },
  };
});

export const faults: readonly State[] = [...single, ...together, ...meters];
