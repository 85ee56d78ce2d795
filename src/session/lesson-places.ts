/**
 * Whether what a lesson's structure names is there: its rigs, and on them the pieces, the fans, and faults
 * where they can be. Told of the step that names it, before anything is solved, since a run that does not solve is
 * told of its rig.
 */
import { readRig, isSeedRigId, seedRigIds } from '#catalogue';
import { isTaught, mended, stagesOf, type Lesson, type MendStep, type TaughtStep } from '#lesson';
import { FAULTS, type Fault, type Rig, type Stock } from '#physics';

export type Note = (path: string, found: string, allowed: string) => void;

/** Rigs that are neither the lesson's nor the catalogue's, and what is wrong with the lesson's own that it uses. */
export function checkRigs(lesson: Lesson, note: Note): void {
  const own = lesson.rigs ?? {};
  const named = [
    ['rig', lesson.rig] as const,
    ...lesson.steps.flatMap((step, i) =>
      'rig' in step && step.rig !== undefined ? [[`steps[${i}].rig`, step.rig] as const] : [],
    ),
  ];
  for (const [path, id] of named)
    if (!Object.hasOwn(own, id) && !isSeedRigId(id))
      note(path, `"${id}"`, [...Object.keys(own), ...seedRigIds].join(', '));
  for (const id of new Set(named.map(([, each]) => each))) {
    if (!Object.hasOwn(own, id)) continue;
    const read = readRig(own[id], id);
    for (const { path, found, allowed, remedy } of read.ok ? [] : read.problems)
      note(`rigs.${id}: ${path}`, found, remedy ? `${allowed} (${remedy})` : allowed);
  }
}

/** The faults, fans and pieces that steps name. Faults they take over are told of where they were put in. */
export function checkPlaces(
  lesson: Lesson,
  rigs: Readonly<Record<string, Rig>>,
  stock: Stock,
  note: Note,
): void {
  for (const [i, step] of lesson.steps.entries()) {
    const at = `steps[${i}]`;
    if (step.kind === 'mend') checkJob(lesson, step, at, rigs, stock, note);
    else if (isTaught(step)) checkStep(lesson, step, at, rigs, stock, note);
  }
}

function checkJob(
  lesson: Lesson,
  step: MendStep,
  at: string,
  rigs: Readonly<Record<string, Rig>>,
  stock: Stock,
  note: Note,
): void {
  const rig = rigs[mended(lesson, step).rig]!;
  for (const [i, fault] of (step.faults ?? []).entries())
    checkFault(fault, `${at}.faults[${i}].at`, rig, stock, note);
}

function checkStep(
  lesson: Lesson,
  step: TaughtStep,
  at: string,
  rigs: Readonly<Record<string, Rig>>,
  stock: Stock,
  note: Note,
): void {
  const rig = rigs[stagesOf(lesson, step).from.rig]!;
  const ids = rig.run.map(({ id }) => id);
  const piece = (path: string, id: string) => {
    if (!ids.includes(id)) note(path, `"${id}"`, ids.join(', '));
  };
  if (step.kind === 'fault') checkFault(step.fault, `${at}.fault.at`, rig, stock, note);
  else {
    for (const side of ['from', 'to'] as const) {
      const { faults = [], fan } = step[side] ?? {};
      for (const [i, fault] of faults.entries())
        checkFault(fault, `${at}.${side}.faults[${i}].at`, rig, stock, note);
      if (fan !== undefined && !Object.hasOwn(stock.fans, fan))
        note(`${at}.${side}.fan`, `"${fan}"`, Object.keys(stock.fans).join(', '));
    }
    if (step.subject !== undefined) piece(`${at}.subject`, step.subject);
  }
  for (const [i, link] of (step.chain ?? []).entries())
    if ('piece' in link) piece(`${at}.chain[${i}].piece`, link.piece);
  const { predict, observe, explain, again } = step;
  for (const [part, question] of Object.entries({ predict, observe, explain, again })) {
    if (!question || !('options' in question)) continue;
    if (question.check !== 'which-piece' && question.check !== 'biggest-loss') continue;
    for (const [i, option] of question.options.entries()) piece(`${at}.${part}.options[${i}]`, option);
  }
}

function checkFault({ kind, at }: Fault, path: string, { run }: Rig, stock: Stock, note: Note): void {
  const fitting = run.filter((piece) => FAULTS[kind].fits(piece, stock)).map(({ id }) => id);
  if (fitting.includes(at)) return;
  const astray = run.some(({ id }) => id === at) ? '' : ', which is no piece of this rig';
  note(path, `${kind} at "${at}"${astray}`, fitting.join(', ') || 'another rig');
}
