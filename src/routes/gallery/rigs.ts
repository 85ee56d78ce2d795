/** Small invented rigs, just enough to show one part or one fault each. */
import type { Duct, Fan, Grille, Piece, Rig, Terminal } from '#physics';

export const grille: Grille = { id: 'grille', kind: 'grille', diameter_mm: 100, freeArea: 0.7 };
export const fan: Fan = { id: 'fan', kind: 'fan', fan: 'mixed-100', speed: 1 };
export const cowl: Terminal = { id: 'cowl', kind: 'terminal', form: 'wall-cowl', diameter_mm: 100 };
export const inlet: Duct = {
  id: 'inlet',
  kind: 'duct',
  material: 'semi-rigid',
  diameter_mm: 100,
  path_m: 1.2,
  fullLength_m: 1.2,
};
export const out: Duct = {
  id: 'out',
  kind: 'duct',
  material: 'flexible',
  diameter_mm: 100,
  path_m: 3,
  fullLength_m: 3,
  supports: { spacing_m: 1, width_mm: 75 },
};

export const rigOf = (name: string, run: readonly Piece[], more: Partial<Rig> = {}): Rig => ({
  name,
  room: { volume_m3: 12, makeUpFreeArea_mm2: 14_000 },
  run,
  faults: [],
  ...more,
});

/** A run on which every fault can sit. */
export const whole: Rig = rigOf('A run for every fault', [
  grille,
  inlet,
  fan,
  out,
  { id: 'flap', kind: 'damper', diameter_mm: 100 },
  { id: 'sleeve', kind: 'duct', material: 'rigid', diameter_mm: 100, path_m: 0.4 },
  cowl,
]);

/** Wind strong enough to turn the air back, or only to stop it where a flap shuts. */
export const againstWind = (flap: boolean): Rig =>
  rigOf(
    'Against the wind',
    [
      grille,
      inlet,
      fan,
      out,
      ...(flap ? [{ id: 'flap', kind: 'damper', diameter_mm: 100 } satisfies Piece] : []),
      cowl,
    ],
    { outdoors: { wind_Pa: 260 } },
  );
