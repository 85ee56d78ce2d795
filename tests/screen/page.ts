/** What jsdom lacks and the screen uses: an observer that has nothing to report, and media that never match. */
import '../charts/page.ts';

globalThis.matchMedia ??= (media: string): MediaQueryList =>
  Object.assign(new EventTarget(), {
    media,
    matches: false,
    onchange: null,
    addListener: () => {},
    removeListener: () => {},
  });
