/** What the pictures of a lesson are fed: curves, account, walk, labels, all read off the play. */
import { say, type MessageKey } from '#i18n';
import type { Curve, LedgerEntry, WalkLeak, WalkMark, WalkStation } from '#charts';
import type { Fault, Rig, Solution } from '#physics';
import { show, type UnitChoice } from '#units';
import { faultsAfter, faultSteps, type FaultStep, type LessonText } from '#lesson';
import { stageKey, type Balance, type LessonPlay, type Likely } from '#session';

export const faultWord = (fault: Fault) => say(`fault.${fault.kind}` as MessageKey);

/** The fault steps whose faults are in before the present one, in order. */
function earlier(play: LessonPlay): FaultStep[] {
  const { stepIndex } = play.snapshot.context;
  return faultSteps(play.lesson).slice(0, stepIndex);
}

/** Whether the present step's fault is in the picture. */
export function inPicture(play: LessonPlay): boolean {
  return ['reveal', 'observe', 'explain', 'settled'].includes(play.phase);
}

/** Ghosts of every stage, and the run as it now is. */
export function curvesOf(play: LessonPlay): Curve[] {
  const { run } = play;
  const steps = earlier(play);
  const mending = play.phase === 'mending' || play.phase === 'finished';
  const healthy: Curve = {
    id: 'healthy',
    label: say('play.curve.healthy'),
    points: run.curveAt([]),
    tone: 'healthy',
  };
  const present = (label: string): Curve => ({ id: 'present', label, points: play.curve, tone: 'present' });
  if (mending) {
    const all = faultSteps(play.lesson).map((step) => step.fault);
    const worst: Curve = {
      id: 'worst',
      label: say('play.curve.worst'),
      points: run.curveAt(all),
      tone: 'before',
    };
    return [healthy, worst, present(say('play.curve.now'))];
  }
  const stage = inPicture(play) ? steps.length + 1 : steps.length;
  if (stage === 0) return [present(say('play.curve.healthy'))];
  const ghosts = steps.slice(0, stage - 1).map((step, i): Curve => ({
    id: step.id,
    label: say('play.curve.with', { fault: faultWord(step.fault) }),
    points: run.curveAt(steps.slice(0, i + 1).map((each) => each.fault)),
    tone: i === stage - 2 ? 'before' : 'ghost',
  }));
  const last = faultSteps(play.lesson)[stage - 1]!;
  return [healthy, ...ghosts, present(say('play.curve.with', { fault: faultWord(last.fault) }))];
}

/** The account with the likely band of every balance that has come to rest. */
export function entriesOf(
  play: LessonPlay,
  text: LessonText,
  bands: Readonly<Record<string, Likely>>,
): LedgerEntry[] {
  const title = (id: string) => text.sections[id]?.title ?? id;
  const pieceOf = (id: string) => faultSteps(play.lesson).find((step) => step.id === id)?.fault.at;
  const lines = play.balances.map(({ line }) => line);
  const entries = play.balances.map(({ line, flow_L_s, before_L_s }: Balance, i): LedgerEntry => {
    const there = faultsAfter(play.lesson, lines, i + 1);
    const stage = faultSteps(play.lesson).filter((step) => there.includes(step.fault));
    const still = !play.moving || i < lines.length - 1;
    const likely = still ? bands[stageKey(stage.map((step) => step.id))] : undefined;
    const balance = { flow_L_s, before_L_s, likely };
    if (line.kind === 'opening')
      return { id: 'opening', label: say('play.ledger.opening'), kind: 'opening', ...balance };
    return {
      id: `${line.kind}-${line.stepId}`,
      label: title(line.stepId),
      kind: line.kind,
      at: pieceOf(line.stepId),
      ...balance,
    };
  });
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

/** Lowest and highest pressure of any stage of the lesson, with room for labels. */
export function walkExtent(play: LessonPlay): [number, number] {
  const steps = faultSteps(play.lesson);
  let low = 0;
  let high = 0;
  for (let i = 0; i <= steps.length; i++) {
    for (const station of play.run.at(steps.slice(0, i).map((step) => step.fault)).stations) {
      low = Math.min(low, station.totalPressure_Pa, station.staticPressure_Pa);
      high = Math.max(high, station.totalPressure_Pa);
    }
  }
  const room = (high - low) * 0.1;
  return [low - room, high + room];
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
  const piece = solution.pieces.find(({ id }) => id === fault.at);
  return (piece?.causes ?? [])
    .filter(({ cause }) => CAUSES[fault.kind].includes(cause))
    .reduce((sum, { loss_Pa }) => sum + loss_Pa, 0);
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
    if (!place || show('pressure', spent, choice).number === show('pressure', 0, choice).number) return [];
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
