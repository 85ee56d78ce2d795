/** One sentence for a screen reader after each change: what, from what, to what. */
import { say } from '#i18n';
import { currentStep, isTaught, type LessonText } from '#lesson';
import type { LessonPlay } from '#session';
import { show, type UnitChoice } from '#units';
import { changeName, faultWord, inPicture } from './picture.ts';

export function spokenChange(play: LessonPlay, text: LessonText, choice: UnitChoice): string {
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
    if (step.kind === 'fault') return say('play.spoken.added', { fault: faultWord(step.fault), ...values });
    // A case may be a repair, another fan or another roof: which way it went is for the numbers to say.
    return say('play.spoken.case', { what: changeName(play.lesson, text, step.id), ...values });
  }
  const last = play.snapshot.context.repairs.at(-1);
  const mended = play.lesson.steps.find((each) => each.id === last);
  return step.kind === 'mend' && mended?.kind === 'fault'
    ? say('play.spoken.mended', { fault: faultWord(mended.fault), ...values })
    : '';
}
