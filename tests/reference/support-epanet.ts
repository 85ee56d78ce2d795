/**
 * A run handed to a general pipe network solver (EPANET 2.3.5 through epanet-js). Pressure in Pa becomes
 * head in metres of air; total pressure is its junction head. A leak's junction is raised by the velocity
 * head of the air that comes up to it and by the pressure of the roof space, so that static pressure drives
 * the leak. What depends on the flow is set again at each answer until the flow stands still.
 */
import { InitHydOption, LinkProperty, NodeProperty, Project, Workspace } from 'epanet-js';

/** 32.2 ft/s2, the solver's own gravity, m/s2. */
const GRAVITY = 9.81456;
/** The solver rounds its minor-loss constant; exact over its own. */
const MINOR_LOSS = 1 / 0.999882;
/** One exponent for all emitters; holes, with 0.5, are pipes to a reservoir instead. */
export const EMITTER_EXPONENT = 0.65;
const PASSES = 60;

export interface Pipe {
  readonly kind: 'pipe';
  readonly bore_mm: number;
  readonly roughness_mm: number;
  /** m, at a flow in L/s. */
  readonly length: (flow_L_s: number) => number;
  /** Loss coefficient at a flow in L/s. */
  readonly minor: (flow_L_s: number) => number;
}

/** A place where the run leaks: cracks as L/s at 1 Pa with the exponent above, and holes. */
export interface LeakPlace {
  readonly kind: 'leak';
  readonly bore_mm: number;
  readonly crack_L_s: number;
  readonly hole?: { readonly area_m2: number; readonly discharge: number };
}

export interface Pump {
  readonly kind: 'pump';
  /** Falling points, L/s and Pa. */
  readonly curve: readonly (readonly [flow_L_s: number, pressure_Pa: number])[];
}

export interface Run {
  readonly density_kg_m3: number;
  readonly viscosity_m2_s: number;
  /** Against the room's surroundings. */
  readonly outdoors_Pa: number;
  readonly roofSpace_Pa: number;
  /** From room to outdoors, one pump among them. */
  readonly elements: readonly (Pipe | LeakPlace | Pump)[];
}

export interface Flows {
  readonly room: number;
  readonly fan: number;
  readonly outdoors: number;
}

export type NetworkSolver = (run: Run) => Flows;

const area = (bore_mm: number) => (Math.PI / 4) * (bore_mm / 1000) ** 2;
const velocityHead = (flow_L_s: number, bore_mm: number) =>
  (flow_L_s / 1000 / area(bore_mm)) ** 2 / (2 * GRAVITY);

