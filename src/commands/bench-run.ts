/**
 * What `npm run -s bench` measures. Times are processor time, which other work on the machine hardly changes;
 * threads that collect garbage and compile count in it. The best of several rounds is taken.
 */
import { cpus, loadavg } from 'node:os';
import { seedRig, seedRigIds, stock } from '#catalogue';
import { fairShares, FAULTS, MOST_FAULTS, rigBands, solve } from '#physics';
import type { Fault, FaultKind, Rig, Solution } from '#physics';
import { networkSolver, networkText } from './network-solver.ts';

const ROUNDS = 9;
const GOALS = { ratio: 100, band_ms: 150, shares_ms: 150 };
const FAULTY = 10;

/** Microseconds this process has kept a processor busy. */
function busy(): number {
  const { user, system } = process.cpuUsage();
  return user + system;
}

/** Microseconds of processor time one call takes, for each of several works done in turn. */
function timed(...works: { readonly times: number; readonly work: () => unknown }[]): number[] {
  const best = works.map(() => Infinity);
  for (let round = 0; round < ROUNDS; round++)
    works.forEach(({ times, work }, i) => {
      const start = busy();
      for (let n = 0; n < times; n++) work();
      best[i] = Math.min(best[i]!, (busy() - start) / times);
    });
  return best;
}

const shown = (value: number, digits = 0) =>
  value.toLocaleString('en', { minimumFractionDigits: digits, maximumFractionDigits: digits });
const row = (label: string, value: string, note = '') =>
  `${label.padEnd(66)}${value.padStart(12)}  ${note}`.trimEnd();
const against = (met: boolean, goal: string) => `goal ${goal}: ${met ? 'met' : 'NOT MET'}`;
const about = ({ run, faults = [] }: Rig) => `${run.length} pieces, ${faults.length} faults`;

/** Whether all the air that comes in goes out: the other solver is given no leaks. */
function tight(rig: Rig): boolean {
  const { room, fan, outdoors } = solved(rig).flow_L_s;
  return Math.abs(room - fan) < 1e-9 && Math.abs(outdoors - fan) < 1e-9;
}

function solved(rig: Rig): Solution {
  const solution = solve(rig, stock);
  if (solution.outcome === 'failed') throw new Error(`${rig.name}: ${solution.code} at ${solution.path}`);
  return solution;
}

/** The rig with its first ten faults, or with more added wherever they fit, each kind once a place. */
export function tenFaults(rig: Rig): Rig {
  const faults: Fault[] = (rig.faults ?? []).slice(0, FAULTY);
  const kinds = Object.keys(FAULTS) as FaultKind[];
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

function costly(rig: Rig): string[] {
  const ten = tenFaults(rig);
  const shares = fairShares(ten, stock);
  if (shares.outcome !== 'solved') throw new Error(`fair shares: ${shares.code}`);
  const [band_us, shares_us] = timed(
    { times: 1, work: () => rigBands(rig, stock, { draws: 1000 }) },
    { times: 1, work: () => fairShares(ten, stock) },
  );
  const under = (label: string, us: number, goal_ms: number) =>
    row(label, `${shown(us / 1000, 1)} ms`, against(us / 1000 < goal_ms, `under ${goal_ms} ms`));
  return [
    under(`likely band, 1,000 draws, ${rig.name}`, band_us!, GOALS.band_ms),
    under(`fair shares, ${FAULTY} faults, ${rig.name}`, shares_us!, GOALS.shares_ms),
  ];
}

export async function bench(): Promise<string> {
  const rigs = seedRigIds.map(seedRig).sort((a, b) => a.run.length - b.run.length);
  const tightRigs = rigs.filter(tight);
  const [smallest, largest] = [rigs[0]!, rigs.at(-1)!];
  const [smallestTight, largestTight] = [tightRigs[0]!, tightRigs.at(-1)!];
  const shownRigs = [...new Set([smallest, largestTight, largest])];
  const each_us = timed(...shownRigs.map((rig) => ({ times: 300, work: () => solve(rig, stock) })));
  const lines = [
    `Processor time, best of ${ROUNDS} rounds, the engine bundled as the pages have it`,
    `Node ${process.version}, ${cpus().length} cores, load ${shown(loadavg()[0]!, 1)}`,
    ...shownRigs.map((rig, i) =>
      row(
        `solves a second, ${rig.name} (${about(rig)})`,
        shown(1e6 / each_us[i]!),
        `${shown(each_us[i]!, 1)} us`,
      ),
    ),
    ...[...new Set([largestTight, largest])].flatMap(costly),
    ...(await networkSolverRatio(smallestTight)),
    ...(await networkSolverRatio(largestTight)),
  ];
  return `${lines.join('\n')}\n`;
}
