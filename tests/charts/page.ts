/** What jsdom lacks and the charts use. It lays nothing out, so the observer has nothing to report. */
class Observer implements ResizeObserver {
  observe(): void {}
  unobserve(): void {}
  disconnect(): void {}
}
globalThis.ResizeObserver ??= Observer;
