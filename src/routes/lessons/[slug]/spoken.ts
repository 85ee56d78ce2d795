/** One sentence for a screen reader after each change: what, from what, to what. */
import { say } from '#i18n';
import { currentStep } from '#lesson';
import type { LessonPlay } from '#session';
import { show, type UnitChoice } from '#units';
import { faultWord, inPicture } from './picture.ts';

export function spokenChange(play: LessonPlay, choice: UnitChoice): string {
  const step = currentStep(play.snapshot);
  const values = {
    before: show('flow', play.before.flow_L_s.outdoors, choice).text,
    flow: show('flow', play.solution.flow_L_s.outdoors, choice).text,
    pressureBefore: show('pressure', play.before.fan.pressure_Pa, choice).text,
    pressure: show('pressure', play.solution.fan.pressure_Pa, choice).text,
  };
  if (step.kind === 'fault') {
    return play.phase === 'observe' && inPicture(play)
      ? say('play.spoken.added', { fault: faultWord(step.fault), ...values })
      : '';
  }
  const last = play.snapshot.context.repairs.at(-1);
  const mended = play.lesson.steps.find((each) => each.id === last);
  return mended?.kind === 'fault'
    ? say('play.spoken.mended', { fault: faultWord(mended.fault), ...values })
    : '';
}
