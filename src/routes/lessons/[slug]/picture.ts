/** What the pictures of a lesson are fed: curves, account, walk, labels, all read off the play. */
import { say, type MessageKey } from '#i18n';
import type { Curve, LedgerEntry } from '#charts';
import type { Fault, Rig, Solution } from '#physics';
import { belliesIn, frameFor, layout, type Belly, type Drawing } from '#scene';
import type { Trouble } from '#scene-trouble';
import { show, type UnitChoice } from '#units';
import {
  changes,
  currentStep,
  everyStage,
  faultSteps,
  isJob,
  isTaught,
  jobsOf,
  mended,
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
  const there = [...fresh, ...play.target.faults].find(({ at }) => at === subjectOf(step));
  // Of two cases the first is looked at before anything is said of the second: what is wrong with it is named too.
  return there ?? (step.role === 'compare' && !inPicture(play) ? play.target.faults[0] : undefined);
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
      label: say('play.curve.worst', { count: jobsOf(lesson, step).length }),
      points: runs.curveAt(mended(lesson, step)),
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

/**
 * Title of the ledger where nothing was taken or won back: two cases side by side, or another fan or speed.
 * Undefined where the account speaks for itself.
 */
export function ledgerTitle(play: LessonPlay, choice: UnitChoice): string | undefined {
  const step = currentStep(play.snapshot);
  const aside = step.kind === 'case' && (step.role === 'compare' || movedBy(play) !== 'run');
  if (!aside || play.moving || !inPicture(play)) return undefined;
  const flow = (solution: Solution) => show('flow', solution.flow_L_s.outdoors, choice).text;
  return say('play.ledger.compared', { before: flow(play.before), flow: flow(play.solution) });
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
  const here = currentStep(play.snapshot);
  const isCase = here.kind === 'case';
  const job = isJob(here);
  const pieceOf = (id: string) => {
    const step = play.lesson.steps.filter(isTaught).find((each) => each.id === id);
    if (step) return subjectOf(step);
    return here.kind === 'mend'
      ? jobsOf(play.lesson, here).find((each) => each.id === id)?.fault.at
      : undefined;
  };
  const entries = play.balances.map(({ line, stage, flow_L_s, before_L_s }: Balance, i): LedgerEntry => {
    const still = !play.moving || i < play.balances.length - 1;
    const balance = { flow_L_s, before_L_s, likely: still ? bands[stage] : undefined };
    if (line.kind === 'opening') {
      const standing = isCase && play.before !== play.healthy;
      const label = say(job ? 'play.ledger.found' : standing ? 'play.ledger.before' : 'play.ledger.opening');
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
  if (isCase || job) return entries;
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
