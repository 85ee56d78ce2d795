/** The picture in words, short enough to listen to. */
import { say } from '#i18n';
import type { Rig, Solution } from '#physics';
import { defaults, show, type UnitChoice } from '#units';
import { exitOf } from './layout/plan.ts';
import { styleOf } from './layout/walls.ts';

function faults(solution: Solution, choice: UnitChoice): string[] {
  return solution.pieces.flatMap(({ shape }) => {
    const said: string[] = [];
    const depth = (metres: number) => show('depth', metres, choice).text;
    const part = (share: number) => show('share', share, choice).text;
    if (shape.sag_m)
      said.push(
        say('scene.say.sag', {
          depth: depth(shape.sag_m),
          span: show('length', shape.span_m ?? 0, choice).text,
        }),
      );
    if (shape.crimpHeightRatio !== undefined && shape.crimpHeightRatio < 1)
      said.push(say('scene.say.crimp', { part: part(shape.crimpHeightRatio) }));
    if (shape.swappedShare) said.push(say('scene.say.swap', { part: part(shape.swappedShare) }));
    if (shape.ties && (shape.tieRatio ?? 1) < 1)
      said.push(say('scene.say.ties', { count: shape.ties, part: part(shape.tieRatio!) }));
    if (shape.drapedLoops) said.push(say('scene.say.loops', { count: shape.drapedLoops }));
    else if ((shape.compression ?? 0) >= 0.03)
      said.push(say('scene.say.bunched', { part: part(shape.compression!) }));
    return said;
  });
}

export function describe(rig: Rig, solution: Solution, choice: UnitChoice = defaults): string {
  const ducts = rig.run.flatMap((piece) =>
    piece.kind === 'duct'
      ? [
          say('scene.duct', {
            wall: say(`scene.wall.${styleOf(piece)}`),
            length: show('length', piece.path_m, choice).text,
          }),
        ]
      : [],
  );
  const wrong = faults(solution, choice);
  const exit = exitOf(rig.run);
  return [
    say('scene.say.run', {
      room: say(`scene.say.room.${rig.room?.use ?? 'bathroom'}`),
      exit: say(`scene.say.exit.${exit}`),
      ducts: ducts.join(', '),
    }),
    wrong.length ? wrong.join(' ') : say('scene.say.sound'),
    say(`scene.say.flow.${exit}`, { flow: show('flow', solution.flow_L_s.outdoors, choice).text }),
  ].join(' ');
}
