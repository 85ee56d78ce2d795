/** What the `solve` command prints for the text of a rig, apart from files, arguments and exit codes. */
import { readRigText, stock, tell } from '#catalogue';
import { consequences, solve } from '#physics';

export type SolvedText =
  { readonly ok: true; readonly text: string } | { readonly ok: false; readonly lines: readonly string[] };

/** `file` is only for the messages; `more` adds the consequences under their own key. */
export function solveText(rigText: string, file: string, more = false): SolvedText {
  const read = readRigText(rigText, file);
  if (!read.ok) return { ok: false, lines: read.problems.map(tell) };
  const solution = solve(read.rig, stock);
  if (solution.outcome === 'failed') return { ok: false, lines: [tell({ file, ...solution })] };
  const told = more ? { ...solution, consequences: consequences(solution, read.rig.room) } : solution;
  return { ok: true, text: `${JSON.stringify(told, null, 2)}\n` };
}
