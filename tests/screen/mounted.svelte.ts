/** A built-in lesson on the page, as its tests meet it. The importing file says first what jsdom is to have (`page.ts`). */
import { render } from '@testing-library/svelte';
import { loadLesson } from '#lesson-load';
import { lessonFacts, LessonPlay, lessonRigs, stockFor } from '#session';
import Lesson from '../../src/routes/lessons/[slug]/Lesson.svelte';

/** All that is worked out once for a lesson. */
export function prepared(slug: string) {
  const { lesson, text } = loadLesson(slug);
  const rigs = lessonRigs(lesson);
  const stock = stockFor(lesson, rigs);
  return { lesson, text, rigs, stock, facts: lessonFacts(lesson, text, rigs, stock) };
}

export function mounted(
  { lesson, text, rigs, stock, facts }: ReturnType<typeof prepared>,
  onrestart: () => void = () => {},
) {
  let play!: LessonPlay;
  const stop = $effect.root(() => {
    play = new LessonPlay(lesson, rigs, stock);
  });
  const { unmount } = render(Lesson, {
    play,
    text,
    bands: facts.bands,
    assumptions: {},
    built: facts.built,
    notice: '',
    alive: true,
    ondismiss: () => {},
    onrestart,
  });
  return { play, stop, unmount };
}
