/** What a run must keep to beyond the shape of its pieces: order, ids, bores, lengths, names in the stock. */
import type { Duct, Fan, Piece, Rig, Stock } from '#physics';
import { fanFindings } from './fan-rules.ts';
import { finding, type Finding } from './problems.ts';

/** A way in, the fan, a way out. */
const FEWEST_PIECES = 3;
/** No house run needs more; a longer list is a mistake or a file made to tire the machine. */
const MOST_PIECES = 100;

export function runFindings({ run }: Rig, stock: Stock): Finding[] {
  if (run.length < FEWEST_PIECES)
    return [finding('too-few', 'run', run.length, FEWEST_PIECES, run.length === 1 ? 'piece' : 'pieces')];
  if (run.length > MOST_PIECES) return [finding('too-many', 'run', run.length, MOST_PIECES, 'pieces')];
  return [
    ...idFindings(run),
    ...orderFindings(run),
    ...boreFindings(run),
    ...run.flatMap((piece, index) => {
      if (piece.kind === 'duct') return ductFindings(piece, `run[${index}]`, stock);
      if (piece.kind === 'reducer' && piece.toDiameter_mm === piece.diameter_mm)
        return [finding('reducer-keeps-bore', `run[${index}].toDiameter_mm`, piece.toDiameter_mm)];
      return piece.kind === 'fan' ? fanPieceFindings(piece, `run[${index}]`, stock) : [];
    }),
  ];
}

/** Stations and pieces the engine adds of its own accord. */
const RESERVED_IDS = ['room', 'outside air', 'fan inlet', 'bare inlet', 'bare outlet'];

function idFindings(run: readonly Piece[]): Finding[] {
  return run.flatMap(({ id }, index) => {
    if (RESERVED_IDS.includes(id)) return [finding('reserved-id', `run[${index}].id`, id)];
    const first = run.findIndex((piece) => piece.id === id);
    return first < index ? [finding('id-twice', `run[${index}].id`, id, `run[${first}]`)] : [];
  });
}

function orderFindings(run: readonly Piece[]): Finding[] {
  const found: Finding[] = [];
  const last = run.length - 1;
  const fans = run.flatMap((piece, index) => (piece.kind === 'fan' ? [index] : []));
  if (fans.length !== 1)
    found.push(finding('fan-count', fans[1] === undefined ? 'run' : `run[${fans[1]}].kind`, fans.length));
  run.forEach(({ kind }, index) => {
    const path = `run[${index}].kind`;
    if (index === 0) {
      if (kind !== 'grille' && kind !== 'duct') found.push(finding('wrong-start', path, kind));
    } else if (index === last) {
      if (kind !== 'terminal') found.push(finding('wrong-end', path, kind));
    } else if (kind === 'grille' || kind === 'terminal') found.push(finding('wrong-middle', path, kind));
  });
  return found;
}

/**
 * Neighbours share one bore; a fan without a bore takes theirs. A reducer changes it. A fitting states a
 * loss on its own bore, so it may stand where the bore changes too.
 */
function boreFindings(run: readonly Piece[]): Finding[] {
  let before: { readonly id: string; readonly bore: number } | undefined;
  for (const [index, piece] of run.entries()) {
    const { id, kind, diameter_mm: bore } = piece;
    if (kind === 'fitting') before = undefined;
    else if (bore !== undefined) {
      // The first change tells it; the ones after it follow from the same slip.
      if (before !== undefined && before.bore !== bore) {
        return [finding('bores-differ', `run[${index}].diameter_mm`, bore, before.bore, before.id)];
      }
      before = { id, bore: piece.kind === 'reducer' ? piece.toDiameter_mm : bore };
    }
  }
  return [];
}

function ductFindings(duct: Duct, path: string, stock: Stock): Finding[] {
  const found: Finding[] = [];
  if (!Object.hasOwn(stock.materials, duct.material)) {
    found.push(finding('unknown-material', `${path}.material`, duct.material, Object.keys(stock.materials)));
  }
  if (duct.fullLength_m !== undefined && duct.fullLength_m < duct.path_m) {
    found.push(finding('shorter-than-path', `${path}.fullLength_m`, duct.fullLength_m, duct.path_m));
  }
  if (duct.leakClass !== undefined && duct.leakCoefficient_L_s_m2 !== undefined)
    found.push(finding('leakage-twice', `${path}.leakCoefficient_L_s_m2`));
  return found;
}

function fanPieceFindings({ fan }: Fan, path: string, stock: Stock): Finding[] {
  if (typeof fan !== 'string') return fanFindings(fan, `${path}.fan.`);
  return Object.hasOwn(stock.fans, fan)
    ? []
    : [finding('unknown-fan', `${path}.fan`, fan, Object.keys(stock.fans))];
}
