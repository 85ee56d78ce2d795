/** A lesson on the page as a screen reader meets it, led on event by event. */
import { render } from '@testing-library/svelte';
import { flushSync, tick } from 'svelte';
import { expect, vi } from 'vitest';
import type { LessonEvent } from '#lesson';
import { loadLesson } from '#lesson-load';
import { lessonFacts, LessonPlay, lessonRigs, stockFor } from '#session';
import Lesson from '../../src/routes/lessons/[slug]/Lesson.svelte';

export const words = (element: Element | null): string =>
  (element?.textContent ?? '').replace(/\s+/g, ' ').trim();

/** Whatever speaks up by itself, as it now stands. */
export const told = (): string =>
  [...document.querySelectorAll('[aria-live], [role=status], [role=alert]')]
    .map(words)
    .filter(Boolean)
    .join(' ');

/** A sentence a line, so that a change is read where it is. */
export const sentences = (said: string): string => said.replace(/(?<=[.?!|]) (?=[A-Z|])/g, '\n  ');

export interface Opened {
  readonly play: LessonPlay;
  /** Resolves when the picture is at rest again. */
  send(event: LessonEvent): Promise<void>;
  close(): void;
}

export function opened(slug: string): Opened {
  const { lesson, text } = loadLesson(slug);
  const rigs = lessonRigs(lesson);
  const stock = stockFor(lesson, rigs);
  const facts = lessonFacts(lesson, text, rigs, stock);
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
    onrestart: () => {},
  });
  return {
    play,
    async send(event) {
      play.send(event);
      // A move without motion ends in the turn after next.
      await vi.waitFor(() => expect(play.moving).toBe(false));
      await tick();
      flushSync();
    },
    close() {
      unmount();
      stop();
    },
  };
}
