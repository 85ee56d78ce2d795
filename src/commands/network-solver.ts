/**
 * A rig without leaks as a network of EPANET's, a general solver for water mains (through epanet-js), which
 * reckons in metres of the fluid and takes Swamee-Jain for friction. Straight duct becomes a pipe of its own
 * roughness; every other loss a fixed coefficient, taken at the flow our engine found.
 */
import { InitHydOption, LinkProperty, Project, Workspace } from 'epanet-js';
import { fanCurveOf, type Rig, type Solution, type Stock } from '#physics';

/** EPANET's 32.2 ft/s2. */
const GRAVITY = 9.81456;
/** A pipe that is nothing but its loss coefficient. */
const NO_LENGTH_M = 0.001;
const SMOOTH_MM = 0.0001;

/** The fan's curve point by point, 1 L/s apart, for as long as it falls and lifts. */
function fanPoints(rig: Rig, stock: Stock, metres: (pressure: number) => number): string[] {
  const flows = Array.from({ length: 1000 }, (_, flow) => flow);
  const lines: string[] = [];
  for (const { flow_L_s, pressure_Pa } of fanCurveOf(rig, stock, flows) ?? []) {
    if (pressure_Pa <= 0) break;
    lines.push(` FAN ${flow_L_s} ${metres(pressure_Pa).toPrecision(12)}`);
  }
  return lines;
}

/** The text of EPANET's input file for a solved rig whose air all stays in the duct. */
export function networkText(rig: Rig, stock: Stock, solution: Solution): string {
  const metres = (pressure: number) => pressure / (solution.air.density_kg_m3 * GRAVITY);
  const pipes: string[] = [];
  const pumps: string[] = [];
  let at = 0;
  const link = () => `${at === 0 ? 'ROOM' : `N${at}`} ${`N${++at}`}`;
  for (const piece of solution.pieces) {
    const bore_mm = Math.sqrt((4 / Math.PI) * (piece.flow_L_s / 1000 / piece.velocity_m_s)) * 1000;
    const given = rig.run.find((one) => one.id === piece.id);
    const of = (cause: string) => piece.causes.find((one) => one.cause === cause)?.loss_Pa ?? 0;
    const straight = given?.kind === 'duct' ? of('friction') : 0;
    const drawnOut = straight > 0 ? 1 + of('compression') / straight : 1;
    const length = given?.kind === 'duct' ? given.path_m * drawnOut : NO_LENGTH_M;
    const rough =
      given?.kind === 'duct'
        ? (given.roughness_mm ?? stock.materials[given.material]!.roughness_mm)
        : SMOOTH_MM;
    const rest = (piece.loss_Pa - straight * drawnOut) / piece.velocityPressure_Pa;
    const coefficient = Math.max(0, rest).toPrecision(12);
    if (piece.kind !== 'fan' || piece.loss_Pa > 0)
      pipes.push(` P${at} ${link()} ${length} ${bore_mm} ${rough} ${coefficient} OPEN`);
    if (piece.kind === 'fan') pumps.push(` FAN ${link()} HEAD FAN`);
  }
  const outdoors = new RegExp(`\\bN${at}\\b`);
  const joints = Array.from({ length: at - 1 }, (_, i) => ` N${i + 1} 0 0`);
  return `[JUNCTIONS]
${joints.join('\n')}
[RESERVOIRS]
 ROOM 0
 OUT 0
[PIPES]
${pipes.map((line) => line.replace(outdoors, 'OUT')).join('\n')}
[PUMPS]
${pumps.map((line) => line.replace(outdoors, 'OUT')).join('\n')}
[CURVES]
${fanPoints(rig, stock, metres).join('\n')}
[OPTIONS]
 UNITS LPS
 HEADLOSS D-W
 VISCOSITY ${solution.air.kinematicViscosity_m2_s}
 TRIALS 500
 ACCURACY 0.00000001
[TIMES]
 DURATION 0
[END]
`;
}

export interface NetworkSolver {
  /** Reads the text, solves it and closes: fan flow in L/s. */
  readonly whole: (text: string) => number;
  /** Opens a text and gives a way to solve it again from scratch, and to close it. */
  readonly open: (text: string) => { readonly again: () => number; readonly close: () => void };
}

export async function networkSolver(): Promise<NetworkSolver> {
  const workspace = new Workspace();
  await workspace.loadModule();
  const open = (text: string) => {
    const project = new Project(workspace);
    workspace.writeFile('run.inp', text);
    project.open('run.inp', 'run.rpt', 'run.bin');
    project.openH();
    const fan = project.getLinkIndex('FAN');
    return {
      again: () => {
        project.initH(InitHydOption.InitFlow);
        project.runH();
        return project.getLinkValue(fan, LinkProperty.Flow);
      },
      close: () => {
        project.closeH();
        project.close();
      },
    };
  };
  return {
    open,
    whole: (text) => {
      const project = open(text);
      const flow = project.again();
      project.close();
      return flow;
    },
  };
}
