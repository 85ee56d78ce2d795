/** A lesson on the page as a screen reader meets it, led on event by event. */
import { flushSync, tick } from 'svelte';
import { expect, vi } from 'vitest';
import type { LessonEvent, Part } from '#lesson';
import type { LessonPlay } from '#session';
import { mounted, prepared } from '../screen/mounted.svelte.ts';

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

/** The event that answers each part of a step. */
export const EVENTS = {
  observe: 'observation.answer',
  explain: 'explanation.answer',
  again: 'again.answer',
} as const satisfies Record<Part, LessonEvent['type']>;

export interface Opened {
  readonly play: LessonPlay;
  /** Resolves when the picture is at rest again. */
  send(event: LessonEvent): Promise<void>;
  close(): void;
}

export function opened(slug: string): Opened {
  const { play, stop, unmount } = mounted(prepared(slug));
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
