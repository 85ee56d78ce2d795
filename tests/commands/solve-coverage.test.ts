/**
 * The headless command solves a rig with each kind of piece and each kind of fault there is. The kinds come
 * from the engine's own registries, so a new kind that no rig here can hold fails. One rig goes through the
 * command itself, the others through what it prints from: starting it twenty times over takes minutes.
 */
import { spawn } from 'node:child_process';
import { describe, expect, test } from 'vitest';
import { FAULTS, solve, type Fault, type FaultKind, type Piece, type PieceKind, type Rig } from '#physics';
import { stock } from '#catalogue';
import { root } from '../../src/commands/run.ts';
import { solveText } from '../../src/commands/solve-text.ts';
import { FITTINGS } from '../../src/physics/fittings/index.ts';

/** One run with a place for everything. A kind of piece that is missing here does not compile. */
const PLACES: Readonly<Record<Exclude<PieceKind, 'room' | 'opening'>, Piece>> = {
  grille: { id: 'grille', kind: 'grille', diameter_mm: 150, freeArea: 0.7 },
  duct: { id: 'duct', kind: 'duct', material: 'semi-rigid', diameter_mm: 150, path_m: 3 },
  elbow: { id: 'elbow', kind: 'elbow', form: 'pressed', angle_deg: 90, radiusRatio: 1, diameter_mm: 150 },
  reducer: { id: 'reducer', kind: 'reducer', diameter_mm: 150, toDiameter_mm: 125, form: 'conical' },
  fan: { id: 'fan', kind: 'fan', fan: 'mixed-125' },
  fitting: { id: 'fitting', kind: 'fitting', diameter_mm: 125, lossCoefficient: 0.4 },
  damper: { id: 'flap', kind: 'damper', diameter_mm: 125 },
  terminal: { id: 'cowl', kind: 'terminal', form: 'wall-cowl', diameter_mm: 125 },
};
const FLEXIBLE: Piece = {
  id: 'flexible',
  kind: 'duct',
  material: 'flexible',
  diameter_mm: 125,
  path_m: 4,
  supports: { spacing_m: 1.2, width_mm: 75 },
};

const kinds = Object.keys(FITTINGS) as (keyof typeof FITTINGS)[];
const faults = Object.keys(FAULTS) as FaultKind[];

/** In the order of the run: the flexible piece lies between flap and cowl. */
const run: Piece[] = [...Object.values(PLACES).slice(0, -1), FLEXIBLE, PLACES.terminal];

function rigWith(kind: FaultKind): Rig {
  const fitting = run.filter((piece) => FAULTS[kind].fits(piece, stock));
  // Sag, ties and loops are what flexible duct is for.
  const place = fitting.find(({ id }) => id === FLEXIBLE.id) ?? fitting[0];
  if (!place) throw new Error(`no piece of this run can have ${kind}: give it one`);
  const fault: Fault = { kind, at: place.id, amount: 0.7 };
  return {
    name: kind,
    room: { volume_m3: 12, makeUpFreeArea_mm2: 15_000 },
    run,
    faults: [fault],
  };
}

/** The rig on standard input, as `npm run -s solve -- -` reads it. */
function headless(rig: Rig): Promise<{ code: number | null; out: string; err: string }> {
  return new Promise((settle, fail) => {
    const child = spawn(process.execPath, ['--import', 'tsx', 'src/commands/solve.ts', '-'], { cwd: root });
    let [out, err] = ['', ''];
    child.stdout.on('data', (part) => (out += part));
    child.stderr.on('data', (part) => (err += part));
    child.on('error', fail);
    child.on('close', (code) => settle({ code, out, err }));
    child.stdin.end(JSON.stringify(rig));
  });
}

const sound: Rig = { name: 'sound', room: { volume_m3: 12, makeUpFreeArea_mm2: 15_000 }, run };

describe('the run', () => {
  test('has every kind of piece the engine builds', () => {
    expect(kinds.filter((kind) => !run.some((piece) => piece.kind === kind))).toEqual([]);
  });

  test('is solved headless, with a loss at every piece but the fan', { timeout: 60_000 }, async () => {
    const { code, out, err } = await headless(sound);
    expect(err).toBe('');
    expect(code).toBe(0);
    expect(out).toBe((solveText(JSON.stringify(sound), 'rig') as { text: string }).text);
    const solution = JSON.parse(out);
    for (const { id, kind } of run) {
      const piece = solution.pieces.find((one: { id: string }) => one.id === id);
      expect(piece.kind, id).toBe(kind);
      if (kind !== 'fan') expect(piece.loss_Pa, id).toBeGreaterThan(0);
    }
  });
});

describe('each kind of fault', () => {
  test.each(faults)('%s', (kind) => {
    const answer = solveText(JSON.stringify(rigWith(kind)), 'rig');
    if (!answer.ok) throw new Error(answer.lines.join('\n'));
    const solution = JSON.parse(answer.text);
    const healthy = solve(sound, stock);
    if (healthy.outcome !== 'solved') throw new Error(healthy.found);
    expect(solution.outcome).toBe('solved');
    expect(Math.abs(solution.residual_Pa)).toBeLessThan(1e-6);
    // Every fault shows: some flow is not what it was.
    const changed = (['room', 'fan', 'outdoors'] as const).map((flow) =>
      Math.abs(solution.flow_L_s[flow] - healthy.flow_L_s[flow]),
    );
    expect(Math.max(...changed)).toBeGreaterThan(0.05);
  });
});
