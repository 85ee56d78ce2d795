/** Which fault may sit on which piece: the engine's own registry decides. */
import { FAULTS, type Fault, type Piece, type Rig, type Stock } from '#physics';
import { finding, type Finding } from './problems.ts';

/** More faults than this on one run is a mistake or a file made to tire the machine. */
const MOST_FAULTS = 100;

export function faultFindings(rig: Rig, stock: Stock): Finding[] {
  const faults = rig.faults ?? [];
  if (faults.length > MOST_FAULTS)
    return [finding('too-many', 'faults', faults.length, MOST_FAULTS, 'faults')];
  return faults.flatMap((fault, index) => placeFindings(fault, `faults[${index}].at`, rig.run, stock));
}

function placeFindings(fault: Fault, path: string, run: readonly Piece[], stock: Stock): Finding[] {
  const ids = run.map(({ id }) => id);
  const piece = run.find(({ id }) => id === fault.at);
  if (piece === undefined) return [finding('unknown-place', path, fault.at, ids)];
  const behaviourOf = (one: Piece) =>
    one.kind === 'duct' && Object.hasOwn(stock.materials, one.material)
      ? stock.materials[one.material]?.behaviour
      : undefined;
  // A duct of unknown material is told once already, at the material.
  if (piece.kind === 'duct' && behaviourOf(piece) === undefined) return [];
  const { fits } = FAULTS[fault.kind];
  if (fits(piece, stock)) return [];
  const what =
    piece.kind === 'duct'
      ? `a ${behaviourOf(piece)} duct`
      : `${piece.kind === 'elbow' ? 'an' : 'a'} ${piece.kind}`;
  const fitting = run.filter((one) => fits(one, stock)).map(({ id }) => id);
  return [finding('wrong-place', path, fault.kind, fault.at, what, fitting)];
}
