/** What the pictures of a lesson are fed: curves, account, walk, labels, all read off the play. */
import { say, type MessageKey } from '#i18n';
import type { Curve, LedgerEntry, WalkLeak, WalkMark, WalkStation } from '#charts';
import type { Fault, Rig, Solution } from '#physics';
import { belliesIn, frameFor, layout, type Belly, type Drawing } from '#scene';
import type { Trouble } from '#scene-trouble';
import { show, type UnitChoice } from '#units';
import {
  changes,
  currentStep,
  everyStage,
  faultSteps,
  isTaught,
  pile,
  stageBefore,
  stagesOf,
  subjectOf,
  type BuiltValues,
  type Lesson,
  type LessonText,
  type Stage,
  type Step,
} from '#lesson';
import type { Balance, LessonPlay, LessonRuns, Likely } from '#session';

export const faultWord = (fault: Fault) => say(`fault.${fault.kind}` as MessageKey);

const capital = (words: string) => words.charAt(0).toUpperCase() + words.slice(1);

/** Faults the scene draws without its second door. */
const PLAIN: readonly Fault['kind'][] = ['sag', 'crimp', 'flexible-swap', 'tight-ties', 'extra-length'];

/** Whether any step of the lesson shows a fault, or a meter, that only the scene's second door draws. */
export function needsTrouble(lesson: Lesson): boolean {
  const metered = lesson.steps.some((step) => step.kind === 'case' && step.meter !== undefined);
  return metered || everyStage(lesson).some(({ faults }) => faults.some(({ kind }) => !PLAIN.includes(kind)));
}

/** Whether the present step's change is in the picture. */
export function inPicture(play: LessonPlay): boolean {
  const step = currentStep(play.snapshot);
  return isTaught(step) && changes(step) && play.snapshot.context.records[step.id]?.revealed === true;
}

/** The faults of one stage that another has not. */
function come(from: Stage, to: Stage): Fault[] {
  const known = new Set(from.faults.map((fault) => JSON.stringify(fault)));
  return to.faults.filter((fault) => !known.has(JSON.stringify(fault)));
}

/** The fault a step has just put in, or the one at its piece that it stands on: what the drawing names. */
export function namedFault(play: LessonPlay): Fault | undefined {
  const step = currentStep(play.snapshot);
  if (step.kind === 'fault') return inPicture(play) ? step.fault : undefined;
  if (step.kind !== 'case') return undefined;
  const fresh = come(stagesOf(play.lesson, step).from, play.target);
  return [...fresh, ...play.target.faults].find(({ at }) => at === subjectOf(step));
}

/** Which curve the change in the picture moved: the run's, up or down, or the fan's; for a title. */
export function curveMoved(play: LessonPlay): 'climbed' | 'fell' | 'fan' | 'both' {
  const by = movedBy(play);
  if (by !== 'run') return by;
  const last = (points: readonly { readonly pressure_Pa: number }[]) => points.at(-1)?.pressure_Pa ?? 0;
  const was = last(play.runs.curveAt(stageBefore(play.lesson, play.snapshot)));
  const higher = last(play.runs.curveAt(play.target)) - was;
  // Where the run costs what it cost, a fault of the fan's own did it.
  return Math.abs(higher) < 1e-6 ? 'fan' : higher > 0 ? 'climbed' : 'fell';
}

/** Which curves the change of a case moves: another fan or speed moves the fan's, other faults the run's. */
function movedBy(play: LessonPlay): 'run' | 'fan' | 'both' {
  const step = currentStep(play.snapshot);
  if (step.kind !== 'case') return 'run';
  const { from, to } = stagesOf(play.lesson, step);
  if (from.fan === to.fan && from.speed === to.speed) return 'run';
  return JSON.stringify(from.faults) === JSON.stringify(to.faults) ? 'fan' : 'both';
}

