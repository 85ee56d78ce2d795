/** What `npm run -s bench` measures. Times are the best of several rounds: what else the machine does only adds. */
import { cpus } from 'node:os';
import { seedRig, seedRigIds, stock } from '#catalogue';
import { fairShares, FAULTS, MOST_FAULTS, rigBands, solve } from '#physics';
import type { Fault, FaultKind, Rig, Solution } from '#physics';
import { networkSolver, networkText } from './network-solver.ts';

const ROUNDS = 9;
const GOALS = { ratio: 100, band_ms: 150, shares_ms: 150 };
const FAULTY = 10;

/** Microseconds one call takes, for each of several works done in turn, so that all see the same machine. */
function timed(...works: { readonly times: number; readonly work: () => unknown }[]): number[] {
  const best = works.map(() => Infinity);
  for (let round = 0; round < ROUNDS; round++)
    works.forEach(({ times, work }, i) => {
      const start = performance.now();
      for (let n = 0; n < times; n++) work();
      best[i] = Math.min(best[i]!, ((performance.now() - start) / times) * 1000);
    });
  return best;
}

const shown = (value: number, digits = 0) =>
  value.toLocaleString('en', { minimumFractionDigits: digits, maximumFractionDigits: digits });
const row = (label: string, value: string, note = '') =>
  `${label.padEnd(58)}${value.padStart(12)}  ${note}`.trimEnd();
const against = (met: boolean, goal: string) => `goal ${goal}: ${met ? 'met' : 'NOT MET'}`;
const about = ({ run, faults = [] }: Rig) => `${run.length} pieces, ${faults.length} faults`;

function solved(rig: Rig): Solution {
  const solution = solve(rig, stock);
  if (solution.outcome === 'failed') throw new Error(`${rig.name}: ${solution.code} at ${solution.path}`);
  return solution;
}

/** The rig with faults added wherever they fit, each kind once a place, until there are ten. */
export function tenFaults(rig: Rig): Rig {
  const faults: Fault[] = [...(rig.faults ?? [])];
  const kinds: FaultKind[] = ['sag', 'tight-ties', 'extra-length', 'flexible-swap', 'crimp'];
  for (const kind of kinds)
    for (const piece of rig.run) {
      if (faults.length === FAULTY) return { ...rig, faults };
      const there = faults.some((fault) => fault.kind === kind && fault.at === piece.id);
      if (FAULTS[kind].fits(piece, stock) && !there) faults.push({ kind, at: piece.id, amount: 0.4 });
    }
  throw new Error(`${rig.name} has no room for ${FAULTY} of at most ${MOST_FAULTS} faults`);
}

/**
 * The ratio to a general network solver on one rig whose air all stays in the duct. First from a description
 * to an answer, which is what a changed rig costs either of them; then its hydraulics alone, its network kept
 * open and solved again from scratch, against all of ours, because ours has nothing to keep open.
 */
export async function networkSolverRatio(rig: Rig): Promise<string[]> {
  const solution = solved(rig);
  const flows = Object.values(solution.flow_L_s);
  if (flows.some((flow) => Math.abs(flow - flows[0]!) > 1e-6)) return [row(`${rig.name} leaks`, 'left out')];
  const solver = await networkSolver();
  const text = networkText(rig, stock, solution);
  const theirs = solver.whole(text);
  const [ours_us, whole_us] = timed(
    { times: 300, work: () => solve(rig, stock) },
    { times: 20, work: () => solver.whole(text) },
  );
  const open = solver.open(text);
  const [again_us] = timed({ times: 200, work: open.again });
  open.close();
  const ratio = whole_us! / ours_us!;
  return [
    row(
      `epanet-js, ${rig.name}: times faster, file to answer`,
      shown(ratio, 1),
      against(ratio >= GOALS.ratio, `${GOALS.ratio}`),
    ),
    row(
      '  epanet-js from its file; ours from its rig',
      `${shown(whole_us!, 1)} us`,
      `${shown(ours_us!, 1)} us`,
    ),
    row(
      '  its hydraulics alone; times faster than that',
      `${shown(again_us!, 1)} us`,
      shown(again_us! / ours_us!, 2),
    ),
    row(
      '  flow it finds, L/s; ours',
      shown(theirs, 3),
      `${shown(solution.flow_L_s.fan, 3)} (${shown(100 * (theirs / solution.flow_L_s.fan - 1), 2)} %)`,
    ),
  ];
}

export async function bench(): Promise<string> {
  const rigs = seedRigIds.map(seedRig).sort((a, b) => a.run.length - b.run.length);
  const [smallest, largest] = [rigs[0]!, rigs.at(-1)!];
  const ten = tenFaults(largest);
  const [small_us, large_us, band_us, shares_us] = timed(
    { times: 500, work: () => solve(smallest, stock) },
    { times: 500, work: () => solve(largest, stock) },
    { times: 1, work: () => rigBands(largest, stock, { draws: 1000 }) },
    { times: 1, work: () => fairShares(ten, stock) },
  );
  const shares = fairShares(ten, stock);
  if (shares.outcome !== 'solved') throw new Error(`fair shares: ${shares.code}`);
  const lines = [
    `Best of ${ROUNDS} rounds, the engine bundled as the pages have it; Node ${process.version}, ${cpus().length} cores`,
    row(
      `solves a second, ${smallest.name} (${about(smallest)})`,
      shown(1e6 / small_us!),
      `${shown(small_us!, 1)} us`,
    ),
    row(
      `solves a second, ${largest.name} (${about(largest)})`,
      shown(1e6 / large_us!),
      `${shown(large_us!, 1)} us`,
    ),
    row(
      `likely band, 1,000 draws, ${largest.name}`,
      `${shown(band_us! / 1000, 1)} ms`,
      against(band_us! / 1000 < GOALS.band_ms, `under ${GOALS.band_ms} ms`),
    ),
    row(
      `fair shares, ${FAULTY} faults, ${2 ** FAULTY} solves`,
      `${shown(shares_us! / 1000, 1)} ms`,
      against(shares_us! / 1000 < GOALS.shares_ms, `under ${GOALS.shares_ms} ms`),
    ),
    ...(await networkSolverRatio(smallest)),
    ...(await networkSolverRatio(largest)),
  ];
  return `${lines.join('\n')}\n`;
}
