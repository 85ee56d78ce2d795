/** What the pressure walk of a lesson is fed: its line, its marks and leaks, its scale, its height. */
import { say } from '#i18n';
import type { WalkLeak, WalkMark, WalkStation } from '#charts';
import { faultSteps, isTaught, mended, pile, stagesOf } from '#lesson';
import type { Fault, Solution } from '#physics';
import type { Frame } from '#scene';
import type { LessonPlay } from '#session';
import { show, type UnitChoice } from '#units';
import { faultWord } from './picture.ts';

export function walkOf(solution: Solution, stationX: readonly number[]): WalkStation[] {
  return solution.stations.map((station, i) => ({
    x: stationX[i] ?? 0,
    total_Pa: station.totalPressure_Pa,
    static_Pa: station.staticPressure_Pa,
    after: station.after,
  }));
}

/** Lowest and highest pressure of any stage of the lesson on this rig, with room for labels. */
export function walkExtent(play: LessonPlay): [number, number] {
  let low = 0;
  let high = 0;
  const steps = faultSteps(play.lesson);
  const piles = play.target.rig === play.lesson.rig ? steps.map((_, i) => pile(play.lesson, i + 1)) : [];
  const cases = play.lesson.steps
    .filter(isTaught)
    .map((step) => stagesOf(play.lesson, step))
    .flatMap(({ from, to }) => [from, to])
    .filter(({ rig }) => rig === play.target.rig);
  const jobs = play.lesson.steps.flatMap((step) => (step.kind === 'mend' ? [mended(play.lesson, step)] : []));
  for (const stage of [
    { ...play.target, faults: [] },
    ...piles,
    ...cases,
    ...jobs.filter(({ rig }) => rig === play.target.rig),
  ]) {
    for (const station of play.runs.at(stage).stations) {
      low = Math.min(low, station.totalPressure_Pa, station.staticPressure_Pa);
      high = Math.max(high, station.totalPressure_Pa);
    }
  }
  const room = (high - low) * 0.1;
  return [low - room, high + room];
}

/** Height of the pressure walk, px: a strip under a wide drawing, a chart of its own elsewhere. */
export function walkHeight(
  { kind, width }: Pick<Frame, 'kind' | 'width'>,
  windowHeight: number,
  { paper, front, mending }: { readonly paper: boolean; readonly front: boolean; readonly mending: boolean },
): number {
  if (paper) return 84;
  if (front) return Math.round(windowHeight * 0.5);
  if (kind !== 'wide') return Math.round(width * 0.45);
  // The account of repairs is long and needs more of the page.
  const most = mending ? windowHeight * 0.07 : Math.max(84, windowHeight * 0.1);
  return Math.round(Math.min(width * 0.075, most));
}

const CAUSES: Record<Fault['kind'], readonly string[]> = {
  sag: ['sag'],
  crimp: ['crimp', 'fan system effect'],
  'flexible-swap': ['swap'],
  'tight-ties': ['ties'],
  'extra-length': ['compression', 'loops'],
  'bend-at-fan': ['fan bend'],
  'fan-reversed': ['doubling back'],
  // A leak and a weak fan spend no pressure of their own.
  'joint-weep': [],
  'joint-open': [],
  'joint-off': [],
  'weak-fan': [],
  crushed: ['crushed'],
  dented: ['dents'],
  'blocked-grille': ['blocked'],
  'blocked-cowl': ['blocked'],
  'screened-cowl': ['screen'],
  'stuck-damper': ['stuck flap'],
  undersized: ['undersized'],
  'no-make-up-air': ['make-up'],
};

/** What a fault spends where it sits, Pa. */
export function spentBy(fault: Fault, solution: Solution): number {
  // The way in for air is a piece of its own, though the fault is named at the grille.
  const at = fault.kind === 'no-make-up-air' ? 'room' : fault.at;
  const piece = solution.pieces.find(({ id }) => id === at);
  return (piece?.causes ?? [])
    .filter(({ cause }) => CAUSES[fault.kind].includes(cause))
    .reduce((sum, { loss_Pa }) => sum + loss_Pa, 0);
}

/** Whether what is spent is nothing as it is shown: a leak and a weak fan spend none of their own. */
const isNothing = (spent_Pa: number, choice: UnitChoice) =>
  show('pressure', spent_Pa, choice).number === show('pressure', 0, choice).number;

/** The present fault's words on the walk: with what it spends, or by its name where that is nothing. */
export function spentWords(fault: Fault, solution: Solution, choice: UnitChoice): string {
  const spent = spentBy(fault, solution);
  const word = faultWord(fault);
  if (isNothing(spent, choice)) return word;
  return say('play.spends', { fault: word, loss: show('pressure', spent, choice).text });
}

/** A stretch of the shared axis for each piece. */
type PieceX = Readonly<Record<string, { readonly start: number; readonly end: number }>>;

/** Marks for what the faults spend, spread along the piece they sit on. */
export function marksOf(
  faults: readonly Fault[],
  solution: Solution,
  pieceX: PieceX,
  choice: UnitChoice,
): WalkMark[] {
  return faults.flatMap((fault) => {
    const place = pieceX[fault.at];
    const spent = spentBy(fault, solution);
    if (!place || isNothing(spent, choice)) return [];
    const there = faults.filter(({ at }) => at === fault.at);
    // A crimp spends all it costs at the fan's mouth.
    const share = fault.kind === 'crimp' ? 0 : (there.indexOf(fault) + 1) / (there.length + 1);
    const word = faultWord(fault);
    const loss = show('pressure', spent, choice).text;
    return {
      id: `${fault.at}-${fault.kind}`,
      x: place.start + share * (place.end - place.start),
      texts: [say('play.spent', { fault: word, loss }), word],
    };
  });
}

/** Leaks by piece: a joint's at the end nearer the fan, a wall's gathered at its middle. */
export function leaksOf(solution: Solution, pieceX: PieceX): WalkLeak[] {
  const gathered = new Map<string, WalkLeak>();
  for (const { id, at, side, flow_L_s } of solution.leaks) {
    const place = pieceX[at];
    if (!place) continue;
    const joint = id.endsWith('/joint');
    const key = `${at}-${joint ? 'joint' : 'wall'}`;
    const end = side === 'suction' ? place.end : place.start;
    const x = joint ? end : (place.start + place.end) / 2;
    gathered.set(key, { id: key, at, x, flow_L_s: (gathered.get(key)?.flow_L_s ?? 0) + flow_L_s });
  }
  return [...gathered.values()];
}