/** Title of the crossing, of what passes the fan, as the marker stands: with leaks that is not what leaves the wall. */
export function crossingTitle(play: LessonPlay, moved: boolean, choice: UnitChoice): string {
  const flow = (solution: Solution) => show('flow', solution.flow_L_s.fan, choice).text;
  const [now, before] = [flow(play.solution), flow(play.before)];
  // Two cases may have the fan move the same; then no curve is said to have gone anywhere.
  const way = moved && !play.moving && now !== before ? curveMoved(play) : 'meet';
  return say(`play.crossing.${way}`, { flow: now, before });
}

/** Ghosts of every stage, and the run as it now is. */
export function curvesOf(play: LessonPlay): Curve[] {
  const { runs, lesson } = play;
  const step = currentStep(play.snapshot);
  const healthy: Curve = {
    id: 'healthy',
    label: say('play.curve.healthy'),
    points: runs.curveAt({ ...play.target, faults: [] }),
    tone: 'healthy',
  };
  const present = (label: string): Curve => ({ id: 'present', label, points: play.curve, tone: 'present' });
  if (step.kind === 'mend') {
    const worst: Curve = {
      id: 'worst',
      label: say('play.curve.worst', { count: faultSteps(lesson).length }),
      points: runs.curveAt(pile(lesson)),
      tone: 'before',
    };
    return [healthy, worst, present(say('play.curve.now'))];
  }
  if (step.kind === 'case') {
    const { from } = stagesOf(lesson, step);
    const before: Curve = {
      id: 'before',
      label: say('play.curve.before'),
      points: runs.curveAt(from),
      tone: 'before',
    };
    const sound = from.faults.length === 0;
    if (!inPicture(play))
      return sound ? [present(say('play.curve.healthy'))] : [healthy, present(say('play.curve.now'))];
    return [...(sound ? [] : [healthy]), before, present(say('play.curve.now'))];
  }
  const steps = faultSteps(lesson);
  const stage = play.target.faults.length;
  if (stage === 0) return [present(say('play.curve.healthy'))];
  const ghosts = steps.slice(0, stage - 1).map((each, i): Curve => ({
    id: each.id,
    label: say('play.curve.with', { fault: faultWord(each.fault) }),
    points: runs.curveAt(pile(lesson, i + 1)),
    tone: i === stage - 2 ? 'before' : 'ghost',
  }));
  const last = steps[stage - 1]!;
  return [healthy, ...ghosts, present(say('play.curve.with', { fault: faultWord(last.fault) }))];
}

/** A case that puts one fault in is named by it; any other change by what the step is called. */
export function changeName(lesson: Lesson, text: LessonText, id: string): string {
  const title = text.sections[id]?.title ?? id;
  const step = lesson.steps.find((each) => each.id === id);
  if (step?.kind !== 'case' || step.role === 'compare') return title;
  const { from, to } = stagesOf(lesson, step);
  const fresh = come(from, to);
  const same = from.fan === to.fan && from.speed === to.speed;
  return fresh.length === 1 && same ? capital(faultWord(fresh[0]!)) : title;
}

/** The account with the likely band of every balance that has come to rest. */
export function entriesOf(
  play: LessonPlay,
  text: LessonText,
  bands: Readonly<Record<string, Likely>>,
): LedgerEntry[] {
  const title = (id: string) => text.sections[id]?.title ?? id;
  const isCase = currentStep(play.snapshot).kind === 'case';
  const pieceOf = (id: string) => {
    const step = play.lesson.steps.filter(isTaught).find((each) => each.id === id);
    return step && subjectOf(step);
  };
  const entries = play.balances.map(({ line, stage, flow_L_s, before_L_s }: Balance, i): LedgerEntry => {
    const still = !play.moving || i < play.balances.length - 1;
    const balance = { flow_L_s, before_L_s, likely: still ? bands[stage] : undefined };
    if (line.kind === 'opening') {
      const standing = isCase && play.before !== play.healthy;
      const label = say(standing ? 'play.ledger.before' : 'play.ledger.opening');
      return { id: 'opening', label, kind: 'opening', ...balance };
    }
    const kind = line.kind !== 'change' ? line.kind : flow_L_s > before_L_s ? 'credit' : 'debit';
    return {
      id: `${line.kind}-${line.stepId}`,
      label: changeName(play.lesson, text, line.stepId),
      kind,
      at: pieceOf(line.stepId),
      ...balance,
    };
  });
  if (isCase) return entries;
  const last = entries[entries.length - 1]!.flow_L_s;
  const there = new Set(play.balances.map(({ line }) => (line.kind === 'opening' ? '' : line.stepId)));
  const ahead = faultSteps(play.lesson)
    .filter((step) => !there.has(step.id))
    .map((step): LedgerEntry => ({
      id: `pending-${step.id}`,
      label: title(step.id),
      kind: 'pending',
      flow_L_s: last,
      before_L_s: last,
    }));
  return [...entries, ...ahead];
}

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
  for (const stage of [{ ...play.target, faults: [] }, ...piles, ...cases]) {
    for (const station of play.runs.at(stage).stations) {
      low = Math.min(low, station.totalPressure_Pa, station.staticPressure_Pa);
      high = Math.max(high, station.totalPressure_Pa);
    }
  }
  const room = (high - low) * 0.1;
  return [low - room, high + room];
}

