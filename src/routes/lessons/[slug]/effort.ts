/** What a step's own chart is fed: the run before its change, and from the reveal on the run as it now is. */
import type { SteamStory, WattsFan, WattsPoint } from '#charts';
import { say } from '#i18n';
import { isTaught, pile, stagesOf, type Stage, type TaughtStep } from '#lesson';
import type { FanTable, Fault, Solution } from '#physics';
import { effortAt, effortsAtSameWatts, showerOf, type LessonPlay } from '#session';

/** Shares of rated speed a line is drawn through; those a fan cannot run at fall out. */
const SPEEDS = [0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9, 1];
const ROOM = 1.12;
/** Longest a shower is followed, minutes. */
const WHOLE_MIN = 300;

function fanOf(play: LessonPlay, stage: Stage): FanTable | undefined {
  const piece = play.runs.rig(stage).run.find(({ kind }) => kind === 'fan');
  if (piece?.kind !== 'fan') return undefined;
  return typeof piece.fan === 'string' ? play.runs.stock.fans[piece.fan] : piece.fan;
}

function pointOf({ fan, flow_L_s }: Solution): WattsPoint | undefined {
  return fan.power_W === null
    ? undefined
    : { power_W: fan.power_W, flow_L_s: flow_L_s.outdoors, speed: fan.speed };
}

/** Watts and litres at the speeds the fan of a stage can run at; empty for a fan of one speed. */
function speedsOf(play: LessonPlay, stage: Stage): readonly WattsPoint[] {
  const fan = fanOf(play, stage);
  if (!fan || fan.motor !== 'EC') return [];
  const rig = play.runs.rig(stage);
  // Where the wind blows it back, a fan gives nothing for its watts.
  return SPEEDS.flatMap((speed) => effortAt(rig, play.runs.stock, fan, speed) ?? []).filter(
    ({ flow_L_s }) => flow_L_s > 0,
  );
}

/** All that stays as it is while the picture moves. */
export function wattsFrame(play: LessonPlay, step: TaughtStep) {
  const { from, to } = stagesOf(play.lesson, step);
  const fans = [fanOf(play, from), fanOf(play, to)] as const;
  const turned = from.fan !== to.fan || from.speed !== to.speed;
  const line = turned ? speedsOf(play, to) : [];
  const ends = [from, to].flatMap((stage) => pointOf(play.runs.at(stage)) ?? []);
  const most = (of: (point: WattsPoint) => number) => Math.max(5, ...[...ends, ...line].map(of)) * ROOM;
  const sameRun = JSON.stringify(from.faults) === JSON.stringify(to.faults);
  const rivals = fans[0] && fans[1] && fans[0] !== fans[1] && sameRun ? [fans[0], fans[1]] : undefined;
  return {
    line,
    start: ends[0],
    labels:
      fans[0] === fans[1]
        ? ([say('play.curve.before'), say('play.curve.now')] as const)
        : ([fans[0]?.name ?? '', fans[1]?.name ?? ''] as const),
    extent: { power_W: most(({ power_W }) => power_W), flow_L_s: most(({ flow_L_s }) => flow_L_s) },
    same: rivals && effortsAtSameWatts(play.runs.rig(from), play.runs.stock, rivals),
  };
}

/** The fans of the chart: one before the reveal, two from then on. */
export function wattsFans(
  { line, start, labels }: ReturnType<typeof wattsFrame>,
  now: Solution,
  shown: boolean,
): WattsFan[] {
  const single = (id: string, label: string, at: WattsPoint | undefined): WattsFan => ({
    id,
    label,
    points: at ? [at] : [],
    present: at,
  });
  const alike = labels[0] === say('play.curve.before');
  if (!shown) return [single('now', alike ? say('play.curve.now') : labels[0], start)];
  const present = pointOf(now);
  return [
    single('before', labels[0], start),
    line.length > 1
      ? { id: 'now', label: labels[1], points: line, present }
      : single('now', labels[1], present),
  ];
}

/** A shower with the fan left on. */
const story = (
  play: LessonPlay,
  stage: Stage,
  run: Solution,
  tone: SteamStory['tone'],
  label: string,
): SteamStory => ({ id: tone, tone, label, moments: showerOf(play.runs.rig(stage), run, WHOLE_MIN) });

/** A shower in the run before, and from the reveal on in the run now. */
export function steamStories(play: LessonPlay, shown: boolean): SteamStory[] {
  const now = story(play, play.target, play.solution, 'present', say('play.curve.now'));
  return shown ? [story(play, play.target, play.before, 'healthy', say('play.curve.before')), now] : [now];
}

/** The lesson's own run with all it put in; of a lesson of cases, the one that moves least. */
function worstOf(play: LessonPlay): Stage | undefined {
  const { lesson, runs } = play;
  const all = pile(lesson);
  if (all.faults.length > 0) return all;
  const cases = lesson.steps.filter(isTaught).flatMap((step) => Object.values(stagesOf(lesson, step)));
  return cases
    .filter((stage) => stage.rig === lesson.rig && stage.faults.length > 0)
    .filter(({ fan, speed }) => fan === undefined && speed === undefined)
    .sort((one, other) => runs.at(one).flow_L_s.room - runs.at(other).flow_L_s.room)[0];
}

/** A shower in the lesson's own run with nothing wrong, and with what the lesson put in; empty where it put in nothing. */
export function endStories(
  play: LessonPlay,
): { readonly house: string; readonly faults: readonly Fault[]; readonly stories: SteamStory[] } | undefined {
  const worst = worstOf(play);
  if (!worst) return undefined;
  const sound = { ...worst, faults: [] };
  const label = say('play.curve.worst', { count: worst.faults.length });
  return {
    house: play.runs.rig(worst).name,
    faults: worst.faults,
    stories: [
      story(play, sound, play.runs.at(sound), 'healthy', say('play.curve.healthy')),
      story(play, worst, play.runs.at(worst), 'present', label),
    ],
  };
}
