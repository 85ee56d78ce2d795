/** What jsdom lacks, and a reader who wants less movement: then each change is there at once. */
import '../charts/page.ts';

globalThis.matchMedia = (media: string): MediaQueryList =>
  Object.assign(new EventTarget(), {
    media,
    matches: media.includes('prefers-reduced-motion'),
    onchange: null,
    addListener: () => {},
    removeListener: () => {},
  });
HTMLCanvasElement.prototype.getContext = (() => null) as never;
