/** One sentence for a screen reader after each change: what, from what, to what. */
import { say } from '#i18n';
import { currentStep, isTaught, jobsOf, repairsIn, type LessonText } from '#lesson';
import type { Solution } from '#physics';
import type { LessonPlay } from '#session';
import { show, type UnitChoice } from '#units';
import { changeName, faultWord, inPicture } from './picture.ts';

/** `reading`: what a meter in the picture shows. */
export function spokenChange(
  play: LessonPlay,
  text: LessonText,
  choice: UnitChoice,
  reading?: string,
): string {
  const step = currentStep(play.snapshot);
  const values = {
    before: show('flow', play.before.flow_L_s.outdoors, choice).text,
    flow: show('flow', play.solution.flow_L_s.outdoors, choice).text,
    pressureBefore: show('pressure', play.before.fan.pressure_Pa, choice).text,
    pressure: show('pressure', play.solution.fan.pressure_Pa, choice).text,
  };
  if (isTaught(step)) {
    const told = ['observe', 'explain', 'settled'].includes(play.phase) && inPicture(play);
    // Once, where the reveal has ended: on the first question after it.
    const first = step.observe ? play.phase === 'observe' : play.phase === 'explain';
    if (!told || !first) return '';
    // A case may be a repair, another fan or another roof: which way it went is for the numbers to say.
    const change =
      step.kind === 'fault'
        ? say('play.spoken.added', { fault: faultWord(step.fault), ...values })
        : say('play.spoken.case', { what: changeName(play.lesson, text, step.id), ...values });
    const read = reading === undefined ? [] : [say('play.spoken.reading', { reading })];
    return [change, ...leaks(play, choice), ...read].join(' ');
  }
  if (step.kind !== 'mend') return '';
  const last = repairsIn(play.lesson, step, play.snapshot.context).at(-1);
  const job = jobsOf(play.lesson, step).find(({ id }) => id === last);
  return job ? say('play.spoken.mended', { fault: faultWord(job.fault), ...values }) : '';
}

/** What joints let out into the roof space and in from it, where it changed. */
function leaks(play: LessonPlay, choice: UnitChoice): string[] {
  const ways = [
    ['play.spoken.lost', ({ flow_L_s }: Solution) => flow_L_s.fan - flow_L_s.outdoors],
    ['play.spoken.drawn', ({ flow_L_s }: Solution) => flow_L_s.fan - flow_L_s.room],
  ] as const;
  return ways.flatMap(([key, of]) => {
    const [before, now] = [play.before, play.solution].map((run) => show('flow', of(run), choice));
    return before!.number === now!.number ? [] : [say(key, { flow: now!.text, before: before!.text })];
  });
}
