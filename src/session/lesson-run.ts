/** A lesson's rig solved at any stage: each set of faults once, kept by what is in it. */
import {
  fanCurveOf,
  solve,
  systemCurve,
  type CurvePoint,
  type Fault,
  type Rig,
  type Solution,
  type Stock,
} from '#physics';

/** Points along a curve: enough for a smooth line, few enough for every frame. */
const CURVE_POINTS = 48;

export class RunSolver {
  readonly #rig: Rig;
  readonly #stock: Stock;
  readonly #kept = new Map<string, Solution>();
  readonly #curves = new Map<string, CurvePoint[]>();
  /** Right end of the flow axis and top of the pressure axis, the same for the whole lesson. */
  readonly extent: { readonly flow_L_s: number; readonly pressure_Pa: number };
  readonly fan: readonly CurvePoint[];
  readonly #flows: readonly number[];

  constructor(rig: Rig, stock: Stock) {
    this.#rig = { ...rig, faults: [] };
    this.#stock = stock;
    const free = this.#freeDelivery();
    this.extent = { flow_L_s: free.flow * 1.02, pressure_Pa: free.top * 1.08 };
    this.#flows = Array.from(
      { length: CURVE_POINTS + 1 },
      (_, i) => (this.extent.flow_L_s * i) / CURVE_POINTS,
    );
    this.fan = (fanCurveOf(this.#rig, stock, this.#flows) ?? []).filter((point) => point.pressure_Pa >= 0);
  }

  rigWith(faults: readonly Fault[]): Rig {
    return { ...this.#rig, faults };
  }

  /** Solved afresh: for stages between two steps, seen for one frame. */
  passing(faults: readonly Fault[]): Solution {
    const solution = solve(this.rigWith(faults), this.#stock);
    if (solution.outcome === 'failed')
      throw new Error(`${this.#rig.name}: ${solution.path}: ${solution.found}`);
    return solution;
  }

  /** Solved once and kept: for the stages a lesson rests at. */
  at(faults: readonly Fault[]): Solution {
    const key = JSON.stringify(faults);
    const kept = this.#kept.get(key) ?? this.passing(faults);
    this.#kept.set(key, kept);
    return kept;
  }

  curve(faults: readonly Fault[]): CurvePoint[] {
    return systemCurve(this.rigWith(faults), this.#stock, this.#flows) ?? [];
  }

  /** The system curve of a stage, kept. */
  curveAt(faults: readonly Fault[]): CurvePoint[] {
    const key = JSON.stringify(faults);
    const kept = this.#curves.get(key) ?? this.curve(faults);
    this.#curves.set(key, kept);
    return kept;
  }

  /** Where the fan's total pressure has fallen to nothing, and the most it ever gives. */
  #freeDelivery(): { flow: number; top: number } {
    let flow = 1;
    let top = 0;
    for (; flow < 2000; flow *= 1.02) {
      const pressure = fanCurveOf(this.#rig, this.#stock, [flow])?.[0]?.pressure_Pa ?? 0;
      top = Math.max(top, pressure);
      if (pressure <= 0) break;
    }
    return { flow, top };
  }
}
