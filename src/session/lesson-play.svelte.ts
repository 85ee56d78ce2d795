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
  account,
  everyStage,
  lessonMachine,
  phase,
  possible,
  stageBefore,
  stageHealthy,
  stageKey,
  stageNow,
  type LedgerLine,
  type Lesson,
  type LessonEvent,
  type LessonSnapshot,
  type Stage,
} from '#lesson';
import { ActorReader } from './actor.svelte.ts';
import { LessonRuns, type Extent } from './lesson-run.ts';

const REVEAL_MS = 1600;
const MOVE_MS = 600;
/** Amount of each fault as drawn, by the fault's place; and the fan's speed. */
type Drawn = Record<string, number>;
const SPEED = 'speed';

/** What a fault is, its amount aside: the same fault made worse is one moving thing. */
const placeOf = (rig: string, { amount: _, ...fault }: Fault): string => JSON.stringify([rig, fault]);

export interface Balance {
  readonly line: LedgerLine;
  /** Key of the run after this line, for its likely band. */
  readonly stage: string;
  readonly flow_L_s: number;
  readonly before_L_s: number;
}

export class LessonPlay {
  readonly lesson: Lesson;
  readonly runs: LessonRuns;
  readonly #reader: ActorReader<Actor<typeof lessonMachine>>;
  readonly #faults: Readonly<Record<string, { readonly rig: string; readonly fault: Fault }>>;
  readonly #drawn: Tween<Drawn>;
  /** The run as the step has it, where the picture rests or is going. */
  readonly target: Stage;
  /** The run as drawn, part of the way there while it moves. */
  readonly stage: Stage;
  readonly rig: Rig;
  readonly solution: Solution;
  /** The present system curve, while it moves only as far as it is seen; and the fan's. */
  readonly curve: readonly CurvePoint[];
  readonly fan: readonly CurvePoint[];
  readonly extent: Extent;
  /** The same rig with nothing wrong. */
  readonly healthy: Solution;
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
    rigs: Readonly<Record<string, Rig>>,
    stock: Stock,
    snapshot?: LessonSnapshot,
    onsettled: (play: LessonPlay) => void = () => {},
  ) {
    this.lesson = lesson;
    this.runs = new LessonRuns(lesson, rigs, stock);
    this.#onsettled = onsettled;
    this.#faults = Object.fromEntries(
      everyStage(lesson).flatMap(({ rig, faults }) =>
        faults.map((fault) => [placeOf(rig, fault), { rig, fault }] as const),
      ),
    );
    const actor = createActor(lessonMachine, { input: { lesson }, ...(snapshot ? { snapshot } : {}) });
    this.#reader = new ActorReader(actor);
    actor.start();
    this.#drawn = new Tween(this.#wanted(), { easing: cubicInOut });
    this.target = $derived(stageNow(this.lesson, this.snapshot));
    this.stage = $derived(this.#drawnStage());
    this.rig = $derived(this.runs.rig(this.stage));
    this.solution = $derived(this.runs.passing(this.stage));
    this.curve = $derived(this.#moving ? this.runs.passingCurve(this.stage) : this.runs.curveAt(this.stage));
    this.fan = $derived(this.runs.fan(this.stage));
    this.extent = $derived(this.runs.extent(this.target));
    this.healthy = $derived(this.runs.at(stageHealthy(this.lesson, this.snapshot)));
    this.before = $derived(this.runs.at(stageBefore(this.lesson, this.snapshot)));
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

  stop(): void {
    this.#reader.actor.stop();
  }

  can(event: LessonEvent) {
    return possible(this.snapshot, event);
  }

  /** Sends an event and sets the picture moving to where it now belongs. */
  send(event: LessonEvent): void {
    const { actor } = this.#reader;
    const was = actor.getSnapshot();
    actor.send(event);
    const now = actor.getSnapshot();
    const revealing = phase(now) === 'reveal';
    if (event.type === 'phase.replay' && revealing && phase(was) !== 'reveal')
      void this.#drawn.set(this.#amounts(stageBefore(this.lesson, now)), { duration: 0 });
    // Another rig is another house: nothing moves from one to the other.
    const sameHouse = stageNow(this.lesson, was).rig === stageNow(this.lesson, now).rig;
    void this.#move(revealing ? REVEAL_MS : sameHouse ? MOVE_MS : 0);
    this.#onsettled(this);
  }

  async #move(duration: number): Promise<void> {
    const mine = ++this.#latest;
    const target = this.#wanted();
    const still = Object.keys(target).every((key) => this.#drawn.current[key] === target[key]);
    this.#moving = !still;
    if (!still) await this.#drawn.set(target, { duration: prefersReducedMotion.current ? 0 : duration });
    if (mine !== this.#latest) return;
    this.#moving = false;
    if (phase(this.#reader.actor.getSnapshot()) === 'reveal') this.#reader.actor.send({ type: 'reveal.end' });
    this.#onsettled(this);
  }

  /** Amounts where the picture now belongs. */
  #wanted(): Drawn {
    return this.#amounts(stageNow(this.lesson, this.#reader.actor.getSnapshot()));
  }

  #amounts({ rig, faults, speed = 1 }: Stage): Drawn {
    const none = Object.fromEntries(Object.keys(this.#faults).map((place) => [place, 0]));
    const there = Object.fromEntries(faults.map((fault) => [placeOf(rig, fault), fault.amount]));
    return { ...none, ...there, [SPEED]: speed };
  }

  #drawnStage(): Stage {
    const { rig, fan, speed, held } = this.target;
    const amounts = this.#drawn.current;
    const faults = Object.entries(this.#faults)
      .filter(([place, one]) => one.rig === rig && (amounts[place] ?? 0) > 0)
      .map(([place, { fault }]) => ({ ...fault, amount: amounts[place]! }));
    const turning = amounts[SPEED] ?? 1;
    return {
      rig,
      faults,
      ...(fan === undefined ? {} : { fan }),
      ...(speed === undefined && turning === 1 ? {} : { speed: turning }),
      ...(held === undefined ? {} : { held }),
    };
  }

  #account(): Balance[] {
    const lines = account(this.lesson, this.snapshot);
    const flows = lines.map(({ stage }) => this.runs.at(stage).flow_L_s.outdoors);
    if (this.#moving && lines.length > 1) flows[lines.length - 1] = this.solution.flow_L_s.outdoors;
    return lines.map(({ line, stage }, i) => ({
      line,
      stage: stageKey(this.lesson, stage),
      flow_L_s: flows[i]!,
      before_L_s: i === 0 ? flows[0]! : flows[i - 1]!,
    }));
  }
}
