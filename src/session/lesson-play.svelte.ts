/**
 * A lesson being played: its machine, and the one moving thing on screen, the share of each fault that is
 * drawn in. Rig, solution, curves and account all follow from those shares, so picture, chart and number
 * can only move together.
 */
import { cubicInOut } from 'svelte/easing';
import { prefersReducedMotion, Tween } from 'svelte/motion';
import { createActor, type Actor } from 'xstate';
import type { CurvePoint, Fault, Rig, Solution, Stock } from '#physics';
import {
  faultsAfter,
  faultsBefore,
  faultsNow,
  faultSteps,
  ledgerLines,
  lessonMachine,
  phase,
  possible,
  type LedgerLine,
  type Lesson,
  type LessonEvent,
  type LessonSnapshot,
} from '#lesson';
import { ActorReader } from './actor.svelte.ts';
import { RunSolver } from './lesson-run.ts';

const REVEAL_MS = 1600;
const MOVE_MS = 600;
type Shares = Record<string, number>;

export interface Balance {
  readonly line: LedgerLine;
  readonly flow_L_s: number;
  readonly before_L_s: number;
}

export class LessonPlay {
  readonly lesson: Lesson;
  readonly run: RunSolver;
  readonly healthy: Solution;
  readonly #reader: ActorReader<Actor<typeof lessonMachine>>;
  readonly #shares: Tween<Shares>;
  /** The faults as drawn, part of the way in while they move. */
  readonly faults: readonly Fault[];
  readonly rig: Rig;
  readonly solution: Solution;
  /** The present system curve. */
  readonly curve: readonly CurvePoint[];
  /** The run one change ago. */
  readonly before: Solution;
  /** The account, each line's balance solved; the last line follows the picture while it moves. */
  readonly balances: readonly Balance[];

  /** Counts transitions, so that only the newest one may end a reveal. */
  #latest = 0;
  #moving = $state.raw(false);
  readonly #onsettled: (play: LessonPlay) => void;

  /** `onsettled` runs after every event and every end of a move, with the play as it then stands. */
  constructor(
    lesson: Lesson,
    rig: Rig,
    stock: Stock,
    snapshot?: LessonSnapshot,
    onsettled: (play: LessonPlay) => void = () => {},
  ) {
    this.lesson = lesson;
    this.run = new RunSolver(rig, stock);
    this.healthy = this.run.at([]);
    this.#onsettled = onsettled;
    const actor = createActor(lessonMachine, { input: { lesson }, ...(snapshot ? { snapshot } : {}) });
    this.#reader = new ActorReader(actor);
    actor.start();
    this.#shares = new Tween(this.#wanted(), { easing: cubicInOut });
    this.faults = $derived(this.#drawnFaults());
    this.rig = $derived(this.run.rigWith(this.faults));
    this.solution = $derived(this.run.passing(this.faults));
    this.curve = $derived(this.run.curve(this.faults));
    this.before = $derived(this.run.at(faultsBefore(this.lesson, this.snapshot)));
    this.balances = $derived(this.#account());
  }

  get snapshot(): LessonSnapshot {
    return this.#reader.snapshot as LessonSnapshot;
  }

  get phase() {
    return phase(this.snapshot);
  }

  get moving(): boolean {
    return this.#moving;
  }

  /** Ids of the steps whose faults belong in the picture now. */
  get stage(): readonly string[] {
    const there = faultsNow(this.lesson, this.snapshot);
    return faultSteps(this.lesson)
      .filter((step) => there.includes(step.fault))
      .map((step) => step.id);
  }

  stop(): void {
    this.#reader.actor.stop();
  }

  can(event: LessonEvent) {
    return possible(this.snapshot, event);
  }

  /** Sends an event and sets the picture moving to where it now belongs. */
  send(event: LessonEvent): void {
    const { actor } = this.#reader;
    const was = phase(actor.getSnapshot());
    actor.send(event);
    const now = phase(actor.getSnapshot());
    if (event.type === 'phase.replay' && now === 'reveal' && was !== 'reveal') {
      void this.#shares.set({ ...this.#wanted(), [this.#stepId()]: 0 }, { duration: 0 });
    }
    void this.#move(now === 'reveal' ? REVEAL_MS : MOVE_MS);
    this.#onsettled(this);
  }

  async #move(duration: number): Promise<void> {
    const mine = ++this.#latest;
    const target = this.#wanted();
    const still = Object.keys(target).every((id) => this.#shares.current[id] === target[id]);
    this.#moving = !still;
    if (!still) await this.#shares.set(target, { duration: prefersReducedMotion.current ? 0 : duration });
    if (mine !== this.#latest) return;
    this.#moving = false;
    if (phase(this.#reader.actor.getSnapshot()) === 'reveal') this.#reader.actor.send({ type: 'reveal.end' });
    this.#onsettled(this);
  }

  #stepId(): string {
    const { stepIndex } = this.#reader.actor.getSnapshot().context;
    return this.lesson.steps[stepIndex]!.id;
  }

  /** 1 for each fault that belongs in the picture now, else 0. */
  #wanted(): Shares {
    const there = faultsNow(this.lesson, this.#reader.actor.getSnapshot());
    return Object.fromEntries(
      faultSteps(this.lesson).map((step) => [step.id, there.includes(step.fault) ? 1 : 0]),
    );
  }

  #drawnFaults(): Fault[] {
    const shares = this.#shares.current;
    return faultSteps(this.lesson)
      .filter((step) => (shares[step.id] ?? 0) > 0)
      .map((step) => ({ ...step.fault, amount: step.fault.amount * shares[step.id]! }));
  }

  #account(): Balance[] {
    const lines = ledgerLines(this.lesson, this.snapshot);
    const flows = lines.map((_, i) => this.run.at(faultsAfter(this.lesson, lines, i + 1)).flow_L_s.outdoors);
    if (this.#moving && lines.length > 1) flows[lines.length - 1] = this.solution.flow_L_s.outdoors;
    return lines.map((line, i) => ({
      line,
      flow_L_s: flows[i]!,
      before_L_s: i === 0 ? flows[0]! : flows[i - 1]!,
    }));
  }
}
