/** Where a duct has come off the run begins or ends at a bare end in the roof space; what lies beyond stands still. */
import { coefficientTerm, type Context, type Network, type Part, type Term } from './network.ts';
import type { Rig } from './types.ts';

/** Ids of the bare ends. */
export const BARE_INLET = 'bare inlet';
export const BARE_OUTLET = 'bare outlet';

/** Entry of a bare duct end; bore in m. */
export function bareEntry(context: Context, bore: number): Term {
  return coefficientTerm('entry', context.coefficients.bareEntry, bore, context.air.density);
}

type Ends = Pick<
  Network,
  'parts' | 'fanIndex' | 'live' | 'startPressure' | 'endPressure' | 'outdoorPressure' | 'roofPressure'
>;

/** Puts the bare ends in. Of several breaks on one side the one nearest the fan counts. */
export function withBareEnds(parts: Part[], fanIndex: number, rig: Rig, context: Context): Ends {
  const outdoorPressure = rig.outdoors?.wind_Pa ?? 0;
  const roofPressure = rig.roofSpace?.pressure_Pa ?? 0;
  const off = (part: Part) => part.shape.jointOff === true;
  let before = fanIndex - 1;
  while (before >= 0 && !off(parts[before]!)) before--;
  const behind = parts.findIndex((part, i) => i > fanIndex && off(part));
  const opening = (id: string, at: Part, term: Term): Part => ({
    id,
    kind: 'opening',
    diameter: at.diameter,
    terms: [term],
    shape: {},
  });
  if (before < 0 && behind < 0) {
    const live = [0, parts.length] as const;
    return {
      parts,
      fanIndex,
      live,
      startPressure: 0,
      endPressure: outdoorPressure,
      outdoorPressure,
      roofPressure,
    };
  }
  const list = [...parts];
  if (behind >= 0) {
    const last = list[behind]!;
    const exit = coefficientTerm('exit', context.coefficients.openEnd, last.diameter, context.air.density);
    list.splice(behind, 0, opening(BARE_OUTLET, last, exit));
  }
  if (before >= 0) {
    const last = list[before]!;
    list.splice(before + 1, 0, opening(BARE_INLET, last, bareEntry(context, last.diameter)));
  }
  const shift = before >= 0 ? 1 : 0;
  return {
    parts: list,
    fanIndex: fanIndex + shift,
    live: [before >= 0 ? before + 1 : 0, behind >= 0 ? behind + shift + 1 : list.length],
    startPressure: before >= 0 ? roofPressure : 0,
    endPressure: behind >= 0 ? roofPressure : outdoorPressure,
    outdoorPressure,
    roofPressure,
  };
}
