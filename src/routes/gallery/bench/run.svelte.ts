/** A rig whose faults can each be moved by hand: what a drag has to solve and draw again. */
import type { LedgerEntry, WalkStation } from '#charts';
import { say, type MessageKey } from '#i18n';
import type { CurvePoint, Fault, Rig, Solution, Stock } from '#physics';
import { RunSolver } from '#session';

export const faultWord = (fault: Fault) => say(`fault.${fault.kind}` as MessageKey);

export class MovedRun {
  readonly run: RunSolver;
  readonly healthy: Solution;
  readonly all: readonly Fault[];
  /** Place of the moved fault in the rig's own list, and its amount. */
  chosen = $state.raw(0);
  amount = $state.raw(0);
  /** While it is dragged. */
  moving = $state.raw(false);
  readonly others: readonly Fault[];
  readonly faults: readonly Fault[];
  readonly rig: Rig;
  readonly solution: Solution;
  readonly before: Solution;
  readonly curve: readonly CurvePoint[];
  readonly extent_Pa: [number, number];
  readonly entries: readonly LedgerEntry[];
  readonly #kept: readonly LedgerEntry[];

  constructor(rig: Rig, stock: Stock) {
    this.run = new RunSolver(rig, stock);
    this.healthy = this.run.at([]);
    this.all = rig.faults ?? [];
    this.amount = this.all[0]?.amount ?? 0;
    // The moved fault is the last of the account, as in a lesson: only its own line follows the drag.
    this.others = $derived(this.all.filter((_, i) => i !== this.chosen));
    this.faults = $derived([...this.others, { ...this.all[this.chosen]!, amount: this.amount }]);
    this.rig = $derived(this.run.rigWith(this.faults));
    this.solution = $derived(this.run.passing(this.faults));
    this.before = $derived(this.run.at(this.others));
    this.curve = $derived(this.moving ? this.run.passingCurve(this.faults) : this.run.curveAt(this.faults));
    this.#kept = $derived(this.#account());
    this.entries = $derived([...this.#kept, this.#last()]);
    const all = [this.healthy, this.run.at(this.all)].flatMap(({ stations }) =>
      stations.flatMap((station) => [station.totalPressure_Pa, station.staticPressure_Pa]),
    );
    this.extent_Pa = [Math.min(...all) * 1.2, Math.max(...all) * 1.2];
  }

  drag(amount: number): void {
    this.amount = amount;
    this.moving = true;
  }

  choose(index: number): void {
    this.chosen = index;
    this.amount = this.all[index]?.amount ?? 0;
  }

  walk(solution: Solution, stationX: readonly number[]): WalkStation[] {
    return solution.stations.map((station, i) => ({
      x: stationX[i] ?? 0,
      total_Pa: station.totalPressure_Pa,
      static_Pa: station.staticPressure_Pa,
      after: station.after,
    }));
  }

  #account(): LedgerEntry[] {
    const flow = (count: number) => this.run.at(this.others.slice(0, count)).flow_L_s.outdoors;
    return [
      {
        id: 'opening',
        label: say('play.ledger.opening'),
        kind: 'opening',
        flow_L_s: flow(0),
        before_L_s: flow(0),
      },
      ...this.others.map((fault, i): LedgerEntry => ({
        id: `debit-${i}`,
        label: faultWord(fault),
        kind: 'debit',
        flow_L_s: flow(i + 1),
        before_L_s: flow(i),
      })),
    ];
  }

  #last(): LedgerEntry {
    return {
      id: 'debit-moved',
      label: faultWord(this.all[this.chosen]!),
      kind: 'debit',
      flow_L_s: this.solution.flow_L_s.outdoors,
      before_L_s: this.before.flow_L_s.outdoors,
    };
  }
}
