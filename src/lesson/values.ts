/** The value of every placeholder, out of the engine's solutions and in the reader's units. */
import type { PieceResult, Solution } from '#physics';
import { rounded, show, type Quantity, type UnitChoice } from '#units';
import type { BuiltValues, Placeholder, PlaceholderValues } from './fill.ts';
import type { TaughtStep } from './schema.ts';

export interface StepFacts {
  readonly step: TaughtStep;
  readonly healthy: Solution;
  /** The run just before the step's change. */
  readonly before: Solution;
  /** The run with it. */
  readonly after: Solution;
  readonly required_L_s?: number;
  readonly predicted_L_s?: number;
  /** What was worked out while the pages were built. */
  readonly built?: BuiltValues;
}

/** The piece a step's words are about. */
export function subjectOf(step: TaughtStep): string | undefined {
  if (step.kind === 'fault') return step.fault.at;
  return step.subject ?? step.to?.faults?.at(-1)?.at ?? step.from?.faults?.at(-1)?.at;
}

export interface RunFacts {
  readonly healthy: Solution;
  readonly now: Solution;
  readonly required_L_s?: number;
}

const out = (solution: Solution) => solution.flow_L_s.outdoors;
const pieceAt = (solution: Solution, id: string) => solution.pieces.find((piece) => piece.id === id);

/** For the intro and the mending half, where no single fault is spoken of. */
export function runValues({ healthy, now, required_L_s }: RunFacts, units: UnitChoice): PlaceholderValues {
  const flow = (value: number) => show('flow', value, units).text;
  return {
    healthy: flow(out(healthy)),
    flow: flow(out(now)),
    ...(required_L_s === undefined ? {} : { required: flow(required_L_s) }),
  };
}

/** For every part of a step. A placeholder with no meaning for its change has no value. */
export function stepValues(facts: StepFacts, units: UnitChoice): PlaceholderValues {
  const { step, healthy, before, after, required_L_s, predicted_L_s } = facts;
  const flow = (value: number) => show('flow', value, units).text;
  const pressure = (value: number) => show('pressure', value, units).text;
  // A difference of the numbers as shown, so that it adds up on screen.
  const drop = rounded('flow', out(before), units) - rounded('flow', out(after), units);
  const subject = subjectOf(step);
  const place = subject === undefined ? undefined : pieceAt(after, subject);
  // What a mend takes away is told as it was.
  const was = subject === undefined ? undefined : pieceAt(before, subject);
  const built = Object.entries(facts.built ?? {}) as [Placeholder, [Quantity, number]][];
  return {
    ...runValues({ healthy, now: after, required_L_s }, units),
    before: flow(out(before)),
    drop: show('flow', drop, units, { already: true }).text,
    pressure: pressure(after.fan.pressure_Pa),
    pressure_before: pressure(before.fan.pressure_Pa),
    loss: pressure(place?.loss_Pa ?? 0),
    loss_before: pressure((subject && pieceAt(before, subject)?.loss_Pa) || 0),
    ...(predicted_L_s === undefined ? {} : { predicted: flow(predicted_L_s) }),
    ...(was ? shapeValues(was, units) : {}),
    ...(place ? shapeValues(place, units) : {}),
    ...Object.fromEntries(
      built.map(([name, [quantity, value]]) => [name, show(quantity, value, units).text]),
    ),
  };
}

function shapeValues({ shape }: PieceResult, units: UnitChoice): PlaceholderValues {
  const share = (value: number) => show('share', value, units).text;
  const { sag_m, ties, tieRatio, dents, fullLength_m, usedLength_m, compression } = shape;
  const bore = tieRatio ?? shape.boreRatio;
  const open = openShare(shape);
  return {
    ...(sag_m ? { sag: show('depth', sag_m, units).text } : {}),
    ...(open === undefined ? {} : { open: share(open) }),
    ...(ties === undefined ? {} : { ties: String(ties) }),
    ...(dents === undefined ? {} : { dents: String(dents) }),
    ...(bore === undefined ? {} : { bore: share(bore) }),
    ...(fullLength_m === undefined || usedLength_m === undefined
      ? {}
      : { spare: show('length', fullLength_m - usedLength_m, units).text }),
    ...(fullLength_m === undefined ? {} : { length: show('length', fullLength_m, units).text }),
    ...(compression === undefined ? {} : { compression: share(compression) }),
  };
}

/** How much of its opening is left to a fan's mouth that is crimped, or to a cowl screened or blocked. */
function openShare(shape: PieceResult['shape']): number | undefined {
  const { crimpOpenArea, crushedOpenArea, dentOpenArea, screenFreeArea, blockedShare, tieRatio } = shape;
  // Under a tie the section stays round, so its area goes with the square of its width.
  const tied = tieRatio === undefined ? undefined : tieRatio ** 2;
  const unblocked = blockedShare === undefined ? undefined : 1 - blockedShare;
  const shares = [crimpOpenArea, crushedOpenArea, dentOpenArea, screenFreeArea, unblocked, tied].filter(
    (area) => area !== undefined,
  );
  return shares.length === 0 ? undefined : Math.min(...shares);
}
