/**
 * The keys of a clicker before a class. Forward reads on, then presses what leads on, and where a choice is
 * the class's to make only moves to the next thing to choose: no key ever answers a question.
 */
import { flushSync } from 'svelte';
import { currentStep } from '#lesson';
import type { LessonPlay } from '#session';

export interface Actions {
  play: Pick<LessonPlay, 'send' | 'snapshot' | 'phase'>;
  leave: () => void;
}

const FORWARD = ['PageDown', 'ArrowRight', ' '];
const BACK = ['PageUp', 'ArrowLeft'];
const CHOICES = 'ul button, li button, .typed input, input[type=range]';
/** Keys that make the screen dark, so that the class looks up; any key brings it back. */
const DARK = ['b', '.'];
const screen = () => document.documentElement;
const panel = () => document.querySelector<HTMLElement>('#panel');

/** Whether the key means something of its own where the focus is. */
function taken(key: string, on: Element | null): boolean {
  if (key === ' ') return on?.matches('button, a, summary, input, select, textarea') ?? false;
  if (key.startsWith('Arrow')) return on?.matches('input, select, textarea') ?? false;
  return false;
}

/** Moves the words under the reader's eye by most of a screen; false when there is no more to see. */
function read(area: HTMLElement, way: 1 | -1): boolean {
  const was = area.scrollTop;
  area.scrollTop += way * area.clientHeight * 0.8;
  return Math.abs(area.scrollTop - was) > 2;
}

/** Focuses the next thing to choose, or the last one before; false when there is none. */
function choose(area: HTMLElement, way: 1 | -1): boolean {
  const choices = [...area.querySelectorAll<HTMLElement>(CHOICES)].filter(
    (each) => each.checkVisibility() && !each.closest('.tally'),
  );
  const here = choices.indexOf(document.activeElement as HTMLElement);
  const next = here < 0 ? (way > 0 ? 0 : -1) : here + way;
  const wanted = choices[way > 0 ? next % choices.length : next];
  wanted?.focus();
  return wanted !== undefined;
}

/** Whether the reason for an answer given runs on below what can be seen. */
function cut(area: HTMLElement): boolean {
  const foot = area.querySelector('.reason')?.getBoundingClientRect().bottom ?? 0;
  const bar = area.querySelector('.act')?.getBoundingClientRect().height ?? 0;
  return foot > area.getBoundingClientRect().bottom - bar;
}

/** The entry check steers those who come to it: a class that has gone on is not asked again. */
function passEntry({ play }: Actions): boolean {
  const been = currentStep(play.snapshot).kind === 'entry' && play.snapshot.context.furthest > 0;
  if (!been) return false;
  play.send({ type: 'step.next' });
  return true;
}

function forward(area: HTMLElement, actions: Actions): void {
  // A number typed and not yet left is taken first, so that the same press can lock it in.
  const typed = document.activeElement;
  if (typed instanceof HTMLInputElement && area.contains(typed)) {
    flushSync(() => typed.blur());
    typed.focus();
  }
  if (passEntry(actions)) return;
  if (cut(area) && read(area, 1)) return;
  const onward = area.querySelector<HTMLButtonElement>('.act .press:not(.quiet)');
  const open = onward !== null && onward.getAttribute('aria-disabled') !== 'true';
  if (!open && choose(area, 1)) return;
  if (read(area, 1)) return;
  if (open) onward.click();
}

/** Listens until the function it returns is called. */
export function listen(actions: Actions): () => void {
  // Before anything else hears them: a slider would take a clicker's PageDown for its own.
  function onkeydown(event: KeyboardEvent): void {
    const area = panel();
    if (!area || event.ctrlKey || event.altKey || event.metaKey) return;
    const { key } = event;
    const typing = document.activeElement?.matches('input[type=number], input[type=text]') ?? false;
    if ('dark' in screen().dataset || (DARK.includes(key) && !typing)) {
      screen().toggleAttribute('data-dark');
    } else if (key === 'Escape') {
      actions.leave();
    } else if (!taken(key, document.activeElement) && FORWARD.includes(key) && !event.shiftKey) {
      if (!event.repeat) forward(area, actions);
    } else if (
      !taken(key, document.activeElement) &&
      (BACK.includes(key) || (key === ' ' && event.shiftKey))
    ) {
      if (!event.repeat && !read(area, -1) && !choose(area, -1)) actions.play.send({ type: 'step.back' });
    } else return;
    event.preventDefault();
    event.stopPropagation();
  }
  addEventListener('keydown', onkeydown, { capture: true });
  return () => {
    removeEventListener('keydown', onkeydown, { capture: true });
    screen().removeAttribute('data-dark');
  };
}
