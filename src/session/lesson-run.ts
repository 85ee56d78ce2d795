/** The rigs of a lesson solved at any stage: each stage once, kept by what is in it. */
import {
  fanCurveOf,
  holdMeter,
  solve,
  systemCurve,
  type CurvePoint,
  type Fault,
  type Rig,
  type Solution,
  type Stock,
} from '#physics';
import { everyStage, type Lesson, type Stage } from '#lesson';

/** Points along a curve: enough for a smooth line, few enough for every frame. */
const CURVE_POINTS = 48;

/** The rig of a stage: its own faults left out, the stage's fan, speed and meter put in. */
export function rigAt(
  rigs: Readonly<Record<string, Rig>>,
  { rig: id, faults, fan, speed, held }: Stage,
): Rig {
  const named = rigs[id];
  if (!named) throw new Error(`lesson.json, rig: found "${id}"; allowed is ${Object.keys(rigs).join(', ')}`);
  const rig = held === undefined ? named : holdMeter(named, held);
  if (fan === undefined && speed === undefined) return { ...rig, faults };
  const run = rig.run.map((piece) =>
    piece.kind === 'fan'
      ? { ...piece, ...(fan === undefined ? {} : { fan }), ...(speed === undefined ? {} : { speed }) }
      : piece,
  );
  return { ...rig, run, faults };
}

/** Right end of the flow axis and top of the pressure axis, the same for all a lesson does with a rig. */
export interface Extent {
  readonly flow_L_s: number;
  readonly pressure_Pa: number;
}

const keyOf = ({ rig, fan, speed, held, faults }: Stage) => JSON.stringify([rig, fan, speed, held, faults]);

/** A few rigs solved at any stage that stands on one of them. */
class Runs {
  readonly #rigs: Readonly<Record<string, Rig>>;
  readonly #stock: Stock;
  readonly #extents: Readonly<Record<string, Extent>>;
  readonly #kept = new Map<string, Solution>();
  readonly #curves = new Map<string, CurvePoint[]>();

  /** `stages`: those whose fans the axes must have room for. */
  constructor(rigs: Readonly<Record<string, Rig>>, stock: Stock, stages: readonly Stage[]) {
    this.#rigs = rigs;
    this.#stock = stock;
    const extents: Record<string, Extent> = {};
    const bases = new Map(
      stages.map((stage) => {
        const bare = { ...stage, faults: [] as readonly Fault[] };
        return [keyOf(bare), bare];
      }),
    );
    for (const base of bases.values()) {
      const free = this.#freeDelivery(base);
      const now = extents[base.rig];
      extents[base.rig] = {
        flow_L_s: Math.max(now?.flow_L_s ?? 0, free.flow * 1.02),
        pressure_Pa: Math.max(now?.pressure_Pa ?? 0, free.top * 1.08),
      };
    }
    this.#extents = extents;
  }

  /** What of the catalogue the rigs may need. */
  get stock(): Stock {
    return this.#stock;
  }

  rig(stage: Stage): Rig {
    return rigAt(this.#rigs, stage);
  }

  extent(stage: Stage): Extent {
    return this.#extents[stage.rig]!;
  }

  /** Solved afresh: for stages between two steps, seen for one frame. Throws, naming rig and place, where it fails. */
  passing(stage: Stage): Solution {
    const rig = this.rig(stage);
    const solution = solve(rig, this.#stock);
    if (solution.outcome === 'failed') throw new Error(`${rig.name}: ${solution.path}: ${solution.found}`);
    return solution;
  }

  /** Solved once and kept: for the stages a lesson rests at. */
  at(stage: Stage): Solution {
    const key = keyOf(stage);
    const kept = this.#kept.get(key) ?? this.passing(stage);
    this.#kept.set(key, kept);
    return kept;
  }

  /** The system curve over the whole flow axis. */
  curve(stage: Stage, most_Pa?: number): CurvePoint[] {
    return systemCurve(this.rig(stage), this.#stock, this.#flows(stage), most_Pa) ?? [];
  }

  /** Solved afresh, and no farther than the pressure axis shows: more than half of it may lie above. */
  passingCurve(stage: Stage): CurvePoint[] {
    return this.curve(stage, this.extent(stage).pressure_Pa);
  }

  /** The system curve of a stage, kept. */
  curveAt(stage: Stage): CurvePoint[] {
    const key = keyOf(stage);
    const kept = this.#curves.get(key) ?? this.curve(stage);
    this.#curves.set(key, kept);
    return kept;
  }

  /** The fan's curve as the stage has it, as far as it gives pressure. */
  fan(stage: Stage): CurvePoint[] {
    const points = fanCurveOf(this.rig(stage), this.#stock, this.#flows(stage)) ?? [];
    return points.filter((point) => point.pressure_Pa >= 0);
  }

  #flows(stage: Stage): number[] {
    const { flow_L_s } = this.extent(stage);
    return Array.from({ length: CURVE_POINTS + 1 }, (_, i) => (flow_L_s * i) / CURVE_POINTS);
  }

  /** Where the fan's total pressure has fallen to nothing, and the most it ever gives. */
  #freeDelivery(stage: Stage): { flow: number; top: number } {
    const rig = this.rig(stage);
    let flow = 1;
    let top = 0;
    for (; flow < 2000; flow *= 1.02) {
      const pressure = fanCurveOf(rig, this.#stock, [flow])?.[0]?.pressure_Pa ?? 0;
      top = Math.max(top, pressure);
      if (pressure <= 0) break;
    }
    return { flow, top };
  }
}

/** The rigs of a lesson. */
export class LessonRuns extends Runs {
  constructor(lesson: Lesson, rigs: Readonly<Record<string, Rig>>, stock: Stock) {
    super(rigs, stock, everyStage(lesson));
  }
}

/** One rig, with no lesson: told by its faults alone. */
export class RunSolver {
  readonly #runs: Runs;
  readonly extent: Extent;
  readonly fan: readonly CurvePoint[];

  constructor(rig: Rig, stock: Stock) {
    const bare = this.#stage([]);
    this.#runs = new Runs({ [bare.rig]: rig }, stock, [bare]);
    this.extent = this.#runs.extent(bare);
    this.fan = this.#runs.fan(bare);
  }

  #stage(faults: readonly Fault[]): Stage {
    return { rig: 'rig', faults };
  }

  rigWith = (faults: readonly Fault[]): Rig => this.#runs.rig(this.#stage(faults));
  passing = (faults: readonly Fault[]): Solution => this.#runs.passing(this.#stage(faults));
  at = (faults: readonly Fault[]): Solution => this.#runs.at(this.#stage(faults));
  curve = (faults: readonly Fault[]): CurvePoint[] => this.#runs.curve(this.#stage(faults));
  passingCurve = (faults: readonly Fault[]): CurvePoint[] => this.#runs.passingCurve(this.#stage(faults));
  curveAt = (faults: readonly Fault[]): CurvePoint[] => this.#runs.curveAt(this.#stage(faults));
}
