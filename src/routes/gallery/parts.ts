/** Every kind, form and material of a piece in a run of its own. */
import { say, type MessageKey } from '#i18n';
import type { Duct, Elbow, Piece, Reducer, Rig, Terminal } from '#physics';
import { RunSolver, stock } from '#session';
import { cowl, fan, grille, inlet, out, rigOf } from './rigs.ts';
import type { Body, State } from './types.ts';

/** The run as solved now and as it is without its faults. */
export function sceneOf(
  rig: Rig,
  more: { present?: string; highlight?: string } = {},
): Extract<Body, { kind: 'scene' }> {
  const run = new RunSolver(rig, stock);
  const faults = rig.faults ?? [];
  return { kind: 'scene', rig, solution: run.at(faults), healthy: run.at([]), ...more };
}

const part = (id: string, title: string, run: readonly Piece[], highlight?: string): State => ({
  id: `part-${id}`,
  title,
  body: sceneOf(rigOf(title, run), highlight === undefined ? {} : { highlight }),
});

const named = (kind: string, name: string) => say(`gallery.part.${kind}` as MessageKey, { name });

const ducts = Object.keys(stock.materials).flatMap((material): State[] => {
  const stiff = stock.materials[material]!.behaviour === 'rigid';
  const name = stock.materials[material]!.name;
  const duct: Duct = {
    ...out,
    material,
    ...(stiff ? {} : { fullLength_m: 3.1 }),
    bends: [{ angle_deg: 45, radiusRatio: 1 }],
  };
  return [part(`duct-${material}`, named('duct', name), [grille, inlet, fan, duct, cowl])];
});

const ELBOWS: readonly Elbow['form'][] = ['gored', 'pressed', 'mitred', 'adjustable', 'flexible'];
const elbows = ELBOWS.map((form) => {
  const elbow: Elbow = {
    id: 'elbow',
    kind: 'elbow',
    form,
    angle_deg: 90,
    diameter_mm: 100,
    ...(form === 'mitred' || form === 'adjustable' ? {} : { radiusRatio: 1.5 }),
  };
  const run = [
    grille,
    inlet,
    elbow,
    { ...inlet, id: 'tail', path_m: 0.8, fullLength_m: 0.8 },
    fan,
    out,
    cowl,
  ];
  return part(`elbow-${form}`, named('elbow', say(`gallery.form.${form}`)), run, 'elbow');
});

const TERMINALS: readonly Terminal['form'][] = [
  'open-end',
  'wall-cowl',
  'rain-cap',
  'high-rain-cap',
  'louvre',
];
const ends: readonly Terminal[] = [
  ...TERMINALS.map((form): Terminal => ({ ...cowl, form })),
  { ...cowl, screen: { freeArea: 0.6 } },
];
const terminals = ends.map((end) => {
  const screened = end.screen ? '-screened' : '';
  const name = say(end.screen ? 'gallery.form.screened' : `gallery.form.${end.form}`);
  return part(
    `terminal-${end.form}${screened}`,
    named('terminal', name),
    [grille, inlet, fan, out, end],
    'cowl',
  );
});

const reducers = (
  [
    ['conical', 100, 125],
    ['conical', 125, 100],
    ['sudden', 100, 125],
    ['sudden', 125, 100],
  ] as const
).map(([form, from, to]) => {
  const reducer: Reducer = { id: 'reducer', kind: 'reducer', form, diameter_mm: from, toDiameter_mm: to };
  const bore = <P extends Piece>(piece: P, diameter_mm: number): P => ({ ...piece, diameter_mm });
  const run = [
    bore(grille, from),
    bore(inlet, from),
    bore(fan, from),
    bore({ ...out, path_m: 1.5, fullLength_m: 1.5 }, from),
    reducer,
    bore({ ...out, id: 'tail', path_m: 1.5, fullLength_m: 1.5 }, to),
    bore(cowl, to),
  ];
  const name = say(`gallery.form.${form}`, { from, to });
  return part(`reducer-${form}-${from}-${to}`, named('reducer', name), run, 'reducer');
});

const places = [
  part('fan-first', say('gallery.part.fan-first'), [grille, fan, out, cowl], 'fan'),
  part('fan-between', say('gallery.part.fan-between'), [grille, inlet, fan, out, cowl], 'fan'),
  part('fan-last', say('gallery.part.fan-last'), [grille, inlet, out, fan, cowl], 'fan'),
];

const others = [
  part('grille', say('gallery.part.grille'), [grille, inlet, fan, out, cowl], 'grille'),
  part(
    'damper',
    say('gallery.part.damper'),
    [grille, inlet, fan, out, { id: 'flap', kind: 'damper', diameter_mm: 100 }, cowl],
    'flap',
  ),
  part(
    'fitting',
    say('gallery.part.fitting'),
    [
      grille,
      inlet,
      { id: 'fitting', kind: 'fitting', diameter_mm: 100, lossCoefficient: 0.3 },
      fan,
      out,
      cowl,
    ],
    'fitting',
  ),
  part('short', say('gallery.part.short'), [grille, fan, { ...out, path_m: 1, fullLength_m: 1 }, cowl]),
  part('long', say('gallery.part.long'), [
    grille,
    inlet,
    fan,
    { ...out, path_m: 10.8, fullLength_m: 11 },
    cowl,
  ]),
];

const rooms = (['toilet', 'laundry', 'kitchen'] as const).map((use): State => {
  const title = say(`gallery.room.${use}`);
  const rig = rigOf(title, [grille, inlet, fan, out, cowl]);
  return { id: `room-${use}`, title, body: sceneOf({ ...rig, room: { volume_m3: 10, ...rig.room, use } }) };
});

export const parts: readonly State[] = [
  ...places,
  ...rooms,
  ...others,
  ...ducts,
  ...elbows,
  ...reducers,
  ...terminals,
];
