/** The model assumptions behind what each step of a lesson is about, in words. */
import { has, say } from '#i18n';
import { isTaught, subjectOf, type Lesson } from '#lesson';
import type { LessonFacts } from '#lesson-engine';

/** By step id. */
export function restsOn(
  lesson: Lesson,
  assumptions: LessonFacts['assumptions'],
): Record<string, readonly string[]> {
  const told = (codes: readonly string[]) =>
    codes.map((code) => `assumption.${code}`).flatMap((key) => (has(key) ? [say(key)] : []));
  return Object.fromEntries(
    lesson.steps.filter(isTaught).map((step) => {
      const subject = subjectOf(step);
      return [step.id, told((subject && assumptions[step.id]?.[subject]) || [])];
    }),
  );
}