/** Worked out once a lesson and rig. */
const hanging = new WeakMap<LessonRuns, Map<string, Belly[]>>();

/** All that ever hangs on the rig now shown. Nothing but a sag lowers a duct, so no other fault need be solved. */
export function belliesOf({
  lesson,
  runs,
  target: { rig },
}: Pick<LessonPlay, 'lesson' | 'runs' | 'target'>): Belly[] {
  const byRig = hanging.get(runs) ?? new Map<string, Belly[]>();
  hanging.set(runs, byRig);
  const known = byRig.get(rig);
  if (known) return known;
  const stages = everyStage(lesson).filter((stage) => stage.rig === rig);
  const sags = stages.map(({ faults }) => faults.filter(({ kind }) => kind === 'sag'));
  const found = belliesIn(sags.map((faults) => runs.at({ rig, faults })));
  const once = [...new Map(found.map((belly) => [JSON.stringify(belly), belly])).values()];
  byRig.set(rig, once);
  return once;
}

/** The run as drawn across a width, for a chart that shares its axis and stands apart from the drawing. */
export const drawingOf = (play: LessonPlay, width: number, drawer?: Trouble['drawer']): Drawing =>
  layout(play.rig, play.solution, play.healthy, frameFor(width || 360), {}, drawer, belliesOf(play));

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

/** The measured words beside a fault in the drawing. */
export function faultSize(fault: Fault, solution: Solution, choice: UnitChoice): string {
  const shape = solution.pieces.find(({ id }) => id === fault.at)?.shape ?? {};
  const share = (value: number | undefined) => show('share', value ?? 0, choice).text;
  return say(`play.size.${fault.kind}` as MessageKey, {
    depth: show('depth', shape.sag_m ?? 0, choice).text,
    span: show('length', shape.span_m ?? 0, choice).text,
    open: share(shape.crimpOpenArea ?? 1),
    swapped: share(shape.swappedShare),
    ties: shape.ties ?? 0,
    bore: share(shape.tieRatio ?? 1),
    spare: show('length', (shape.fullLength_m ?? 0) - (shape.usedLength_m ?? 0), choice).text,
  });
}

/** Words for the pieces of a run, by id. */
export function pieceNames(rig: Rig): Record<string, string> {
  const fan = rig.run.findIndex((piece) => piece.kind === 'fan');
  return Object.fromEntries(
    rig.run.map((piece, i) => [
      piece.id,
      piece.kind === 'duct'
        ? say(i < fan ? 'piece.duct.in' : 'piece.duct.out')
        : say(`piece.${piece.kind}` as MessageKey),
    ]),
  );
}

/** The meter in the picture: a reading stands beside the run it was taken of, and beside no other. */
export function meterOf(step: Step, shown: boolean, built: BuiltValues | undefined, choice: UnitChoice) {
  if (step.kind !== 'case' || !step.meter) return undefined;
  const { kind, at, of } = step.meter;
  if (of !== 'both' && (of === 'to') !== shown) return undefined;
  const reading = built?.[of === 'both' && !shown ? 'reading_before' : 'reading'];
  return reading && { kind, place: at, text: show(...reading, choice).text };
}