/** The input file: nodes N0 (room) to the last (outdoors), links L0... in order, leak reservoirs R. */
function inputFile(run: Run, start_L_s: number): string {
  const scale = run.density_kg_m3 * GRAVITY;
  const lines: Record<'JUNCTIONS' | 'RESERVOIRS' | 'PIPES' | 'PUMPS' | 'CURVES' | 'EMITTERS', string[]> = {
    JUNCTIONS: [],
    RESERVOIRS: ['N0 0'],
    PIPES: [],
    PUMPS: [],
    CURVES: [],
    EMITTERS: [],
  };
  const links = run.elements.filter((element) => element.kind !== 'leak').length;
  const pipe = (name: string, from: string, to: string, m: number, mm: number, rough: number, k: number) =>
    lines.PIPES.push(`${name} ${from} ${to} ${m} ${mm} ${rough} ${k} OPEN`);
  let node = 0;
  for (const [i, element] of run.elements.entries()) {
    if (element.kind === 'leak') {
      if (element.crack_L_s > 0)
        lines.EMITTERS.push(`N${node} ${element.crack_L_s * scale ** EMITTER_EXPONENT}`);
      if (element.hole) {
        const bore = 1000 * Math.sqrt((4 / Math.PI) * element.hole.area_m2);
        lines.RESERVOIRS.push(`R${i} 0`);
        pipe(`H${i}`, `N${node}`, `R${i}`, 0.001, bore, 0.0001, MINOR_LOSS / element.hole.discharge ** 2);
      }
      continue;
    }
    const [from, to] = [`N${node}`, `N${node + 1}`];
    if (element.kind === 'pump') {
      lines.PUMPS.push(`L${node} ${from} ${to} HEAD FAN`);
      for (const [flow, pressure] of element.curve)
        lines.CURVES.push(`FAN ${flow.toPrecision(12)} ${(pressure / scale).toPrecision(12)}`);
    } else {
      const minor = MINOR_LOSS * element.minor(start_L_s);
      pipe(`L${node}`, from, to, element.length(start_L_s), element.bore_mm, element.roughness_mm, minor);
    }
    node++;
    if (node < links) lines.JUNCTIONS.push(`N${node} 0 0`);
    else lines.RESERVOIRS.push(`N${node} ${run.outdoors_Pa / scale}`);
  }
  const sections = Object.entries(lines).map(([head, rows]) => `[${head}]\n ${rows.join('\n ')}`);
  return `${sections.join('\n')}
[OPTIONS]
 UNITS LPS
 HEADLOSS D-W
 VISCOSITY ${run.viscosity_m2_s}
 TRIALS 500
 ACCURACY 0.00000001
 EMITTER EXPONENT ${EMITTER_EXPONENT}
[TIMES]
 DURATION 0
[END]`;
}

/** One workspace for all runs; each run is its own project, opened once and solved until it stands still. */
export async function networkSolver(): Promise<NetworkSolver> {
  const workspace = new Workspace();
  await workspace.loadModule();
  return (run) => {
    const pump = run.elements.find((element) => element.kind === 'pump')!;
    const start = (pump as Pump).curve.at(-1)![0] * 0.7;
    workspace.writeFile('run.inp', inputFile(run, start));
    const project = new Project(workspace);
    project.open('run.inp', 'run.rpt', 'run.bin');
    try {
      return standStill(project, run);
    } finally {
      project.close();
    }
  };
}

function standStill(project: Project, run: Run): Flows {
  const links = run.elements.filter((element) => element.kind !== 'leak');
  const indices = links.map((_, i) => project.getLinkIndex(`L${i}`));
  const flows = () => indices.map((index) => project.getLinkValue(index, LinkProperty.Flow));
  const roof = run.roofSpace_Pa / (run.density_kg_m3 * GRAVITY);
  project.openH();
  let before = [NaN];
  let now = before;
  for (let pass = 0; pass < PASSES; pass++) {
    project.initH(pass === 0 ? InitHydOption.InitFlow : InitHydOption.NoSave);
    project.runH();
    now = flows();
    if (now.every((flow, i) => Math.abs(flow / before[i]! - 1) < 1e-8)) break;
    before = now;
    let link = 0;
    for (const [i, element] of run.elements.entries()) {
      if (element.kind === 'leak') {
        const head = roof + velocityHead(Math.max(0, now[link - 1]!), element.bore_mm);
        const node = project.getNodeIndex(`N${link}`);
        project.setNodeValue(node, NodeProperty.Elevation, head);
        if (element.hole) project.setNodeValue(project.getNodeIndex(`R${i}`), NodeProperty.Elevation, head);
        continue;
      }
      if (element.kind === 'pipe') {
        const flow = Math.abs(now[link]!);
        project.setLinkValue(indices[link]!, LinkProperty.Length, element.length(flow));
        project.setLinkValue(indices[link]!, LinkProperty.MinorLoss, MINOR_LOSS * element.minor(flow));
      }
      link++;
    }
    if (pass === PASSES - 1) throw new Error('the network solver does not come to rest');
  }
  project.closeH();
  const fan = links.findIndex((element) => element.kind === 'pump');
  return { room: now[0]!, fan: now[fan]!, outdoors: now.at(-1)! };
}
